package part

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/viewport"
	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/ui/paper"
)

// Page is a text to read over the screen: the help, why, a story.
type Page struct {
	Still
	x     *Session
	title string
	where string
	make  func(width int) []paper.Line
	lines []paper.Line // as made for a window of this width
	width int
	view  viewport.Model // which of the lines are seen
	atEnd bool           // it opens at its end
}

// NewPage is a page of the lines that are made for the window's width.
func NewPage(x *Session, title, where string, make func(width int) []paper.Line) *Page {
	return &Page{x: x, title: title, where: where, make: make}
}

// AtEnd has the page open at its end.
func (p *Page) AtEnd() *Page { p.atEnd = true; return p }

// Lines are all lines of the page.
func (p *Page) Lines() []paper.Line { p.fit(); return p.lines }

// fit makes the lines anew where the window's width has changed.
func (p *Page) fit() {
	p.view.Width, p.view.Height = p.x.Width, p.x.BodyHeight()
	if p.width != p.x.Width {
		p.width = p.x.Width
		p.lines = p.make(p.width)
		p.view.SetContent(strings.Repeat("\n", max(len(p.lines)-1, 0))) // as many lines; paper draws them
	}
	if p.atEnd {
		p.view.GotoBottom()
		p.atEnd = false
	}
	p.view.SetYOffset(p.view.YOffset)
}

// Key scrolls or goes back.
func (p *Page) Key(k tea.KeyMsg) Msgs {
	p.fit()
	return Press(append(p.table(), p.x.Leaving(p.help)...), k, Useless)
}

// table is the keys of a page.
func (p *Page) table() []Row {
	does := func(scroll func()) func() Msgs { return func() Msgs { scroll(); return nil } }
	by := func(lines int) func() Msgs { return does(func() { p.view.ScrollDown(lines) }) }
	up := func(lines int) func() Msgs { return does(func() { p.view.ScrollUp(lines) }) }
	back := ToBack.Row(Does(Back{})).Told("Back to what lies beneath.")
	if len(p.lines) <= p.view.Height {
		return []Row{back}
	}
	return []Row{
		{Binding: On("Space", "read on", " ", "pgdown"), Says: "Read on by a screen, as Page Down; Page Up reads back.", Do: by(p.view.Height - 1)},
		{Binding: On("", "", "pgup"), Do: up(p.view.Height - 1)},
		{Binding: On("up down", "", "down"), Says: "By a line; Home and End go to the beginning and the end.", Do: by(1)},
		{Binding: On("", "", "up"), Do: up(1)},
		{Binding: On("", "", "home"), Do: does(func() { p.view.GotoTop() })},
		{Binding: On("", "", "end"), Do: does(func() { p.view.GotoBottom() })},
		back,
	}
}

func (p *Page) help() Msgs { return p.x.Help("a page", p.table(), p.x.Leaving(nil)) }

// Frame shows the lines that are in sight.
func (p *Page) Frame() Frame {
	p.fit()
	var lead paper.Line
	if len(p.lines) > p.view.Height {
		lead = paper.Text(paper.Faint, fmt.Sprintf(" lines %d to %d of %d ", p.view.YOffset+1, min(p.view.YOffset+p.view.Height, len(p.lines)), len(p.lines)))
	}
	return Frame{Title: p.title, Where: p.where, Body: p.lines[p.view.YOffset:], Keys: p.x.KeyLine(lead, p.table())}
}

// WorkLines shows how a number came about: formula in words, what went in, what
// was assumed, and by whose word.
func WorkLines(w trade.Worked, sys unit.System, wide int) []paper.Line {
	lines := []paper.Line{paper.Text(paper.Strong, "  "+w.Question)}
	add := func(label string, ink paper.Ink, s string) {
		lines = append(lines, Indent(2, Under(label, paper.Faint, ink, s, wide))...)
	}
	for _, in := range w.Answer {
		add("  =", paper.Strong, in.Line(sys))
	}
	if w.Formula != "" {
		add("How     ", paper.Plain, w.Formula)
	}
	for _, in := range w.Inputs {
		add("From    ", paper.Plain, in.Line(sys))
	}
	for _, a := range w.Assumed {
		add("Assumed ", paper.Plain, a)
	}
	for _, f := range w.Facts {
		add("Because ", paper.Plain, f.Says+" ("+f.Cite()+")")
	}
	return lines
}
