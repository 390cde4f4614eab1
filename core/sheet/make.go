package sheet

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
)

// Kind is a kind of paper.
type Kind string

// The kinds, as the command takes them.
const (
	ForDay  Kind = "day"
	ForTags Kind = "tags"
	ForCuts Kind = "cuts"
)

// ErrNoTags says that no graft stands of which a tag was asked for.
var ErrNoTags = errors.New("no graft stands there to make a tag of; tags are made of stumps that were grafted")

// Make lays out a sheet of a kind.
func Make(kind Kind, a Ask, font Font) (Doc, error) {
	switch kind {
	case ForTags:
		tags, err := TagsOf(a)
		if err == nil && len(tags) == 0 {
			err = ErrNoTags
		}
		if err != nil {
			return Doc{}, err
		}
		return TagPages(a.Block.Name, tags, a.Block.Units, font, a.Now), nil
	case ForCuts:
		return CardPages(a.Block.Units, font, a.Now)
	}
	day, err := DayOf(a)
	if err != nil {
		return Doc{}, err
	}
	return DayPages(day, font, a.Now), nil
}

// mostName is how many letters a file's name has at most.
const mostName = 80

// FileName tells one sheet from another: by kind, block, day, hand and rows.
func FileName(kind Kind, a Ask) string {
	words := []string{string(kind)}
	if kind != ForCuts {
		words = append(words, a.Block.Name)
		if kind == ForDay || a.On != 0 {
			words = append(words, a.day().String())
		}
		if a.Hand != "" {
			words = append(words, a.Hand)
		}
		for _, r := range a.Rows {
			words = append(words, fmt.Sprintf("row %d", r))
		}
	}
	name := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' {
			return unicode.ToLower(r)
		}
		return '-'
	}, strings.Join(words, "-"))
	if r := []rune(name); len(r) > mostName {
		name = string(r[:mostName])
	}
	return name + ".pdf"
}
