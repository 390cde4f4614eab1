package block

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Frame shows the field, or the block whole, and under it the stump under the
// cursor, the counts and tomorrow's heat.
func (b *Screen) Frame() part.Frame {
	x := b.x
	f := part.Frame{Title: x.Site().Name, Where: b.where(), Only: x.OnlyWords()}
	f.Keys = x.KeyLine(nil, b.Table())
	if len(b.rows) == 0 {
		f.Body = b.empty()
		return f
	}
	if b.isWhole() {
		f.Body = b.wholeField()
	} else {
		f.Body = b.field()
	}
	for len(f.Body) < b.lines()+1 {
		f.Body = append(f.Body, nil)
	}
	f.Body = append(f.Body[:b.lines()+1], b.foot()...)
	return f
}

// roomyHeight is the height of a body from which air stands over the foot.
const roomyHeight = 14

// footLines is how many lines the foot has.
func (b *Screen) footLines() int {
	if b.x.BodyHeight() < roomyHeight {
		return 4
	}
	return 6
}

// foot is the stump under the cursor in words, or the line, and the counts.
func (b *Screen) foot() []paper.Line {
	var here paper.Line
	if b.isWhole() {
		here = b.lineWords().Cut(b.x.Width - 1)
	} else {
		here = b.under(b.x.Width - 1)
	}
	counts := b.counts(b.x.Width - 1)
	if b.footLines() == 4 {
		return append([]paper.Line{here}, counts...)
	}
	return append([]paper.Line{nil, here, nil}, counts...)
}

// lines is how many lines there are for rows.
func (b *Screen) lines() int { return max(b.x.BodyHeight()-1-b.footLines(), 1) }

