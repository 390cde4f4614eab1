package ui

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/ui/paper"
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

func (b *blockScreen) frame() frame {
	x := b.x
	f := frame{title: x.site().Name, where: b.where()}
	f.keys = b.r.keysOf(b.table())
	if len(b.rows) == 0 {
		f.body = b.empty()
		return f
	}
	foot := b.under(x.width - 2)
	height := x.bodyHeight() - len(foot)
	side := countsWidth
	if x.width < fullWidth {
		side = 22
	}
	field := b.field(x.width-side-1, height)
	counts := b.counts(side, height)
	for i := range max(len(field), len(counts)) {
		var l, r paper.Line
		if i < len(field) {
			l = field[i]
		}
		if i < len(counts) {
			r = counts[i]
		}
		f.body = append(f.body, l.Beside(x.width-side, r))
	}
	f.body = append(f.body, foot...)
	return f
}

func (b *blockScreen) where() string {
	words := fmt.Sprintf("%s, %s", counted(len(b.sums), "stump"), counted(len(b.rows), "row"))
	if b.what != "" {
		words = "only " + b.what
	}
	if n := len(b.picked); n > 0 {
		words += fmt.Sprintf(", %d picked", n)
	}
	return words
}

func (b *blockScreen) empty() []paper.Line {
	return []paper.Line{nil, paper.Text(paper.Strong, "  No stumps in this block yet."), nil,
		paper.Text(paper.Plain, "  b begins a block, from rows and trees or from a list."),
		paper.Text(paper.Plain, "  barkslip block add FILE.csv adds a list from the command line.")}
}

