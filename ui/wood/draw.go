package wood

import (
	"fmt"
	"strings"

	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Frame shows the lots, two lines each, and beneath them wood by thickness.
func (s *Screen) Frame() part.Frame {
	x := s.x
	f := part.Frame{Title: x.Site().Name, Where: "lots of scion wood"}
	f.Keys = x.KeyLine(paper.Text(paper.Faint, " a digit or Enter picks   Esc back  "), s.own())
	width := x.Width - 2
	head := []paper.Line{paper.Text(paper.Strong, " Lots of scion wood")}
	head = append(head, part.Indent(1, part.Wrapped(paper.Plain, trade.MovingWood.Says, width))...)
	head = append(head, nil)
	var woods []paper.Line
	if need := len(head) + 2*len(s.lots) + 2; x.BodyHeight() >= need+6 {
		woods = s.thicknessLines(s.fit(), s.variety(), width)
		if len(woods)+need+1 > x.BodyHeight() {
			woods = nil
		}
	}
	f.Body = append(head, s.rows(width, x.BodyHeight()-len(head))...)
	if len(woods) > 0 {
		f.Body = append(append(f.Body, nil), part.Indent(1, woods)...)
	}
	return f
}

// rows are the items about the cursor, as many as there is room for.
func (s *Screen) rows(width, height int) []paper.Line {
	var lines []paper.Line
	from, to := 0, 0 // the lines of the item under the cursor
	for i := range s.Items() {
		here := i == s.List.At()
		if here {
			from = len(lines)
		}
		lines = append(lines, s.row(i, here, width)...)
		if here {
			to = len(lines)
		}
	}
	if len(lines) <= height {
		return lines
	}
	top := max(0, min(to+1-height, len(lines)-height))
	top = min(top, from)
	out := append([]paper.Line(nil), lines[top:top+height]...)
	if below := len(lines) - top - height; below > 0 {
		out[height-1] = paper.Text(paper.Faint, "   and more below")
	}
	return out
}

func (s *Screen) row(i int, here bool, width int) []paper.Line {
	mark, ink := "  ", paper.Plain
	if here {
		mark, ink = "> ", paper.Strong
	}
	item := s.Items()[i]
	l := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: fmt.Sprintf("%-3s", s.KeyOf(i)), Ink: paper.Accent}}
	if i >= len(s.lots) {
		return []paper.Line{l.Add(ink, item.Word).Add(paper.Faint, "   "+item.Meaning).Cut(width)}
	}
	lot := s.lots[i]
	wide := min(max(width/3, 18), 34)
	l = l.Add(ink, paper.Shorten(s.nameOf(lot), wide-1)).Pad(5 + wide)
	first := l.Add(paper.Plain, strings.Join(labelWords(lot, s.x.Site()), ", ")).Cut(width)
	second := paper.Text(paper.Plain, "     ")
	if doubts := s.doubts(lot); len(doubts) > 0 {
		second = second.Add(paper.Warn, strings.Join(doubts, ". ")+". ")
	}
	return []paper.Line{first, second.Add(paper.Faint, strings.Join(s.countWords(lot), ", ")).Cut(width)}
}

// nameOf is the name of a lot; of two of one name with the day it was received.
func (s *Screen) nameOf(l *record.Lot) string { return nameOf(s.x, l) }

func nameOf(x *part.Session, l *record.Lot) string {
	if len(x.Book.Folded().Named(l.Name())) > 1 {
		return l.Name() + ", of " + x.Site().Day(l.Received.At).Long()
	}
	return l.Name()
}

// labelWords is what a lot is: variety, thickness, when it was cut.
func labelWords(l *record.Lot, b *record.Block) []string {
	w := l.Received.What
	words := []string{w.Variety}
	if w.Thickness.Given() {
		words = append(words, b.Units.Length(w.Thickness.Length))
	}
	if w.Cut != 0 {
		words = append(words, "cut "+w.Cut.Long())
	}
	if r := record.LastOf(l.Readings); r != nil {
		words = append(words, fmt.Sprintf("store %s on %s", b.Units.Temperature(r.What.Temp.Temperature), b.Day(r.At).Short()))
	}
	return words
}

