package ui

import (
	"strings"

	"barkslip/ui/paper"
)

// Sizes of the window.
const (
	leastWidth  = 60
	leastHeight = 15
	fullWidth   = 80
	fullHeight  = 24
)

// frame puts a screen's body between the header and the key line.
type frame struct {
	title string // block and stump
	where string // what is on this screen, fainter
	body  []paper.Line
	keys  paper.Line
}

// bodyHeight is how many lines a body has in this window.
func (x *shared) bodyHeight() int { return max(x.height-5, 1) }

// draw makes the whole screen.
func (x *shared) draw(f frame) string {
	lines := make([]paper.Line, 0, x.height)
	lines = append(lines, x.header(f), x.rule())
	body := f.body
	if len(body) > x.bodyHeight() {
		body = body[:x.bodyHeight()]
	}
	lines = append(lines, body...)
	for len(lines) < x.height-3 {
		lines = append(lines, nil)
	}
	lines = append(append(lines, x.message()...), f.keys)
	theme := x.theme
	theme.ASCII = x.Plain
	return theme.Paint(lines, x.width, x.height)
}

// header carries block, stump, the white clocks and the time.
func (x *shared) header(f frame) paper.Line {
	now := x.now()
	if b := x.site(); b != nil {
		now = now.In(b.Zone)
	}
	clock, clockInk := now.Format("Mon 2 Jan 15:04"), paper.Plain
	if !x.at.IsZero() {
		clock, clockInk = "FOR "+now.Format("2 Jan 15:04"), paper.Alarm
	}
	white, ink := x.clocks.words(x.Now())
	right := paper.Line{}
	if white != "" {
		right = right.Add(ink, white).Add(paper.Plain, "  ")
	}
	const least = 18 // of the title, so that it can be told
	switch full := right.Add(clockInk, clock+" "); {
	case full.Width() <= x.width-least:
		right = full
	case right.Width()+6 <= x.width-least:
		right = right.Add(clockInk, now.Format("15:04")+" ")
	}
	left := paper.Line{{Text: " " + f.title, Ink: paper.Strong}, {Text: "  " + f.where, Ink: paper.Plain}}
	room := x.width - right.Width()
	return left.Cut(room-1).Beside(room, right)
}

func (x *shared) rule() paper.Line {
	sign := "─"
	if x.Plain {
		sign = "-"
	}
	return paper.Text(paper.Faint, strings.Repeat(sign, x.width))
}

// message is the last thing done or wrong: one line, or two that take the place
// of the rule above.
func (x *shared) message() []paper.Line {
	ink := paper.Plain
	if x.wrong {
		ink = paper.Warn
	}
	said := indent(1, wrapped(ink, x.said, x.width-2))
	switch {
	case len(said) == 0:
		return []paper.Line{x.rule(), nil}
	case len(said) == 1:
		return []paper.Line{x.rule(), said[0]}
	}
	return said[:2]
}

// wrapped is a text in one ink over as many lines as it needs.
func wrapped(ink paper.Ink, s string, width int) []paper.Line {
	var out []paper.Line
	for _, l := range paper.Wrap(s, width) {
		out = append(out, paper.Text(ink, l))
	}
	return out
}

// under sets text behind a label, its further lines under its first.
func under(label string, labelInk, ink paper.Ink, s string, width int) []paper.Line {
	indent := paper.Width(label) + 1
	var out []paper.Line
	for i, l := range paper.Wrap(s, max(width-indent, 10)) {
		head := strings.Repeat(" ", indent)
		if i == 0 {
			head = label + " "
		}
		out = append(out, paper.Line{{Text: head, Ink: labelInk}, {Text: l, Ink: ink}})
	}
	return out
}