func (b *Screen) where() string {
	words := fmt.Sprintf("%s, %s", part.Counted(len(b.sums), "stump"), part.Counted(len(b.rows), "row"))
	if b.filter != nil {
		words = fmt.Sprintf("%d of %s", b.count().all.kept, part.Counted(len(b.sums), "stump"))
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

const rowLabel = 6

// needsWidth is what is kept free at the right for what the rows need.
func (b *Screen) needsWidth() int {
	switch {
	case b.x.Width < part.FullWidth:
		return 18
	case b.x.Width < 120:
		return 30
	}
	return 44
}

// columns is how many columns a stump takes, and how many stumps there is room for
// beside one another. A wide window spreads them.
func (b *Screen) columns() (pitch, stumps int) {
	room := b.x.Width - rowLabel - b.needsWidth()
	pitch = max(2, min(room/max(b.longest(), 1), 5))
	return pitch, max(room/pitch, 1)
}

// rowHeight is how many lines a row takes: two where all rows have room for it, so
// that the stumps grow through both, and a third between them where there is that
// much.
func (b *Screen) rowHeight(pitch int) int {
	if pitch == 2 {
		return 1
	}
	return max(1, min(b.lines()/len(b.rows), 3))
}

// field is the rows as they stand, each with what it needs at its right end. Each
// stump takes two columns or more: a gap, and its mark.
func (b *Screen) field() []paper.Line {
	pitch, columns := b.columns()
	height := b.rowHeight(pitch)
	b.scroll(columns, b.lines()/height)
	lines := []paper.Line{b.numbers(columns, pitch)}
	for i := b.top; i < min(len(b.rows), b.top+b.lines()/height); i++ {
		if height == 3 {
			lines = append(lines, nil)
		}
		if height > 1 {
			lines = append(lines, b.rowLine(i, columns, pitch, upperHalf))
			lines = append(lines, b.rowLine(i, columns, pitch, lowerHalf))
			continue
		}
		lines = append(lines, b.rowLine(i, columns, pitch, wholeMark))
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
func (b *Screen) numbers(columns, pitch int) paper.Line {
	text := []byte(strings.Repeat(" ", rowLabel+1+columns*pitch+5))
	r := b.rows[b.at]
	for i := 0; i < columns && b.left+i < len(r.sums); i++ {
		tree := r.sums[b.left+i].ID.Tree
		if i > 0 && r.sums[b.left+i-1].ID.Tree == tree {
			continue // another limb of the same tree
		}
		if tree == 1 || tree%5 == 0 || i == 0 {
			copy(text[rowLabel+1+i*pitch:], fmt.Sprint(tree))
		}
	}
	return paper.Text(paper.Faint, string(text))
}

// half is which part of the stumps a line of the field shows.
type half int

const (
	wholeMark half = iota
	upperHalf
	lowerHalf
)

// mark is what a line shows of a stage, so many columns wide.
func (b *Screen) mark(st record.Stage, h half, width int) string {
	var mark string
	switch upper, lower := b.x.TallMark(st); h {
	case wholeMark:
		mark = b.x.Mark(st)
	case upperHalf:
		mark = upper
	case lowerHalf:
		mark = lower
	}
	if b.x.Plain || st.Lost() || st == record.StageStanding {
		return strings.Repeat(" ", (width-1)/2) + mark + strings.Repeat(" ", width-1-(width-1)/2)
	}
	return strings.Repeat(mark, width)
}

// rowLine is one line of a row. Of two, the lower one has its number and what it
// needs.
func (b *Screen) rowLine(i, columns, pitch int, h half) paper.Line {
	r := b.rows[i]
	label := fmt.Sprintf(" %4d ", r.number)
	ink := paper.Faint
	if i == b.at {
		label = fmt.Sprintf(">%4d ", r.number)
		ink = paper.Accent
	}
	if h == upperHalf {
		label = strings.Repeat(" ", rowLabel)
	}
	l := paper.Line{{Text: label, Ink: ink}}
	end := min(len(r.sums), b.left+columns)
	behind := false // the cursor is on the stump before, with no room between
	for j := b.left; j < end; j++ {
		here := i == b.at && r.first+j == b.index()
		l = append(l, b.cell(r.first+j, h, markWidth(pitch), here, behind)...)
		air := pitch - 1 - markWidth(pitch)
		if here && (air > 0 || j == end-1) {
			l, air = l.Add(paper.Accent, "]"), air-1
		}
		l = l.Add(paper.Plain, strings.Repeat(" ", max(air, 0)))
		behind = here && pitch == 1+markWidth(pitch)
	}
	if h == upperHalf {
		return l
	}
	wide := rowLabel + min(b.longest(), columns)*pitch + 2
	l = l.Pad(wide)
	return append(l, b.needs(&b.count().rows[i], b.x.Width-l.Width()-1)...)
}

// markWidth is how many columns of those of a stump its mark takes; one at least is
// the gap before it.
func markWidth(pitch int) int { return pitch - 1 - pitch/4 }

// cell is one stump: its mark, on amber where work is late, amber where a white
// clock runs, underlined where answers disagree, with + before it where it is
// picked. The cursor stands around it. One that is not shown is blank.
func (b *Screen) cell(i int, h half, width int, here, behindCursor bool) paper.Line {
	s, t := &b.sums[i], b.count()
	mark, ink, gap, gapInk := b.mark(s.Stage, h, width), part.StageInk(s.Stage), " ", paper.Plain
	if !t.shows(i) {
		mark, ink = strings.Repeat(" ", width), paper.Plain
	} else {
		if white, late := running(s, t.at); late && strings.TrimSpace(mark) != "" {
			ink = paper.Late
		} else if white {
			ink = paper.Warn
		}
		if b.x.Theme.Name == "plain" { // no colour tells them apart: the height as a digit does
			if mark = b.inDigits(s.Stage, h, width, ink); h == upperHalf {
				ink = part.StageInk(s.Stage)
			}
		}
		if s.Clash && h != upperHalf {
			ink = paper.Lined
		}
	}
	if n := s.ID.Limb; n > 0 && n <= record.Letters && h != upperHalf {
		gap, gapInk = s.ID.Letter(), paper.Faint
	}
	if b.picked[s.ID] && h != upperHalf {
		gap, gapInk = "+", paper.Accent
	}
	switch {
	case here:
		gap, gapInk = "[", paper.Accent
	case behindCursor:
		gap, gapInk = "]", paper.Accent
	}
	return paper.Line{{Text: gap, Ink: gapInk}, {Text: mark, Ink: ink}}
}

// inDigits is a mark without colour: one that is late, or under a white clock, as
// the digit of its height, the others as they are.
func (b *Screen) inDigits(st record.Stage, h half, width int, ink paper.Ink) string {
	if ink != paper.Late && ink != paper.Warn || st.Lost() {
		return b.mark(st, h, width)
	}
	if h == upperHalf {
		return strings.Repeat(" ", width)
	}
	return fmt.Sprintf("%*d", width, st.Height())
}

// running says whether a white clock runs on a stump, and whether work is late.
func running(s *due.Summary, now time.Time) (white, late bool) {
	for _, d := range s.Dues {
		white = white || d.Kind == due.White
		late = late || d.On(now).Late(now)
	}
	return white, late
}

// under is the stump under the cursor in words: its exact stage, and what is due.
func (b *Screen) under(width int) paper.Line {
	s, now := &b.sums[b.index()], b.x.Time()
	late, open := []string{}, []string{}
	for _, d := range s.Dues {
		d = d.On(now)
		word := d.Kind.Verb()
		switch {
		case d.Late(now):
			late = append(late, word+" "+d.LateBy(b.x.Site(), now)+" late")
		case d.Open(now):
			when, _ := b.x.DueWords(d)
			open = append(open, word+" "+when)
		}
	}
	l := paper.Line{{Text: " " + s.ID.Place() + "  ", Ink: paper.Strong}, {Text: s.Stage.String(), Ink: part.StageInk(s.Stage)}}
	if hands := b.givenTo(s.ID); hands != "" {
		l = l.Add(paper.Accent, "  "+hands)
	}
	add := func(ink paper.Ink, head string, words []string) {
		if len(words) > 0 {
			l = l.Add(ink, head+strings.Join(words, ", "))
		}
	}
	if s.Clash {
		add(paper.Lined, "  ", []string{"answers disagree"})
	}
	add(paper.Warn, "  ", b.heldWords(*s))
	add(paper.Warn, "  ", late)
	add(paper.Plain, "  due ", open)
	return l.Cut(width)
}
