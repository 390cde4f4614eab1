package block

import (
	"fmt"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// stageInk is the ink of a stage; mark and word tell it without.
func stageInk(s record.Stage) paper.Ink {
	switch s {
	case record.StageSealed:
		return paper.Warn
	case record.StagePushing, record.StageLeader, record.StageAboveStake, record.StageHeadedBack, record.StageUntied:
		return paper.Growth
	case record.StageFailed, record.StageGivenUp:
		return paper.Faint
	}
	return paper.Plain
}

const countsWidth = 29

// Frame shows the field, the counts beside it and the stump under the cursor.
func (b *Screen) Frame() part.Frame {
	x := b.x
	f := part.Frame{Title: x.Site().Name, Where: b.where()}
	f.Keys = x.KeyLine(nil, b.Table())
	if len(b.rows) == 0 {
		f.Body = b.empty()
		return f
	}
	foot := b.under(x.Width - 2)
	height := x.BodyHeight() - len(foot)
	side := countsWidth
	if x.Width < part.FullWidth {
		side = 22
	}
	field := b.field(x.Width-side-1, height)
	counts := b.counts(side, height)
	for i := range max(len(field), len(counts)) {
		var l, r paper.Line
		if i < len(field) {
			l = field[i]
		}
		if i < len(counts) {
			r = counts[i]
		}
		f.Body = append(f.Body, l.Beside(x.Width-side, r))
	}
	f.Body = append(f.Body, foot...)
	return f
}

func (b *Screen) where() string {
	words := fmt.Sprintf("%s, %s", part.Counted(len(b.sums), "stump"), part.Counted(len(b.rows), "row"))
	if b.filter.keep != nil {
		words = "only " + b.filter.what
	}
	if n := len(b.picked); n > 0 {
		words += fmt.Sprintf(", %d picked", n)
	}
	return words
}

func (b *Screen) empty() []paper.Line {
	return []paper.Line{nil, paper.Text(paper.Strong, "  No stumps in this block yet."), nil,
		paper.Text(paper.Plain, "  b begins a block, from rows and trees or from a list."),
		paper.Text(paper.Plain, "  barkslip block add FILE.csv adds a list from the command line.")}
}

// field is the rows as they stand. Each stump takes two columns or more: its
// mark, and behind it what is out of the ordinary. A wide window spreads them.
func (b *Screen) field(width, height int) []paper.Line {
	const label = 6
	longest := 1
	for _, r := range b.rows {
		longest = max(longest, len(r.sums))
	}
	pitch := max(2, min((width-label)/longest, 4))
	columns := max((width-label)/pitch, 1)
	gap := 1
	if (height-1)/2 >= len(b.rows) && pitch > 2 {
		gap = 2
	}
	b.scroll(columns, (height-1)/gap)
	lines := []paper.Line{b.numbers(label, columns, pitch)}
	for i := b.top; i < min(len(b.rows), b.top+(height-1)/gap); i++ {
		lines = append(lines, b.rowLine(i, columns, pitch))
		if gap == 2 {
			lines = append(lines, nil)
		}
	}
	return lines
}

// scroll keeps the cursor in sight.
func (b *Screen) scroll(columns, height int) {
	b.top = max(min(b.top, b.at), b.at-height+1)
	b.left = max(min(b.left, b.tree), b.tree-columns+1, 0)
	b.top = max(0, min(b.top, len(b.rows)-height))
}

// numbers are the tree numbers over the row under the cursor.
func (b *Screen) numbers(label, columns, pitch int) paper.Line {
	text := []byte(strings.Repeat(" ", label+columns*pitch))
	r := b.rows[b.at]
	for i := 0; i < columns && b.left+i < len(r.sums); i++ {
		tree := r.sums[b.left+i].ID.Tree
		if i > 0 && r.sums[b.left+i-1].ID.Tree == tree {
			continue // another limb of the same tree
		}
		if tree == 1 || tree%5 == 0 || i == 0 {
			copy(text[label+i*pitch:], fmt.Sprint(tree))
		}
	}
	return paper.Text(paper.Faint, string(text))
}

func (b *Screen) rowLine(i, columns, pitch int) paper.Line {
	r := b.rows[i]
	label := fmt.Sprintf(" %4d ", r.number)
	ink := paper.Faint
	if i == b.at {
		label = fmt.Sprintf(">%4d ", r.number)
		ink = paper.Accent
	}
	l := paper.Line{{Text: label, Ink: ink}}
	for j := b.left; j < min(len(r.sums), b.left+columns); j++ {
		here := i == b.at && j == max(0, min(b.tree, len(r.sums)-1))
		l = append(l, b.cell(r.sums[j], here, pitch)...)
	}
	return l
}

// cell is one stump: its mark; behind it ! for late, ? for answers that
// disagree, + for picked, else the letter of a limb. Under the cursor both are
// turned.
func (b *Screen) cell(s due.Summary, here bool, pitch int) paper.Line {
	mark, ink := s.Stage.Mark(), stageInk(s.Stage)
	second, secondInk := " ", paper.Warn
	if n := s.ID.Limb; n > 0 && n <= record.Letters {
		second, secondInk = s.ID.Letter(), paper.Faint
	}
	switch {
	case b.picked[s.ID]:
		second, secondInk = "+", paper.Warn
	case s.Clash:
		second, secondInk = "?", paper.Warn
	case isLate(s, b.x):
		second, secondInk = "!", paper.Warn
	}
	if !b.shows(s) {
		mark, ink, second = ".", paper.Faint, " "
	}
	if here {
		ink, secondInk = paper.Turned, paper.Turned
	}
	l := paper.Line{{Text: mark, Ink: ink}, {Text: second, Ink: secondInk}}
	return l.Pad(pitch)
}

// under is the stump under the cursor in words, in one line and at most one
// more.
func (b *Screen) under(width int) []paper.Line {
	id, now := b.Cursor(), b.x.Time()
	for _, s := range b.rows[b.at].sums {
		if s.ID != id {
			continue
		}
		late, open := []string{}, []string{}
		for _, d := range s.Dues {
			word := part.Spaced(d.Kind.String())
			switch {
			case d.Late(now):
				late = append(late, word)
			case d.Open(now):
				when, _ := b.x.DueWords(d)
				open = append(open, word+" "+when)
			}
		}
		lines := []paper.Line{nil, {{Text: " " + id.Place() + " ", Ink: paper.Strong}, {Text: s.Stage.String(), Ink: stageInk(s.Stage)}}}
		if hands := b.givenTo(id); hands != "" {
			lines[1] = lines[1].Add(paper.Accent, "  "+hands)
		}
		add := func(ink paper.Ink, head string, words []string) {
			if len(words) > 0 {
				lines[1] = lines[1].Add(ink, head+strings.Join(words, ", "))
			}
		}
		if s.Clash {
			add(paper.Warn, "  ? ", []string{"answers disagree"})
		}
		add(paper.Warn, "  ", b.heldWords(s))
		add(paper.Warn, "  LATE ", late)
		add(paper.Plain, "  due ", open)
		lines[1] = lines[1].Cut(width)
		return lines
	}
	return nil
}