// doubts is what speaks against a lot, and what is still to do about it.
func (s *Screen) doubts(l *record.Lot) []string { return doubts(s.x, l, s.trails[l.ID]) }

func doubts(x *part.Session, l *record.Lot, t plan.Trail) []string {
	out := l.Doubts(x.Site(), x.Site().Day(x.Time()))
	if !l.Follows() {
		return out
	}
	if t.Untold > 0 {
		out = append(out, "No answer yet at "+part.Counted(t.Untold, "stump"))
	}
	if t.ToCut > 0 {
		out = append(out, "To be cut out at "+part.Counted(t.ToCut, "stump"))
	}
	return out
}

// countWords is what was received of a lot, set and left.
func (s *Screen) countWords(l *record.Lot) []string { return countWords(s.x, l, s.trails[l.ID]) }

func countWords(x *part.Session, l *record.Lot, t plan.Trail) []string {
	set := "none set yet"
	if n := t.All.Scions - t.Broke(); n > 0 {
		set = fmt.Sprintf("%d set on %s", n, part.Counted(len(t.Places), "stump"))
	}
	words := []string{set}
	if n := t.Broke(); n > 0 {
		words = append(words, fmt.Sprintf("%d broke", n))
	}
	left, counted := x.Book.Folded().LeftOf(l.ID, x.Used())
	if !counted {
		return append(words, "sticks not counted")
	}
	return append(words, left.Words())
}

// thicknessLines draws wood by thickness against what the stumps that remain want,
// all bars to one scale.
func (s *Screen) thicknessLines(f plan.ThicknessFit, variety string, width int) []paper.Line {
	x, sys := s.x, s.x.Site().Units
	most := 0
	for _, r := range f.Rows {
		most = max(most, r.Wanted, r.LeftMost)
	}
	if most == 0 {
		return nil
	}
	const label, tail = 22, 26
	room := max(width-label-tail, 8)
	bar := func(of int, shade figure.Shade, ink figure.Ink, and ...figure.Stretch) paper.Line {
		return part.Bar(room, float64(most), append([]figure.Stretch{x.Shaded(of, shade, ink)}, and...)...)
	}
	sign := func(shade figure.Shade) string { return string(shade.Sign(x.Mode())) }
	lines := []paper.Line{paper.Text(paper.Strong, variety+" by thickness, in scions: ").
		Add(paper.Growth, sign(figure.Full)).Add(paper.Plain, " wanted  ").Add(paper.Plain, sign(figure.Half)).Add(paper.Plain, " left  ").
		Add(paper.Faint, sign(figure.Light)).Add(paper.Plain, " may be left")}
	for _, r := range f.Rows {
		if r.Stumps == 0 && r.Lots == 0 {
			continue
		}
		word := "size not known"
		if r.Most > 0 {
			word = strings.TrimSuffix(sys.Length(r.Least), " in") + " to " + sys.Length(r.Most)
		}
		wanted := append(paper.Text(paper.Plain, word).Pad(label), bar(r.Wanted, figure.Full, figure.Growth)...)
		lines = append(lines, wanted.Add(paper.Plain, fmt.Sprintf(" %d for %s", r.Wanted, part.Counted(r.Stumps, "stump"))))
		maybe := x.Shaded(r.LeftMost-r.Left, figure.Light, figure.Faint)
		left := append(paper.Line{}.Pad(label), bar(r.Left, figure.Half, figure.Plain, maybe)...)
		lines = append(lines, left.Add(paper.Plain, leftWords(r)))
	}
	if f.Uncounted > 0 {
		lines = append(lines, paper.Text(paper.Warn, part.Counted(f.Uncounted, "lot")+" left out: sticks not counted."))
	}
	return lines
}

func leftWords(r plan.ThicknessRow) string {
	switch {
	case r.Lots == 0:
		return " no wood"
	case r.LeftMost < r.Wanted:
		return fmt.Sprintf(" %d to %d left: SHORT", r.Left, r.LeftMost)
	case r.Left < r.Wanted:
		return fmt.Sprintf(" %d to %d left: may be short", r.Left, r.LeftMost)
	}
	return fmt.Sprintf(" %d to %d left", r.Left, r.LeftMost)
}