// field is the rows as they stand. Each stump takes two columns or more: its
// mark, and behind it what is out of the ordinary. A wide window spreads them.
func (b *blockScreen) field(width, height int) []paper.Line {
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
func (b *blockScreen) scroll(columns, height int) {
	b.top = max(min(b.top, b.at), b.at-height+1)
	b.left = max(min(b.left, b.tree), b.tree-columns+1, 0)
	b.top = max(0, min(b.top, len(b.rows)-height))
}

// numbers are the tree numbers over the row under the cursor.
func (b *blockScreen) numbers(label, columns, pitch int) paper.Line {
	text := []byte(strings.Repeat(" ", label+columns*pitch))
	r := b.rows[b.at]
	for i := 0; i < columns && b.left+i < len(r.sums); i++ {
		if tree := r.sums[b.left+i].ID.Tree; tree == 1 || tree%5 == 0 || i == 0 {
			copy(text[label+i*pitch:], fmt.Sprint(tree))
		}
	}
	return paper.Text(paper.Faint, string(text))
}

func (b *blockScreen) rowLine(i, columns, pitch int) paper.Line {
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
// disagree, + for picked. Under the cursor both are turned.
func (b *blockScreen) cell(s due.Summary, here bool, pitch int) paper.Line {
	mark, ink := s.Stage.Mark(), stageInk(s.Stage)
	second := " "
	switch {
	case b.picked[s.ID]:
		second = "+"
	case s.Clash:
		second = "?"
	case isLate(s, b.x):
		second = "!"
	}
	if b.filter != nil && !b.filter(s) {
		mark, ink, second = ".", paper.Faint, " "
	}
	secondInk := paper.Warn
	if here {
		ink, secondInk = paper.Turned, paper.Turned
	}
	l := paper.Line{{Text: mark, Ink: ink}, {Text: second, Ink: secondInk}}
	return l.Pad(pitch)
}

func isLate(s due.Summary, x *shared) bool {
	now := x.now()
	for _, d := range s.Dues {
		if d.Late(now) {
			return true
		}
	}
	return false
}

// isOpen says whether a stump needs a hand: something is due there, or its
// scions stand unsealed.
func isOpen(s due.Summary, x *shared) bool {
	if s.Stage == record.StageGrafted {
		return true
	}
	now := x.now()
	for _, d := range s.Dues {
		if d.Open(now) {
			return true
		}
	}
	return false
}

// totals are counts over the whole block at one minute.
type totals struct {
	at           time.Time
	stage        map[record.Stage]int
	late, needy  int
	taken, known int // grafts
	pace         plan.Pace
}

// count counts the block anew once a minute and after every answer.
func (b *blockScreen) count() *totals {
	now := b.x.now().Truncate(time.Minute)
	if b.totals != nil && b.totals.at.Equal(now) {
		return b.totals
	}
	t := &totals{at: now, stage: map[record.Stage]int{}, pace: plan.PaceOf(b.x.site(), b.sums, now)}
	for _, s := range b.sums {
		t.stage[s.Stage]++
		t.taken, t.known = t.taken+s.Taken, t.known+s.Known
		if isLate(s, b.x) {
			t.late++
		}
		if isOpen(s, b.x) {
			t.needy++
		}
	}
	b.totals = t
	return t
}

// roomForAll is the height at which stages without a stump are shown too.
const roomForAll = 20

// counts is the right side: how many at each stage, what needs a hand, what is
// late, how it took, and the pace. Where there is no room for all, the stages
// come last and those without a stump are left out.
func (b *blockScreen) counts(width, height int) []paper.Line {
	t := b.count()
	stages, sums := b.stageCounts(t, height < roomForAll), b.sumLines(t, width)
	if len(stages)+1+len(sums) <= height {
		return append(append(stages, nil), sums...)
	}
	lines := append(append(sums, nil), b.stageCounts(t, true)...)
	return lines[:min(len(lines), height)]
}

func (b *blockScreen) stageCounts(t *totals, short bool) (lines []paper.Line) {
	for _, st := range record.Stages() {
		if t.stage[st] > 0 || !short {
			l := paper.Line{{Text: st.Mark(), Ink: stageInk(st)}, {Text: " " + st.String(), Ink: paper.Plain}}
			lines = append(lines, l.Pad(15).Add(paper.Strong, fmt.Sprintf("%6d", t.stage[st])))
		}
	}
	return lines
}

func (b *blockScreen) sumLines(t *totals, width int) (lines []paper.Line) {
	sum := func(ink paper.Ink, word string, n int) {
		lines = append(lines, paper.Line{{Text: word, Ink: ink}}.Pad(15).Add(ink, fmt.Sprintf("%6d", n)))
	}
	sum(paper.Strong, "need a hand", t.needy)
	if t.late > 0 {
		sum(paper.Warn, "! late", t.late)
	}
	if t.known > 0 {
		lines = append(lines, paper.Text(paper.Plain, fmt.Sprintf("took %d of %d grafts", t.taken, t.known)))
	}
	if words := b.paceWord(); words != "" {
		lines = append(lines, paper.Text(paper.Plain, paper.Shorten(words, width)))
	}
	return lines
}

// under is the stump under the cursor in words, in one line and at most one
// more.
func (b *blockScreen) under(width int) []paper.Line {
	id, now := b.cursor(), b.x.now()
	for _, s := range b.rows[b.at].sums {
		if s.ID != id {
			continue
		}
		late, open := []string{}, []string{}
		for _, d := range s.Dues {
			word := plainWords(d.Kind.String())
			switch {
			case d.Late(now):
				late = append(late, word)
			case d.Open(now):
				when, _ := b.x.dueWords(d)
				open = append(open, word+" "+when)
			}
		}
		lines := []paper.Line{nil, {{Text: " " + id.Place() + " ", Ink: paper.Strong}, {Text: s.Stage.String(), Ink: stageInk(s.Stage)}}}
		add := func(ink paper.Ink, head string, words []string) {
			if len(words) > 0 {
				lines[1] = lines[1].Add(ink, head+strings.Join(words, ", "))
			}
		}
		if s.Clash {
			add(paper.Warn, "  ? ", []string{"answers disagree"})
		}
		add(paper.Warn, "  LATE ", late)
		add(paper.Plain, "  due ", open)
		lines[1] = lines[1].Cut(width)
		return lines
	}
	return nil
}

// counted is a number with its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// why says what the counts beside the field mean.
func (b *blockScreen) why() {
	t := b.count()
	work := trade.Worked{
		Question: "What the counts mean",
		Answer:   []trade.Input{{Name: "need a hand", Value: t.needy}, {Name: "late", Value: t.late}, {Name: "grafts that took", Value: fmt.Sprintf("%d of %d", t.taken, t.known)}},
		Formula:  "A stump needs a hand when something due on it can be done now, or its scions stand unsealed; it is late when something should have been done before now. A graft took when it was seen alive 30 days or more after its stump first pushed; only grafts of which that is known are counted.",
		Facts:    []trade.Fact{trade.MovingNotTaking, trade.WhiteIn, trade.DaysToGraft},
	}
	b.r.page = &page{r: b.r, title: "Why", where: "the counts", make: func(width int) []paper.Line {
		return append([]paper.Line{nil}, b.r.workLines(work, min(width-4, 96))...)
	}}
}
