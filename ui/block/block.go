// Package block is the screen of a block's rows as they stand in the field, with
// the answers given to many stumps at once and the block's settings. It may
// import core and ui/part with its leaves, and no other screen.
package block

import (
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Screen shows the rows of a block as they stand in the field, one mark a stump.
// A block of many stumps is seen whole first, a bar of stages for each row or for
// several, and walked into.
type Screen struct {
	x      *part.Session
	sums   []due.Summary
	rows   []row
	at     int // row of the cursor
	tree   int // place of the cursor in its row
	top    int // first row shown
	left   int // first column shown
	picked map[record.StumpID]bool
	filter *filter // nil shows all
	view   view
	totals *totals // as of the last minute drawn
	heat   *heat   // of tomorrow, as of the last day drawn
}

// row is the stumps of one row in order.
type row struct {
	number uint16
	sums   []due.Summary
	first  int // of the row's stumps among all of the block
}

// New is the screen of the session's block. It shows all stumps.
func New(x *part.Session) *Screen {
	x.Only = nil
	return &Screen{x: x, picked: map[record.StumpID]bool{}}
}

// Load reads the summaries anew.
func (b *Screen) Load() error {
	b.sums, b.rows, b.totals = b.x.Summaries(b.x.Block), nil, nil
	for i, s := range b.sums {
		if i == 0 || s.ID.Row != b.sums[i-1].ID.Row {
			b.rows = append(b.rows, row{number: s.ID.Row, first: i})
		}
		last := &b.rows[len(b.rows)-1]
		last.sums = b.sums[i-len(last.sums) : i+1]
	}
	b.at = max(0, min(b.at, len(b.rows)-1))
	return b.x.Trouble()
}

// Tick does nothing: what is late is seen when it is drawn.
func (b *Screen) Tick() part.Msgs { return nil }

// Field is none.
func (b *Screen) Field() *part.Field { return nil }

// Cursor is the stump under the cursor.
func (b *Screen) Cursor() record.StumpID {
	if b.at >= len(b.rows) || len(b.rows) == 0 {
		return record.NoStump
	}
	r := b.rows[b.at]
	return r.sums[max(0, min(b.tree, len(r.sums)-1))].ID
}

// index is the stump under the cursor among all of the block.
func (b *Screen) index() int {
	r := b.rows[b.at]
	return r.first + max(0, min(b.tree, len(r.sums)-1))
}

// enterWord names what Enter does.
func (b *Screen) enterWord() string {
	if b.isWhole() {
		return "walk in"
	}
	return "open"
}

// MoveTo puts the cursor on a stump, or the nearest there is.
func (b *Screen) MoveTo(id record.StumpID) {
	for i, r := range b.rows {
		if r.number == id.Row {
			at, _ := slices.BinarySearchFunc(r.sums, id, func(s due.Summary, id record.StumpID) int { return s.ID.Compare(id) })
			b.at, b.tree = i, min(at, len(r.sums)-1)
		}
	}
}

// Rows is how many rows there are.
func (b *Screen) Rows() int { return len(b.rows) }

// Key takes a digit as the beginning of a place, else a key of the table.
func (b *Screen) Key(k tea.KeyMsg) part.Msgs {
	if key := k.String(); len(key) == 1 && key[0] >= '1' && key[0] <= '9' {
		return b.place(key)
	}
	return part.Press(append(b.Table(), b.x.Common(b.help)...), k, part.Useless)
}

// Table is the keys of the screen, the most used first.
func (b *Screen) Table() []part.Row {
	step := func(rows, trees int) func() part.Msgs { return func() part.Msgs { return b.step(rows, trees) } }
	return append(b.x.TimeOn(), []part.Row{
		part.ToOpen.Row(b.open).Named(b.enterWord()).Told("Open the stump under the cursor; from the whole block, walk into the rows."),
		part.ToNext.Row(part.Does(part.Next{After: b.Cursor(), AtHand: true})).Named("next to do").
			Told("Open the next stump that needs work: what runs out first, then up one row and down the next."),
		part.ToTakeBack.Row(b.x.TakeBack).Named(b.undoWord()),
		part.ToRounds.Row(part.Does(part.Rounds{})),
		part.ToFind.Row(func() part.Msgs { return b.place("") }).Told("Go to a stump: type row/tree, or a tree of this row. A digit may begin it: 4/17."),
		part.ToShowOnly.Row(b.pickField).Named("filter").Told("Show only some stumps: by stage, work, lot, variety, hand, bleeding, result, cause, or when last seen. " +
			"Several filters combine, and the rounds and n keep to them."),
		part.ToAlong.Row(func() part.Msgs { return b.match(1) }).Named(b.matchWord("next shown")).
			Told("To the next stump the filter shows; Shift-Tab to the one before."),
		{Binding: part.On("", "", "shift+tab"), Do: func() part.Msgs { return b.match(-1) }},
		part.ToMany.Row(b.answerMany).Named(b.manyWord()).
			Told("One answer for all picked stumps. With none picked it picks all the filter shows, without a filter all of the block; then again answers."),
		part.ToRow.Row(b.answerRow),
		part.ToPick.Row(b.pick),
		part.ToPlan.Row(part.Does(part.Plan{})),
		part.ToTally.Row(part.Does(part.Tally{})),
		part.ToDone.Row(part.Does(part.Changes{})).Told("What was done or seen since Monday, by hand and by kind of work; whose work is late."),
		part.ToLots.Row(part.Does(part.Wood{})),
		part.ToWeather.Row(part.Does(part.Weather{})),
		part.ToMap.Row(b.turn).Named("whole").Told("See the block whole, a bar of stages for the rows, or walk in again."),
		part.ToNote.Row(func() part.Msgs { return b.x.AskNote(b.Cursor()) }),
		part.ToWhy.Row(b.why).Told("Why: what the counts mean, and by whose word."),
		part.ToPutBack.Row(b.x.PutBack).Named(""),
		part.ToSettle.Row(part.Does(part.NextClash{After: b.Cursor()})).Told("Open the next stump on which answers disagree."),
		part.ToLimb.Row(b.addLimb),
		part.ToSet.Row(b.settings).Told("The block's settings."),
		part.ToBlocks.Row(b.pickBlock),
		part.ToPaper.Row(part.Does(part.Sheets{})),
		{Binding: part.On("arrows", "", "left"), Says: "Move the cursor. Home and End go along the row, Page Up and Page Down by ten rows.", Do: step(0, -1)},
		{Binding: part.On("", "", "right"), Do: b.right},
		{Binding: part.On("", "", "up"), Do: step(-1, 0)},
		{Binding: part.On("", "", "down"), Do: step(1, 0)},
		{Binding: part.On("", "", "home"), Do: step(0, -record.MaxTree)},
		{Binding: part.On("", "", "end"), Do: step(0, record.MaxTree)},
		{Binding: part.On("", "", "pgup"), Do: step(-10, 0)},
		{Binding: part.On("", "", "pgdown"), Do: step(10, 0)},
		part.ToBack.Row(b.esc).Named(b.escWord()).Told("Back to the whole block; there, or where all is seen, let go of the picked stumps and the filter."),
	}...)
}

// undoWord names what u takes back here, nothing where there is nothing.
func (b *Screen) undoWord() string {
	words := b.x.LastAct()
	if words == "" {
		return ""
	}
	return fmt.Sprintf("take back %q", paper.Shorten(words, 20))
}

func (b *Screen) help() part.Msgs { return b.x.Help("block", b.Table(), b.x.Common(nil)) }

// step moves the cursor: by rows and trees, or by lines where the block is seen
// whole.
func (b *Screen) step(rows, trees int) part.Msgs {
	if len(b.rows) == 0 {
		return nil
	}
	if b.isWhole() {
		per := b.perLine()
		b.at = max(0, min(b.at/per+rows, (len(b.rows)-1)/per)) * per
		return nil
	}
	b.at = max(0, min(b.at+rows, len(b.rows)-1))
	b.tree = max(0, min(b.tree+trees, len(b.rows[b.at].sums)-1))
	return nil
}

func (b *Screen) right() part.Msgs {
	if b.isWhole() {
		return b.walkIn()
	}
	return b.step(0, 1)
}

func (b *Screen) open() part.Msgs {
	if b.isWhole() {
		return b.walkIn()
	}
	if id := b.Cursor(); id != record.NoStump {
		return part.Msgs{part.Open{Stump: id}}
	}
	return nil
}

// addLimb adds a limb to the tree under the cursor.
func (b *Screen) addLimb() part.Msgs {
	at := b.Cursor()
	if at == record.NoStump {
		return nil
	}
	id, words, err := b.x.AddLimb(at)
	if err != nil {
		return part.Fails(err)
	}
	if err := b.Load(); err != nil {
		return part.Fails(err)
	}
	b.MoveTo(id)
	return part.Says(words)
}

// place asks for a place; a digit may have begun it.
func (b *Screen) place(begun string) part.Msgs { return b.x.AskPlace(b.Cursor().Row, begun) }
