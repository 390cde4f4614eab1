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

// Key scrolls; a key that does not scroll goes back.
func (p *Page) Key(k tea.KeyMsg) Msgs {
	p.fit()
	switch k.String() {
	case "down", "j", "enter":
		p.view.ScrollDown(1)
	case "up", "k":
		p.view.ScrollUp(1)
	case " ", "pgdown":
		p.view.ScrollDown(p.view.Height - 1)
	case "pgup":
		p.view.ScrollUp(p.view.Height - 1)
	case "home":
		p.view.GotoTop()
	case "end":
		p.view.GotoBottom()
	case "q":
		return Msgs{Quit{}}
	case "left", "right", "tab", "shift+tab":
	default:
		return Msgs{Back{}}
	}
	return nil
}

// Frame shows the lines that are in sight.
func (p *Page) Frame() Frame {
	p.fit()
	keys := " Esc back   q leave"
	if len(p.lines) > p.view.Height {
		keys = fmt.Sprintf(" up down Space read on   line %d of %d  %s", p.view.YOffset+1, len(p.lines), keys)
	}
	return Frame{Title: p.title, Where: p.where, Body: p.lines[p.view.YOffset:], Keys: paper.Text(paper.Faint, keys)}
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
