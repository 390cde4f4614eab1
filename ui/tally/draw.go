package tally

import (
	"fmt"
	"strings"

	"barkslip/core/results"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

const (
	besideFrom = 100       // columns from which the losses stand beside the groups
	figures    = 9 + 6 + 9 // took of known, rate, standing
	lossLines  = 2         // of the losses beneath, one in a low window
	causeWide  = 26        // columns of the longest cause
	lowBody    = 12
)

// besideWide is the columns of the losses beside the groups.
func (s *Screen) besideWide() int { return min(s.x.Width/3, 44) }

// Frame shows the groups, or the stumps of one.
func (s *Screen) Frame() part.Frame {
	x := s.x
	if s.inside != nil {
		return s.insideFrame()
	}
	f := part.Frame{Title: x.Site().Name, Where: "tally, " + s.of(), Keys: x.KeyLine(nil, s.own())}
	if s.cols.Grafts() == 0 {
		f.Body = []paper.Line{nil, paper.Text(paper.Strong, "  No graft to count yet."), nil}
		f.Body = append(f.Body, part.Indent(2, part.Wrapped(paper.Plain, "Once scions are set and looked after, this says what took, and by lot, hand or week what took better.", x.Width-4))...)
		return f
	}
	width := x.Width
	if width >= besideFrom {
		width -= s.besideWide()
	}
	left := s.groups(width)
	if x.Width < besideFrom {
		f.Body = left
		return f
	}
	right := s.lost(s.besideWide() - 2)
	for i := range max(len(left), len(right)) {
		var l, r paper.Line
		if i < len(left) {
			l = left[i]
		}
		if i < len(right) {
			r = right[i]
		}
		f.Body = append(f.Body, l.Beside(width+1, r))
	}
	return f
}

// of is what is counted, in a few words.
func (s *Screen) of() string {
	if s.season == 0 {
		return "all seasons"
	}
	return fmt.Sprintf("season %d", s.season)
}

// groups is the left side: by what, a line a group as far as there is room, and
// what is to be said of them.
func (s *Screen) groups(width int) []paper.Line {
	foot := s.foot(width)
	name := min(max(width/4, 14), 24)
	bar := width - 2 - name - figures - 3
	lines := append(s.offers(width), paper.Line{}.Pad(2+name).Add(paper.Faint, fmt.Sprintf("%9s%6s%9s", "took", "rate", "stand")))
	room := max(s.x.BodyHeight()-len(lines)-len(foot)-2, 1)
	s.scroll(room)
	lines = append(lines, s.line(0, name, bar))
	for i := s.top; i < min(len(s.tally.Groups), s.top+room); i++ {
		lines = append(lines, s.line(i+1, name, bar))
	}
	scale := s.x.Inked(figure.Percents(bar))
	if len(scale) > 0 {
		words := ""
		if more := len(s.tally.Groups) - s.top - room; more > 0 {
			words = fmt.Sprintf("  and %d more below", more)
		}
		lines = append(lines, append(paper.Text(paper.Faint, words).Pad(2+name+figures+2), scale[0]...))
	}
	return append(lines, foot...)
}

// scroll keeps the cursor in sight.
func (s *Screen) scroll(room int) {
	if at := s.at - 1; at >= 0 {
		s.top = max(min(s.top, at), at-room+1)
	}
	s.top = max(0, min(s.top, len(s.tally.Groups)-room))
}

// offers is by what can be grouped, with the digit of each, the present one strong;
// in a narrow window the present one alone.
func (s *Screen) offers(width int) []paper.Line {
	line := paper.Line{{Text: " ", Ink: paper.Plain}}
	for i, k := range results.Keys() {
		ink, word := paper.Faint, k.String()
		if k == s.key {
			ink = paper.Turned
		}
		line = line.Add(paper.Accent, fmt.Sprint((i+1)%10)).Add(ink, word).Add(paper.Plain, " ")
	}
	if line.Width() > width {
		line = paper.Line{{Text: " " + s.key.Words(), Ink: paper.Strong}, {Text: "  1 to 0: by something else", Ink: paper.Faint}}
	}
	return []paper.Line{line.Cut(width)}
}

// line is one group: the mark of the cursor, + for picked, the figures, and the
// interval on the scale that all groups share.
func (s *Screen) line(at, name, bar int) paper.Line {
	g := &s.tally.Total
	if at > 0 {
		g = &s.tally.Groups[at-1]
	}
	ink, mark := paper.Plain, " "
	if at == s.at {
		ink, mark = paper.Strong, ">"
	}
	picked := " "
	for _, key := range s.picked {
		if at > 0 && key == g.Key {
			picked = "+"
		}
	}
	l := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: picked, Ink: paper.Warn}, {Text: paper.Shorten(s.name(g), name-1), Ink: ink}}
	l = l.Pad(2+name).Add(paper.Plain, fmt.Sprintf("%9s", fmt.Sprintf("%d/%d", g.Took, g.Known)))
	i := g.Rate()
	shown := figure.Interval{Low: i.Low, High: i.High}
	switch {
	case g.Known == 0:
		l = l.Add(paper.Faint, fmt.Sprintf("%15s", "none known"))
		shown.Low = 2 // no interval: the scale alone
	case g.TooFew():
		l = l.Add(paper.Warn, fmt.Sprintf("%15s", "too few to say"))
	default:
		l = l.Add(ink, fmt.Sprintf("%6s", g.RateWords())).Add(paper.Plain, fmt.Sprintf("%9d", g.Standing))
	}
	if g.Known > 0 {
		shown.Rate = float64(g.Took) / float64(g.Known)
	}
	if drawn := s.x.Inked(shown.Draw(bar, s.x.Mode())); len(drawn) > 0 {
		l = append(l.Add(paper.Plain, "  "), drawn[0]...)
	}
	return l
}

