package rounds

import (
	"fmt"
	"strings"
	"unicode"

	"barkslip/core/due"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// why says of all that is due on the stump under the cursor why it is.
func (s *Screen) why() part.Msgs {
	j, ok := s.job()
	if !ok {
		return part.Says("Nothing is listed.")
	}
	c := *j.Call
	lines := func(width int) []paper.Line { return s.whyLines(c, width-8) }
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Why", c.Stump.Long(), lines)}}
}

func (s *Screen) whyLines(c due.Call, width int) []paper.Line {
	b, now := s.x.Site(), s.x.Time()
	lines := []paper.Line{nil}
	for _, d := range c.Dues {
		lines = append(lines, paper.Text(paper.Strong, "  "+capital(d.Kind.Verb())+": from "+unit.When(d.Opens, now, b.Zone)+", by "+d.ByWords(now, b.Zone)))
		lines = append(lines, part.Indent(4, part.Wrapped(paper.Plain, d.Why(b), width))...)
		for _, f := range d.Facts() {
			lines = append(lines, part.Indent(4, part.Under("Because", paper.Faint, paper.Plain, f.Says+" ("+f.Cite()+")", width))...)
		}
		lines = append(lines, nil)
	}
	return lines
}

// save writes the round as plain text.
func (s *Screen) save() part.Msgs {
	if s.x.SaveText == nil {
		return part.Says("barkslip due prints the round as text.")
	}
	path, err := s.x.SaveText(s.fileName(), s.Text())
	if err != nil {
		return part.Fails(err)
	}
	return part.Says("Written: " + path)
}

// fileName tells one round from another: by block, day, row and kind of work.
func (s *Screen) fileName() string {
	words := []string{"round", s.x.Site().Name, s.x.Site().Day(s.judged()).String()}
	if s.span == thisWeek {
		words = append(words, "week")
	}
	if s.row > 0 {
		words = append(words, fmt.Sprintf("row %d", s.row))
	}
	for _, k := range s.only {
		words = append(words, k.String())
	}
	if s.late {
		words = append(words, "late")
	}
	name := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' {
			return unicode.ToLower(r)
		}
		return '-'
	}, strings.Join(words, "-"))
	return name + ".txt"
}

// Text is the round as plain text, as it is listed: by work, or stump by stump in
// walking order.
func (s *Screen) Text() string {
	b := s.x.Site()
	var out strings.Builder
	fmt.Fprintf(&out, "%s. %s %s\n", b.Name, s.question(), s.onlyWords())
	line := func(d due.Due, what string) {
		when, date, _ := s.when(d)
		fmt.Fprintf(&out, "  %-8s %s%-14s %-15s %s\n", d.Stump.Place(), what, when, date, d.Why(b))
	}
	for _, g := range s.groups {
		if !s.inWalk {
			fmt.Fprintf(&out, "\n%s: %s, %d late\n", capital(g.Kind.Verb()), part.Counted(len(g.Jobs), "stump"), g.Late)
		}
		for _, j := range g.Jobs {
			if !s.inWalk {
				line(*j.Due, "")
				continue
			}
			for _, d := range j.Call.Dues {
				line(d, fmt.Sprintf("%-21s", d.Kind.Verb()))
			}
		}
	}
	return out.String()
}
