package ui

import (
	"fmt"
	"slices"

	"barkslip/core/trade"
	"barkslip/core/walk"
	"barkslip/ui/paper"
)

// page is a text to read over the screen: the help, or why.
type page struct {
	r     *root
	title string
	where string
	make  func(width int) []paper.Line
	lines []paper.Line // as made for a window of this width
	width int
	from  int
}

// set makes the lines anew where the window's width has changed.
func (p *page) set() {
	if p.width != p.r.x.width {
		p.width = p.r.x.width
		p.lines = p.make(p.width)
	}
}

func (p *page) key(key string) {
	p.set()
	last := max(len(p.lines)-p.r.x.bodyHeight(), 0)
	switch key {
	case "down", "j", "enter":
		p.from = min(p.from+1, last)
	case "up", "k":
		p.from = max(p.from-1, 0)
	case " ", "pgdown":
		p.from = min(p.from+p.r.x.bodyHeight()-1, last)
	case "pgup":
		p.from = max(p.from-p.r.x.bodyHeight()+1, 0)
	case "home":
		p.from = 0
	case "end":
		p.from = last
	case "q":
		p.r.quit = true
	case "left", "right", "tab", "shift+tab":
	default:
		p.r.page = nil
	}
}

func (p *page) view() string {
	x := p.r.x
	p.set()
	p.from = max(0, min(p.from, len(p.lines)-x.bodyHeight()))
	keys := " Esc back   q leave"
	if len(p.lines) > x.bodyHeight() {
		keys = fmt.Sprintf(" up down Space read on   line %d of %d  %s", p.from+1, len(p.lines), keys)
	}
	return x.draw(frame{title: p.title, where: p.where, body: p.lines[p.from:], keys: paper.Text(paper.Faint, keys)})
}

// help shows every key of a screen, and the words for what stands on it.
func (r *root) help(title string, tables ...[]binding) {
	r.page = &page{r: r, title: "Keys", where: title, make: func(width int) []paper.Line {
		lines := []paper.Line{nil}
		for _, table := range tables {
			for _, b := range table {
				if b.help != "" {
					lines = append(lines, indent(2, under(fmt.Sprintf("%-9s", b.name()), paper.Accent, paper.Plain, b.help, width-4))...)
				}
			}
			lines = append(lines, nil)
		}
		return lines
	}}
}

func indent(n int, lines []paper.Line) []paper.Line {
	pad := fmt.Sprintf("%*s", n, "")
	for i, l := range lines {
		lines[i] = append(paper.Line{{Text: pad, Ink: paper.Plain}}, l...)
	}
	return lines
}

// why shows how numbers came about: formula in words, what went in, what was
// assumed, and by whose word.
func (r *root) why(title string, works []trade.Worked, step *walk.Step) {
	r.page = &page{r: r, title: "Why", where: title, make: func(width int) []paper.Line {
		return r.whyLines(works, step, min(width-4, 96))
	}}
}

func (r *root) whyLines(works []trade.Worked, step *walk.Step, wide int) []paper.Line {
	lines := []paper.Line{nil}
	add := func(label string, ink paper.Ink, s string) {
		lines = append(lines, indent(2, under(label, paper.Faint, ink, s, wide))...)
	}
	for _, w := range works {
		lines = append(append(lines, r.workLines(w, wide)...), nil)
	}
	lines = append(lines, paper.Text(paper.Strong, "  What this step rests on"))
	for _, part := range [][2]string{{"Look for", step.LookFor}, {"Why     ", step.Why}, {"If not  ", step.NotRight}} {
		if part[1] != "" {
			add(part[0], paper.Plain, part[1])
		}
	}
	for _, f := range step.Facts {
		add("Fact    ", paper.Plain, f.Says+" ("+f.Cite()+")")
	}
	lines = append(lines, nil)
	for _, c := range append(slices.Clone(step.Cautions), trade.AidsOnly) {
		add("Caution ", paper.Warn, c.Says)
	}
	return lines
}

// workLines shows the working of one number.
func (r *root) workLines(w trade.Worked, wide int) []paper.Line {
	sys := r.x.site().Units
	var lines []paper.Line
	add := func(label string, ink paper.Ink, s string) {
		lines = append(lines, indent(2, under(label, paper.Faint, ink, s, wide))...)
	}
	lines = append(lines, paper.Text(paper.Strong, "  "+w.Question))
	for _, in := range w.Answer {
		add("  =", paper.Strong, in.Name+": "+sys.Show(in.Value))
	}
	if w.Formula != "" {
		add("How     ", paper.Plain, w.Formula)
	}
	for _, in := range w.Inputs {
		add("From    ", paper.Plain, in.Name+": "+sys.Show(in.Value))
	}
	for _, a := range w.Assumed {
		add("Assumed ", paper.Plain, a)
	}
	for _, f := range w.Facts {
		add("Because ", paper.Plain, f.Says+" ("+f.Cite()+")")
	}
	return lines
}