// foot is what is to be said: of the two picked, else of all groups; and the
// losses where they have no room beside.
func (s *Screen) foot(width int) []paper.Line {
	words, ink := s.tally.DifferWords(), paper.Strong
	if a, b, ok := s.pair(); ok {
		words = fmt.Sprintf("%s against %s: %s", s.name(a), s.name(b), results.PairWords(a, b))
	}
	lines := part.Indent(1, part.Wrapped(ink, words, width-2))
	if s.x.Width >= besideFrom {
		return append([]paper.Line{nil}, lines...)
	}
	lost := part.Indent(1, part.Wrapped(paper.Plain, s.lostWords(), width-2))
	most := lossLines
	if s.x.BodyHeight() < lowBody {
		most = 1
	}
	if len(lost) > most {
		lost = append(lost[:most-1:most-1], lost[most-1].Add(paper.Plain, " …").Cut(width))
	}
	return append(lines, lost...)
}

// lostWords is what the grafts under the cursor died of, the most first.
func (s *Screen) lostWords() string {
	if len(s.losses) == 0 {
		return "Lost of " + s.name(s.here()) + ": none seen dead."
	}
	var words []string
	for _, l := range s.losses {
		words = append(words, fmt.Sprintf("%s %d", l.Cause, l.Grafts))
	}
	return "Lost of " + s.name(s.here()) + ": " + strings.Join(words, ", ") + "."
}

// lost is the losses beside the groups: a line a cause, with a bar.
func (s *Screen) lost(width int) []paper.Line {
	lines := []paper.Line{paper.Text(paper.Strong, paper.Shorten("Lost of "+s.name(s.here()), width)), nil}
	if len(s.losses) == 0 {
		return append(lines, paper.Text(paper.Plain, "none seen dead"))
	}
	const number = 5
	label := min(causeWide, width-2*number)
	most := float64(s.losses[0].Grafts)
	for _, l := range s.losses {
		row := paper.Line{{Text: paper.Shorten(l.Cause, label-1), Ink: paper.Plain}}
		row = row.Pad(label).Add(paper.Strong, fmt.Sprintf("%*d ", number, l.Grafts))
		lines = append(lines, append(row, part.Bar(width-label-number-1, most, s.x.Shaded(l.Grafts, figure.Full, figure.Warn))...))
	}
	return append(lines, nil, paper.Text(paper.Faint, "grafts seen dead, by cause"))
}
