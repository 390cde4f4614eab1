package part

import (
	"strings"

	"barkslip/ui/paper"
)

// Sizes of the window.
const (
	LeastWidth  = 60
	LeastHeight = 15
	FullWidth   = 80
	FullHeight  = 24
)

// Frame is what a screen has to show: its body between the header and the key
// line.
type Frame struct {
	Title string // block and stump
	Where string // what is on this screen, fainter
	Body  []paper.Line
	Keys  paper.Line
	Hint  string // in the message line while nothing is said
	Only  string // the stumps it keeps to, in the rule; "" for all
}

// Status is the message line: what was done last, or what is wrong.
type Status struct {
	Text  string
	Wrong bool
}

// BodyHeight is how many lines a body has in this window.
func (x *Session) BodyHeight() int { return max(x.Height-5, 1) }

// TooSmall says whether the window is too small for any screen.
func (x *Session) TooSmall() bool { return x.Width < LeastWidth || x.Height < LeastHeight }

// Draw makes the whole screen.
func (x *Session) Draw(f Frame, said Status) string {
	lines := make([]paper.Line, 0, x.Height)
	lines = append(lines, x.header(f), x.clockRule(f.Only))
	body := f.Body
	if len(body) > x.BodyHeight() {
		body = body[:x.BodyHeight()]
	}
	lines = append(lines, body...)
	for len(lines) < x.Height-3 {
		lines = append(lines, nil)
	}
	if said.Text == "" {
		said.Text = f.Hint
	}
	lines = append(append(lines, x.message(said)...), f.Keys)
	theme := x.Theme
	theme.ASCII = x.Plain
	return theme.Paint(lines, x.Width, x.Height)
}

// DrawTooSmall is the screen of a window too small for any.
func (x *Session) DrawTooSmall() string {
	const says = "Barkslip needs a window of at least 60 columns by 15 lines. Make it larger; nothing is lost. q leaves."
	return x.Theme.Paint(Wrapped(paper.Plain, says, max(x.Width, 1)), x.Width, x.Height)
}

// header carries block, stump, the white clocks and the time.
func (x *Session) header(f Frame) paper.Line {
	now := x.Time()
	if b := x.Site(); b != nil {
		now = now.In(b.Zone)
	}
	clock, clockInk := now.Format("Mon 2 Jan 15:04"), paper.Plain
	if !x.Earlier.IsZero() {
		clock, clockInk = "FOR "+now.Format("2 Jan 15:04"), paper.Alarm
	}
	white, ink := x.Clocks.words(x.Now())
	right := paper.Line{}
	if late := x.Clocks.Late(x.Now()); late != "" && x.Width >= FullWidth {
		right = right.Add(paper.Alarm, late).Add(paper.Plain, "  ")
	}
	if white != "" {
		right = right.Add(ink, white).Add(paper.Plain, "  ")
	}
	const least = 18 // of the title, so that it can be told
	switch full := right.Add(clockInk, clock+" "); {
	case full.Width() <= x.Width-least:
		right = full
	case right.Width()+6 <= x.Width-least:
		right = right.Add(clockInk, now.Format("15:04")+" ")
	}
	var left paper.Line
	if mark := x.mark(); mark != "" {
		left = left.Add(paper.Plain, " ").Add(paper.Warn, mark+":")
	}
	left = left.Add(paper.Strong, " "+f.Title).Add(paper.Plain, "  "+f.Where)
	room := x.Width - right.Width()
	return left.Cut(room-1).Beside(room, right)
}

// mark is what must be known of all that is shown: that it is made up, that
// nothing is written; "" for a book as any.
func (x *Session) mark() string {
	switch {
	case x.MadeUp() && x.Looking():
		return "made up, looking on"
	case x.MadeUp():
		return "made up"
	case x.Looking():
		return "looking on"
	}
	return ""
}

func (x *Session) rule() paper.Line { return x.ruleOf(x.Width) }

func (x *Session) ruleOf(width int) paper.Line {
	sign := "─"
	if x.Plain {
		sign = "-"
	}
	return paper.Text(paper.Faint, strings.Repeat(sign, width))
}

// clockRule is the rule under the header, with what runs by the minute and has no
// room above: the tops waiting, and in a narrow window what should be sealed. At
// its left stands which stumps the screen keeps to.
func (x *Session) clockRule(only string) paper.Line {
	var l, left paper.Line
	if only != "" {
		left = x.ruleOf(1).Add(paper.Accent, " only "+only+" ")
	}
	if late := x.Clocks.Late(x.Now()); late != "" && x.Width < FullWidth {
		l = l.Add(paper.Alarm, " "+late+" ")
	}
	if tops := x.Clocks.Tops(x.Now()); tops != "" {
		l = l.Add(paper.Warn, " "+tops+" ")
	}
	l = l.Cut(x.Width - 2 - min(left.Width(), x.Width/2))
	left = left.Cut(x.Width - 1 - l.Width())
	return append(append(left, x.ruleOf(x.Width-left.Width()-l.Width())...), l...)
}

// message is the last thing done or wrong: one line, or two that take the place
// of the rule above.
func (x *Session) message(said Status) []paper.Line {
	ink := paper.Plain
	if said.Wrong {
		ink = paper.Warn
	}
	lines := Indent(1, Wrapped(ink, said.Text, x.Width-2))
	switch {
	case len(lines) == 0:
		return []paper.Line{x.rule(), nil}
	case len(lines) == 1:
		return []paper.Line{x.rule(), lines[0]}
	}
	return lines[:2]
}
