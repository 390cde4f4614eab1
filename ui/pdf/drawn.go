package pdf

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/bidi"
	"golang.org/x/text/unicode/norm"
)

// box stands for a letter that the font does not hold.
const box = '□'

// drawn is a text letter by letter from left to right as it is drawn: what is
// written from right to left is turned, what no font holds is a box, and what is
// not seen is left out.
func drawn(words string) string {
	if ascii(words) {
		return words
	}
	words = strings.Map(held, norm.NFC.String(words))
	if !strings.ContainsFunc(words, rightToLeft) {
		return words
	}
	return turned(joined(words))
}

func ascii(words string) bool {
	for i := range len(words) {
		if words[i] < ' ' || words[i] > '~' {
			return false
		}
	}
	return true
}

// held is a letter as far as the font holds it.
func held(r rune) rune {
	switch {
	case unicode.Is(unicode.Variation_Selector, r), unicode.Is(unicode.Cf, r), unicode.IsControl(r), r >= 0x1f3fb && r <= 0x1f3ff:
		return -1
	case plain.advance(r) == none || strong.advance(r) == none:
		return box
	}
	return r
}

func rightToLeft(r rune) bool {
	p, _ := bidi.LookupRune(r)
	return p.Class() == bidi.R || p.Class() == bidi.AL
}

// turned orders a text as it is seen, in a line that runs from left to right.
func turned(words string) string {
	var p bidi.Paragraph
	if _, err := p.SetString(words, bidi.DefaultDirection(bidi.LeftToRight)); err != nil {
		return words
	}
	order, err := p.Order()
	if err != nil {
		return words
	}
	var out strings.Builder
	for i := range order.NumRuns() {
		run := order.Run(i)
		if run.Direction() == bidi.RightToLeft {
			out.WriteString(bidi.ReverseString(run.String()))
		} else {
			out.WriteString(run.String())
		}
	}
	return out.String()
}
