package stump

import (
	"strings"

	"barkslip/core/walk"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// answers are the choices as number, word, meaning; or the field; or the
// checks.
func (s *Screen) answers(width int) []paper.Line { return s.answersIn(width, s.x.Height) }

// answersIn is the answers in so many lines, as far as they can be told in them.
func (s *Screen) answersIn(width, most int) []paper.Line {
	switch {
	case s.doubt == nil && s.entry() != nil:
		e := s.entry()
		return append(part.Wrapped(paper.Faint, e.Asks, width), s.field.Line(e.Likely, width))
	case s.doubt == nil && s.asked.Checks != nil:
		checks := s.checks(width)
		return append(checks, s.offered(width, most-len(checks))...)
	}
	return s.offered(width, most)
}

// offered is the choices as number, word, meaning; a meaning that is longer than
// its room goes on below. Where that is more than so many lines the longest meanings
// lose their last clauses, then the last answers stand two on a line by their words
// alone. Nothing is cut within a clause.
func (s *Screen) offered(width, most int) []paper.Line {
	choices := s.choices()
	wide := 0
	for _, ch := range choices {
		wide = max(wide, paper.Width(ch.Word))
	}
	told, lines := make([][]paper.Line, len(choices)), 0
	meanings := make([]string, len(choices))
	tell := func(i int, meaning string) {
		lines -= len(told[i])
		meanings[i], told[i] = meaning, s.choiceLines(choices[i], meaning, wide, width)
		lines += len(told[i])
	}
	for i, ch := range choices {
		tell(i, ch.Meaning)
	}
	for lines > most {
		longest := -1
		for i := range told {
			if strings.Contains(meanings[i], ", ") && len(told[i]) > 1 && (longest < 0 || len(told[i]) >= len(told[longest])) {
				longest = i
			}
		}
		if longest < 0 {
			break
		}
		tell(longest, meanings[longest][:strings.LastIndex(meanings[longest], ", ")])
	}
	for i := len(choices) - 1; i > 0 && lines > most; i -= 2 {
		tell(i, "")
		tell(i-1, "")
		told[i-1][0] = told[i-1][0].Beside(width/2, told[i][0])
		told[i], lines = nil, lines-1
	}
	var out []paper.Line
	for _, l := range told {
		out = append(out, l...)
	}
	return out
}

// choiceLines is one choice: its word in a column, its meaning beside it.
func (s *Screen) choiceLines(ch walk.Choice, meaning string, wide, width int) (out []paper.Line) {
	l := part.Choice(ch.Key, ch.Word, s.likely() == ch.Key)
	words := paper.Wrap(meaning, max(width-wide-7, 12))
	if len(words) == 0 {
		return []paper.Line{l.Cut(width)}
	}
	for i, m := range words {
		if i > 0 {
			l = nil
		}
		out = append(out, l.Pad(wide+7).Add(paper.Faint, m).Cut(width))
	}
	return out
}
