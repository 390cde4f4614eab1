package changes

import (
	"fmt"

	"barkslip/core/changes"
	"barkslip/core/unit"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// title is what the screen shows, in words.
func (s *Screen) title() string {
	if s.view == late {
		return "Late now, by who last worked the stump or its row."
	}
	return fmt.Sprintf("Since %s %s.", s.since.Weekday().String()[:3], s.dayWords(s.since))
}

func (s *Screen) dayWords(d unit.Date) string {
	if d.Year() == s.x.Site().Day(s.x.Time()).Year() {
		return d.Short()
	}
	return d.Long()
}

// headline counts all that is shown.
func (s *Screen) headline() string {
	switch {
	case s.view == late && len(s.late) == 0:
		return "Nothing is late."
	case s.view == late:
		n, stumps := counted(s.late)
		return fmt.Sprintf("%s late on %s", part.Counted(n, "thing"), part.Counted(stumps, "stump"))
	case len(s.done)+len(s.taken) == 0:
		return "Nothing was done or seen. f goes further back."
	case s.view == takenBack && len(s.taken) == 0:
		return "Nothing was taken back."
	case s.view == takenBack:
		n, stumps := counted(s.groups)
		return fmt.Sprintf("%s taken back on %s", part.Counted(n, "thing"), part.Counted(stumps, "stump"))
	}
	n, stumps := counted(changes.Grouped(s.done, func(changes.Change) string { return "" }))
	words := fmt.Sprintf("%s done or seen on %s", part.Counted(n, "thing"), part.Counted(stumps, "stump"))
	if taken, _ := counted(changes.Grouped(s.taken, func(changes.Change) string { return "" })); taken > 0 {
		words += fmt.Sprintf(", %d taken back", taken)
	}
	return words
}

// counted is how many things groups count, and on how many stumps.
func counted(groups []changes.Group) (n, stumps int) {
	for _, g := range groups {
		n, stumps = n+g.Count, stumps+len(g.Stumps)
	}
	return n, stumps
}

// Frame shows the groups with a bar each, all to one scale.
func (s *Screen) Frame() part.Frame {
	f := part.Frame{Title: s.x.Site().Name, Where: "changes", Keys: s.x.KeyLine(nil, s.own())}
	f.Body = []paper.Line{nil, paper.Text(paper.Strong, "  "+s.headline()), paper.Text(paper.Plain, "  "+s.title()+" "+s.what()), nil}
	room := max(s.x.BodyHeight()-len(f.Body), 1)
	s.top = max(min(s.top, s.at), s.at-room+2, 0)
	most := 1
	for _, g := range s.groups {
		most = max(most, g.Count)
	}
	for i := s.top; i < min(len(s.groups), s.top+room); i++ {
		f.Body = append(f.Body, s.line(i, most))
	}
	if below := len(s.groups) - s.top - room; below > 0 {
		f.Body[len(f.Body)-1] = paper.Text(paper.Faint, fmt.Sprintf("   and %d more below", below+1))
	}
	return f
}

// what is the view in words.
func (s *Screen) what() string {
	return [...]string{byHand: "By hand.", byKind: "By kind.", byDay: "By day.", takenBack: "Taken back.", late: ""}[s.view]
}

// line is one group: its name, a bar, how many and on how many stumps.
func (s *Screen) line(i, most int) paper.Line {
	g := s.groups[i]
	mark, ink := "   ", paper.Plain
	if i == s.at {
		mark, ink = " > ", paper.Strong
	}
	words := fmt.Sprint(g.Count)
	if len(g.Stumps) > 0 {
		words += " on " + part.Counted(len(g.Stumps), "stump")
	}
	name := g.Name
	if s.view == byDay {
		if d, err := unit.ParseDate(name); err == nil {
			name = d.Weekday().String()[:3] + " " + s.dayWords(d)
		}
	}
	const names, counts = 27, 24
	l := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: paper.Shorten(name, names-5), Ink: ink}}
	bar := part.Bar(s.x.Width-names-counts, float64(most), s.x.Shaded(g.Count, figure.Full, figure.Growth))
	return append(l.Pad(names), bar...).Add(paper.Plain, " "+words)
}
