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
	b.sums, b.rows, b.totals, b.heat = b.x.Summaries(b.x.Block), nil, nil, nil
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

// Table is the keys of the screen.
func (b *Screen) Table() []part.Row {
	step := func(rows, trees int) func() part.Msgs { return func() part.Msgs { return b.step(rows, trees) } }
	return []part.Row{
		{Binding: part.On("Enter", b.enterWord(), "enter"), Says: "Open the stump under the cursor; from the whole block, walk into the rows.", Do: b.open},
		{Binding: part.On("n", "next to do"), Says: "Open the next stump that needs work: what runs out first, then up one row and down the next.",
			Do: part.Does(part.Next{After: b.Cursor(), AtHand: true})},
		{Binding: part.On("u", b.undoWord()), Says: "Take back the last answer given since the program was opened, for all of its stumps.", Do: b.x.TakeBack},
		{Binding: part.On("U", ""), Says: "Put back what was taken back here.", Do: b.x.PutBack},
		{Binding: part.On("g", "rounds"), Says: "What is due, in walking order: the rounds.", Do: part.Does(part.Rounds{})},
		{Binding: part.On("4/17", "find", "/"), Says: "Type row/tree to go to a stump, or / and a tree of this row.", Do: func() part.Msgs { return b.place("") }},
		{Binding: part.On("f", "filter"), Says: "Show only some stumps: by stage, work, lot, variety, hand, bleeding, result, cause, or when last seen. " +
			"Several filters combine, and the rounds and n keep to them.", Do: b.pickField},
		{Binding: part.On("Tab", b.matchWord("next shown"), "tab"), Says: "To the next stump the filter shows.", Do: func() part.Msgs { return b.match(1) }},
		{Binding: part.On("Shift-Tab", "", "shift+tab"), Says: "To the stump before that the filter shows.", Do: func() part.Msgs { return b.match(-1) }},
		{Binding: part.On("A", b.matchWord("pick all")), Says: "Pick all stumps the filter shows; without a filter, all of the block.", Do: b.pickAll},
		{Binding: part.On("v", ""), Says: "See the block whole, a bar of stages for the rows, or walk in again.", Do: b.turn},
		{Binding: part.On("m", ""), Says: "What the marks mean, in words.", Do: b.legend},
		{Binding: part.On("r", "row"), Says: "One answer for the whole row under the cursor.", Do: b.answerRow},
		{Binding: part.On("w", ""), Says: "Why: what the counts mean, and by whose word.", Do: b.why},
		{Binding: part.On("p", ""), Says: "The plan: will it be done while bark slips, how many to cut back each day, who has which rows, what to load.",
			Do: part.Does(part.Plan{})},
		{Binding: part.On("T", ""), Says: "Tally: what took, what stands, what was lost to what.", Do: part.Does(part.Tally{})},
		{Binding: part.On("c", ""), Says: "Changes: what was done or seen since Monday, by hand and by kind; whose work is late.", Do: part.Does(part.Changes{})},
		{Binding: part.On("E", ""), Says: "Open the next stump on which answers disagree.", Do: part.Does(part.NextClash{After: b.Cursor()})},
		{Binding: part.On("Space", "", " "), Says: "Pick a stump, or leave it out again.", Do: b.pick},
		{Binding: part.On("a", ""), Says: "One answer for all picked stumps.", Do: b.answerPicked},
		{Binding: part.On("y", ""), Says: "Add a limb of this tree, as where it forks: a stump of its own.", Do: b.addLimb},
		{Binding: part.On("o", ""), Says: "The block's settings.", Do: b.settings},
		{Binding: part.On("b", ""), Says: "Another block, or a new one.", Do: b.pickBlock},
		{Binding: part.On("d", ""), Says: "The weather: put a day down, read a list, see the coming days.", Do: part.Does(part.Weather{})},
		{Binding: part.On("l", ""), Says: "Lots of scion wood: see them, receive one.", Do: part.Does(part.Wood{})},
		{Binding: part.On("arrows", "", "left"), Says: "Move the cursor.", Do: step(0, -1)},
		{Binding: part.On("", "", "right"), Do: b.right},
		{Binding: part.On("", "", "up", "k"), Do: step(-1, 0)},
		{Binding: part.On("", "", "down", "j"), Do: step(1, 0)},
		{Binding: part.On("", "", "home"), Do: step(0, -record.MaxTree)},
		{Binding: part.On("", "", "end"), Do: step(0, record.MaxTree)},
		{Binding: part.On("", "", "pgup"), Do: step(-10, 0)},
		{Binding: part.On("", "", "pgdown"), Do: step(10, 0)},
		{Binding: part.On("Esc", "", "esc"), Says: "Back to the whole block; there, or where all is seen, let go of the picked stumps and the filter.", Do: b.esc},
	}
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
