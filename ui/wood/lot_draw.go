package wood

import (
	"fmt"
	"strings"

	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// leastPlaces is how many lines the list of stumps has at the least.
const leastPlaces = 3

// Frame shows the lot above and its stumps beneath.
func (s *Lot) Frame() part.Frame {
	x := s.x
	f := part.Frame{Title: x.Site().Name, Where: "lot " + s.lot.Name()}
	f.Keys = x.KeyLine(nil, s.own())
	width := x.Width - 2
	deeds := s.deedLines(width)
	head := s.label(width)
	if room := x.BodyHeight() - len(deeds) - leastPlaces - 1; len(head) > room {
		head = append(head[:max(room-1, 1)], paper.Text(paper.Faint, "w shows the rest"))
	}
	f.Body = part.Indent(1, append(append(head, deeds...), nil))
	f.Body = append(f.Body, s.places(width, x.BodyHeight()-len(f.Body))...)
	return f
}

// deedLines are the things that can be done, each behind its digit.
func (s *Lot) deedLines(width int) (lines []paper.Line) {
	var l paper.Line
	for i, d := range s.deeds() {
		if len(l) > 0 && l.Width()+paper.Width(d.word)+5 > width {
			lines, l = append(lines, l), nil
		}
		l = l.Add(paper.Accent, fmt.Sprint(i+1)).Add(paper.Plain, " "+d.word+"   ")
	}
	return append(lines, l)
}

// label is what is known of the lot, what speaks against it first.
func (s *Lot) label(width int) (lines []paper.Line) {
	w, b := s.lot.Received.What, s.x.Site()
	name := paper.Line{{Text: nameOf(s.x, s.lot), Ink: paper.Strong}}
	lines = append(lines, name.Add(paper.Plain, "  "+strings.Join(labelWords(s.lot, b), ", ")).Cut(width))
	for _, d := range doubts(s.x, s.lot, s.trail) {
		lines = append(lines, part.Wrapped(paper.Warn, d+".", width)...)
	}
	received := fmt.Sprintf("received %s by %s", b.Day(s.lot.Received.At).Long(), s.lot.Received.Hand)
	rows := [][2]string{
		{"Wood  ", strings.Join(countWords(s.x, s.lot, s.trail), ", ")},
		{"Went  ", wentWords(s.trail)},
		{"From  ", join(w.Source, received)},
		{"Kept  ", w.Kept}, {"Health", w.Health}, {"Permit", w.Permit}, {"Note  ", w.Note},
	}
	for _, r := range rows {
		if r[1] != "" {
			lines = append(lines, part.Under(r[0], paper.Faint, paper.Plain, r[1], width)...)
		}
	}
	return lines
}

func join(words ...string) string {
	var out []string
	for _, w := range words {
		if w != "" {
			out = append(out, w)
		}
	}
	return strings.Join(out, ", ")
}

// wentWords is how the scions of a lot fare over all.
func wentWords(t plan.Trail) string {
	if len(t.Places) == 0 {
		return "nowhere yet"
	}
	return fmt.Sprintf("%s: %s", part.Counted(len(t.Places), "stump"), fareWords(t.All.Waiting, t.All.Growing, t.All.Dead, t.Broke()))
}

// fareWords is how scions fare: "2 grow, 1 waits, 1 dead".
func fareWords(waiting, growing, dead, broke int) string {
	var words []string
	add := func(n int, one, many string) {
		switch {
		case n == 1:
			words = append(words, "1 "+one)
		case n > 1:
			words = append(words, fmt.Sprintf("%d %s", n, many))
		}
	}
	add(growing, "grows", "grow")
	add(waiting, "waits", "wait")
	add(dead, "dead", "dead")
	add(broke, "broke before it was sealed", "broke before they were sealed")
	if len(words) == 0 {
		return "no scion is known"
	}
	return strings.Join(words, ", ")
}

// places are the stumps about the cursor, in walking order.
func (s *Lot) places(width, height int) (lines []paper.Line) {
	all := s.trail.Places
	if len(all) == 0 {
		return []paper.Line{paper.Text(paper.Faint, " No scion of it was set yet.")}
	}
	height = max(height, 1)
	from := max(0, min(s.at-height/2, len(all)-height))
	for i := from; i < min(len(all), from+height); i++ {
		lines = append(lines, s.place(all[i], i == s.at).Cut(width))
	}
	if below := len(all) - from - height; below > 0 && s.at < from+height-1 {
		lines[len(lines)-1] = paper.Text(paper.Faint, fmt.Sprintf("   and %d more below", below+1))
	}
	return lines
}

func (s *Lot) place(p plan.Place, here bool) paper.Line {
	mark, ink := "   ", paper.Plain
	if here {
		mark, ink = " > ", paper.Strong
	}
	l := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: placeName(s.x, p.Stump), Ink: ink}}
	l = l.Pad(12).Add(paper.Plain, p.Stage.String()).Pad(28)
	l = l.Add(paper.Plain, useWords(p))
	if !s.lot.Follows() || p.Use.Living() == 0 && p.Do == "" {
		return l
	}
	says := paper.Plain
	if p.Open() {
		says = paper.Warn
	}
	return l.Add(paper.Plain, "; ").Add(says, p.Do.Words())
}

func useWords(p plan.Place) string {
	u := p.Use
	return fareWords(u.Waiting, u.Growing, u.Dead, u.Scions-u.Waiting-u.Growing-u.Dead)
}

// placeName is a stump's place, with its block where that is another.
func placeName(x *part.Session, id record.StumpID) string {
	if id.Block == x.Block {
		return id.Place()
	}
	if b := x.Book.Folded().Blocks[id.Block]; b != nil {
		return id.Place() + " " + b.Name
	}
	return id.Place()
}
