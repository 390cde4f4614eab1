package rounds

import (
	"fmt"
	"strings"

	"barkslip/core/due"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// title is the span in words.
func (s *Screen) title() string {
	switch s.span {
	case today:
		return "today"
	case thisWeek:
		return "this week"
	case aDay:
		return "on " + s.named.Long()
	}
	return "now"
}

// Frame shows the round, and why the call under the cursor is due.
func (s *Screen) Frame() part.Frame {
	x := s.x
	b := x.Site()
	f := part.Frame{Title: b.Name, Where: "rounds", Only: x.OnlyWords()}
	f.Keys = s.x.KeyLine(nil, s.Table())
	late := 0
	for _, c := range s.calls {
		if c.Late(s.judged()) {
			late++
		}
	}
	what := "due " + s.title()
	if s.late {
		what = "late"
	}
	question := fmt.Sprintf("%d stumps are %s", len(s.calls), what)
	switch {
	case len(s.calls) == 0:
		question = "Nothing is " + what + "."
	case len(s.calls) == 1:
		question = "1 stump is " + what
	}
	if late > 0 && !s.late {
		question += fmt.Sprintf(", %d of them late", late)
	}
	f.Body = []paper.Line{nil, paper.Text(paper.Strong, "  "+question), paper.Text(paper.Plain, "  "+s.because()), nil}
	foot := s.foot()
	room := max(x.BodyHeight()-len(f.Body)-len(foot), 1)
	s.top = max(min(s.top, s.at), s.at-room+2, 0)
	for i := s.top; i < min(len(s.calls), s.top+room); i++ {
		f.Body = append(f.Body, s.line(i))
	}
	if below := len(s.calls) - s.top - room; below > 0 {
		f.Body[len(f.Body)-1] = paper.Text(paper.Faint, fmt.Sprintf("   and %d more below", below+1))
	}
	for len(f.Body) < x.BodyHeight()-len(foot) {
		f.Body = append(f.Body, nil)
	}
	f.Body = append(f.Body, foot...)
	return f
}

// foot says why the first thing of the call under the cursor is due.
func (s *Screen) foot() []paper.Line {
	c, ok := s.call()
	if !ok {
		return nil
	}
	d := soonest(c)
	words := fmt.Sprintf("%s, %s: %s", c.Stump.Long(), part.Spaced(d.Kind.String()), d.Sentence(s.x.Site(), s.judged()))
	return append([]paper.Line{nil}, part.Indent(2, part.Wrapped(paper.Plain, words, s.x.Width-4))...)
}

func soonest(c due.Call) due.Due {
	first := c.Dues[0]
	for _, d := range c.Dues {
		if d.By.Before(first.By) {
			first = d
		}
	}
	return first
}

func (s *Screen) because() string {
	words := "What runs out first, then up one row and down the next."
	if far, ok := due.Walked(s.calls, s.x.Site()); ok && len(s.calls) > 1 {
		words += " " + s.x.Site().Units.Distance(far) + " to walk."
	}
	var only []string
	for _, k := range s.only {
		only = append(only, part.Spaced(k.String()))
	}
	if s.row > 0 {
		only = append(only, fmt.Sprintf("row %d", s.row))
	}
	if s.mine {
		only = append(only, "what "+s.x.Hand+" is given for "+s.givenDay().Short())
	}
	if len(only) > 0 {
		words = "Only " + strings.Join(only, ", ") + ". " + words
	}
	return words
}

// line is one call: place, what is due, by when.
func (s *Screen) line(i int) paper.Line {
	b := s.x.Site()
	c := s.calls[i]
	mark, ink := "   ", paper.Plain
	if i == s.at {
		mark, ink = " > ", paper.Accent
	}
	var kinds []string
	for _, d := range c.Dues {
		word := part.Spaced(d.Kind.String())
		if d.Late(s.judged()) {
			word += "!"
		}
		kinds = append(kinds, word)
	}
	l := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: fmt.Sprintf("%-8s", c.Stump.Place()), Ink: ink}}
	late, lateInk := "     ", paper.Plain
	if c.Late(s.judged()) {
		late, lateInk = "LATE ", paper.Warn
	}
	by := " by " + soonest(c).ByWords(s.x.Time(), b.Zone)
	wide := s.x.Width - 22
	return l.Add(lateInk, late).Add(paper.Strong, strings.Join(kinds, ", ")).Beside(wide, paper.Text(paper.Plain, by))
}
