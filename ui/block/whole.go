package block

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// view is how the block is looked at: stump by stump, or whole, as a block is first
// that is too large for the window.
type view struct {
	turned bool // whole though it is small
	in     bool // walked into from the whole
}

// screensful is how many windows of rows or trees a block may have and still be
// shown stump by stump from the first.
const screensful = 2

// isWhole says whether the block is seen whole.
func (b *Screen) isWhole() bool {
	return !b.view.in && len(b.rows) > 0 && (b.view.turned || b.isLarge())
}

func (b *Screen) isLarge() bool {
	_, columns := b.columns()
	return len(b.rows) > screensful*b.lines() || b.longest() > screensful*columns
}

func (b *Screen) longest() (n int) {
	for _, r := range b.rows {
		n = max(n, len(r.sums))
	}
	return n
}

// turn goes from the stumps to the whole block or back.
func (b *Screen) turn() part.Msgs {
	if b.isWhole() {
		return b.walkIn()
	}
	b.view = view{turned: true}
	return part.Says("")
}

// walkIn shows the rows of the line under the cursor stump by stump, with the
// cursor on the first stump there that is shown.
func (b *Screen) walkIn() part.Msgs {
	from, to := b.line(b.at / b.perLine())
	b.view.in = true
	if b.filter == nil || b.count().shows(b.index()) {
		return part.Says("")
	}
	for i := b.rows[from].first; i < b.rows[to].first+len(b.rows[to].sums); i++ {
		if b.count().shows(i) {
			b.MoveTo(b.sums[i].ID)
			break
		}
	}
	return part.Says("")
}

// perLine is how many rows stand in one line of the whole block.
func (b *Screen) perLine() int { return max(1, (len(b.rows)+b.lines()-1)/b.lines()) }

// line is the first and the last row of a line of the whole block.
func (b *Screen) line(n int) (from, to int) {
	from = n * b.perLine()
	return from, min(from+b.perLine(), len(b.rows)) - 1
}

// standOf is how the rows from one to another stand together.
func (b *Screen) standOf(from, to int) (all stand) {
	for _, s := range b.count().rows[from : to+1] {
		all.add(&s)
	}
	return all
}

// lineName says which rows a line has.
func (b *Screen) lineName(from, to int) string {
	if from == to {
		return fmt.Sprintf("row %d", b.rows[from].number)
	}
	return fmt.Sprintf("rows %d-%d", b.rows[from].number, b.rows[to].number)
}

// wholeField is the block seen whole: a line for a row, or for several, with a bar
// of the stages of its stumps and what they need.
func (b *Screen) wholeField() []paper.Line {
	count := (len(b.rows) + b.perLine() - 1) / b.perLine()
	stands, label, most := make([]stand, count), 0, 1
	for n := range count {
		from, to := b.line(n)
		stands[n] = b.standOf(from, to)
		label, most = max(label, len(b.lineName(from, to))), max(most, stands[n].stumps)
	}
	width := max(b.x.Width-label-6-b.needsWidth(), 8)
	lines := []paper.Line{paper.Text(paper.Faint, fmt.Sprintf("%*s  standing, rising to untied; lost last", label+2, ""))}
	for n, s := range stands {
		from, to := b.line(n)
		mark, ink := "  ", paper.Faint
		if n == b.at/b.perLine() {
			mark, ink = "> ", paper.Accent
		}
		l := paper.Line{{Text: mark, Ink: ink}, {Text: fmt.Sprintf("%*s  ", label, b.lineName(from, to)), Ink: ink}}
		if s.kept > 0 {
			l = append(l, b.x.StageBar(&s.stages, max(1, s.kept*width/most))...)
		}
		l = l.Pad(label + width + 6)
		lines = append(lines, append(l, b.needs(&s, b.x.Width-l.Width()-1)...))
	}
	return lines
}

// lineWords is the line under the cursor in words. Where there is no room for both,
// the stages are told rather than how many stumps there are.
func (b *Screen) lineWords() paper.Line {
	from, to := b.line(b.at / b.perLine())
	s := b.standOf(from, to)
	l := paper.Line{{Text: " " + b.lineName(from, to) + " ", Ink: paper.Strong}}
	all := paper.Text(paper.Plain, " "+part.Counted(s.stumps, "stump")+":  ")
	room := b.x.Width - 1 - l.Width()
	stages := b.stageWords(&s.stages, room-all.Width())
	if all.Width()+stages.Width() > room {
		return append(l.Add(paper.Plain, " "), b.stageWords(&s.stages, room-1)...)
	}
	return append(append(l, all...), stages...)
}

// tallied is how often each kind of work occurs.
type tallied []struct {
	kind due.Kind
	n    int
}

func (t *tallied) add(k due.Kind, n int) {
	for i := range *t {
		if (*t)[i].kind == k {
			(*t)[i].n += n
			return
		}
	}
	*t = append(*t, struct {
		kind due.Kind
		n    int
	}{k, n})
}
