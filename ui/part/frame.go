package part

import (
	"strings"
	"time"

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
	Title string   // block and stump
	Where string   // what is on this screen, fainter
	Short []string // the same in fewer words, for where there is less room
	Body  []paper.Line
	Keys  paper.Line
	Hint  string // in the message line while nothing is said
	Only  string // the stumps it keeps to, in the rule; "" for all
}

// Status is the message line: what was done last, or what is wrong.
type Status struct {
	Text   string
	Wrong  bool // must not be overlooked
	Failed bool // what was asked for was not done
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
	var right, left paper.Line
	if late := x.Clocks.Late(x.Book.Folded(), x.Now()); late != "" && x.Width >= FullWidth {
		right = right.Add(paper.Alarm, late).Add(paper.Plain, "  ")
	}
	if white, ink := x.Clocks.words(x.Now()); white != "" {
		right = right.Add(ink, white).Add(paper.Plain, "  ")
	}
	if mark := x.mark(); mark != "" {
		left = left.Add(paper.Plain, " ").Add(paper.Warn, mark+":")
	}
	left = left.Add(paper.Strong, " "+f.Title)
	where, clock := x.headWords(f, now, x.Width-left.Width()-right.Width())
	left = left.Add(paper.Plain, "  "+where)
	const least = 18 // of the title, so that it can be told
	if right.Width()+paper.Width(clock)+1 <= x.Width-least {
		ink := paper.Plain
		if !x.Earlier.IsZero() {
			ink = paper.Alarm
		}
		right = right.Add(ink, clock).Add(paper.Plain, " ")
	}
	room := x.Width - right.Width()
	if left.Width() > room-1 && len(f.Short) > 0 { // which stump it is matters more than which block
		left = left[:len(left)-1].Cut(max(room-1-2-paper.Width(where), 0)).Add(paper.Plain, "  "+where)
	}
	return left.Cut(room-1).Beside(room, right)
}

// headWords is what is on the screen and the clock, together in a room: the day
// gives way before what is on the screen loses words.
func (x *Session) headWords(f Frame, now time.Time, room int) (where, clock string) {
	clocks := []string{now.Format("Mon 2 Jan 15:04"), now.Format("2 Jan 15:04"), now.Format("15:04")}
	if !x.Earlier.IsZero() { // which day it is for must be seen
		clocks = []string{"FOR " + now.Format("2 Jan 15:04")}
	}
	for _, where = range append([]string{f.Where}, f.Short...) {
		for _, clock = range clocks {
			if 2+paper.Width(where)+2+paper.Width(clock)+1 <= room {
				return where, clock
			}
		}
	}
	return where, clock
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
	if late := x.Clocks.Late(x.Book.Folded(), x.Now()); late != "" && x.Width < FullWidth {
		l = l.Add(paper.Alarm, " "+late+" ")
	}
	for most := mostNamed; most > 0; most-- { // fewer by name where there is less room
		tops := x.Clocks.Tops(x.Now(), most)
		if tops == "" {
			break
		}
		if most == 1 || l.Width()+paper.Width(tops)+2 <= x.Width-2-min(left.Width(), x.Width/2) {
			l = l.Add(paper.Warn, " "+tops+" ")
			break
		}
	}
	l = l.Cut(x.Width - 2 - min(left.Width(), x.Width/2))
	left = left.Cut(x.Width - 1 - l.Width())
	left = x.besideMet(left, x.Width-2-l.Width())
	return append(append(left, x.ruleOf(x.Width-left.Width()-l.Width())...), l...)
}

// besideMet is the left of the rule with how the meeting with the crew stands behind it,
// in as many words as there is room for.
func (x *Session) besideMet(left paper.Line, room int) paper.Line {
	words, wrong := x.metWords()
	ink := paper.Faint
	if wrong {
		ink = paper.Warn
	}
	for _, w := range words {
		if left.Width()+paper.Width(w)+3 <= room {
			return append(left, x.ruleOf(1).Add(ink, " "+w+" ")...)
		}
	}
	return left
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
