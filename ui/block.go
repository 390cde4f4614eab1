package ui

import (
	"fmt"
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/paper"
)

// blockScreen shows the rows of a block as they stand in the field, one mark a
// stump.
type blockScreen struct {
	r      *root
	x      *shared
	block  record.ID
	sums   []due.Summary
	rows   []row
	at     int // row of the cursor
	tree   int // place of the cursor in its row
	top    int // first row shown
	left   int // first column shown
	picked map[record.StumpID]bool
	filter func(due.Summary) bool
	what   string // the filter in words
	undo   []batch
	totals *totals // as of the last minute drawn
}

// row is the stumps of one row in order.
type row struct {
	number uint16
	sums   []due.Summary
}

// batch is answers given at once, to be taken back at once.
type batch struct {
	words  string
	events []record.Event
}

func newBlock(r *root, at record.StumpID) *blockScreen {
	b := &blockScreen{r: r, x: r.x, block: r.x.block, picked: map[record.StumpID]bool{}}
	if r.block != nil && r.block.block == b.block {
		b.picked, b.undo, b.filter, b.what = r.block.picked, r.block.undo, r.block.filter, r.block.what
		b.top, b.left = r.block.top, r.block.left
	}
	b.load()
	b.moveTo(at)
	return b
}

// load reads the summaries anew.
func (b *blockScreen) load() {
	sums := b.x.summaries(b.block)
	b.sums, b.rows, b.totals = sums, nil, nil
	for i, s := range sums {
		if i == 0 || s.ID.Row != sums[i-1].ID.Row {
			b.rows = append(b.rows, row{number: s.ID.Row})
		}
		last := &b.rows[len(b.rows)-1]
		last.sums = sums[i-len(last.sums) : i+1]
	}
	b.at = max(0, min(b.at, len(b.rows)-1))
}

// cursor is the stump under the cursor.
func (b *blockScreen) cursor() record.StumpID {
	if b.at >= len(b.rows) || len(b.rows) == 0 {
		return record.NoStump
	}
	r := b.rows[b.at]
	return r.sums[max(0, min(b.tree, len(r.sums)-1))].ID
}

// moveTo puts the cursor on a stump, or the nearest there is.
func (b *blockScreen) moveTo(id record.StumpID) bool {
	if id == record.NoStump {
		return false
	}
	for i, r := range b.rows {
		if r.number != id.Row {
			continue
		}
		at, found := slices.BinarySearchFunc(r.sums, id, func(s due.Summary, id record.StumpID) int { return s.ID.Compare(id) })
		b.at, b.tree = i, min(at, len(r.sums)-1)
		return found
	}
	return false
}

func (b *blockScreen) key(key string) {
	if len(key) == 1 && key[0] >= '1' && key[0] <= '9' {
		b.r.find(key)
		return
	}
	if !press(b.table(), key) && !press(b.r.common(b.help), key) {
		b.x.say(noSuchKey)
	}
}

func (b *blockScreen) table() []binding {
	return []binding{
		{keys: []string{"enter"}, show: "Enter", word: "open", help: "Open the stump under the cursor.", do: b.open},
		{keys: []string{"n"}, word: "next to do", help: "Open the next stump that needs a hand: white first, then in walking order.", do: func() { b.r.nextStump(b.cursor()) }},
		{keys: []string{"g"}, word: "rounds", help: "What is due, in walking order: the rounds.", do: b.r.openRounds},
		{keys: []string{"/"}, show: "4/17", word: "find", help: "Type row/tree to go to a stump.", do: func() { b.r.find("") }},
		{keys: []string{"f"}, word: "filter", help: "Show only stumps of one stage, late ones, or those that need a hand.", do: b.pickFilter},
		{keys: []string{"r"}, word: "row", help: "One answer for the whole row under the cursor.", do: b.answerRow},
		{keys: []string{"w"}, help: "Why: what the counts mean, and by whose word.", do: b.why},
		{keys: []string{"p"}, help: "Pace and supplies: what keeps up with the season of slip, how many to cut back today, what it takes.", do: b.pace},
		{keys: []string{" "}, show: "Space", help: "Pick a stump, or leave it out again.", do: b.pick},
		{keys: []string{"a"}, help: "One answer for all picked stumps.", do: b.answerPicked},
		{keys: []string{"u"}, word: b.undoWord(), help: "Take back the last answer given from this screen.", do: b.takeBack},
		{keys: []string{"o"}, help: "The block's settings.", do: b.r.settings},
		{keys: []string{"b"}, help: "Another block, or a new one.", do: b.r.pickBlock},
		{keys: []string{"d"}, help: "The weather: put a day down, read a list, see the coming days.", do: b.r.weather},
		{keys: []string{"l"}, help: "Lots of scion wood: see them, receive one.", do: b.r.lots},
		{keys: []string{"left"}, show: "arrows", help: "Move the cursor.", do: func() { b.step(0, -1) }},
		{keys: []string{"right"}, do: func() { b.step(0, 1) }},
		{keys: []string{"up", "k"}, do: func() { b.step(-1, 0) }},
		{keys: []string{"down", "j"}, do: func() { b.step(1, 0) }},
		{keys: []string{"home"}, do: func() { b.tree = 0 }},
		{keys: []string{"end"}, do: func() { b.step(0, record.MaxTree) }},
		{keys: []string{"pgup"}, do: func() { b.step(-10, 0) }},
		{keys: []string{"pgdown"}, do: func() { b.step(10, 0) }},
		{keys: []string{"esc"}, show: "Esc", help: "Let go of the picked stumps and the filter.", do: b.letGo},
	}
}

// undoWord names what u takes back here, nothing where there is nothing.
func (b *blockScreen) undoWord() string {
	if len(b.undo) == 0 {
		return ""
	}
	return fmt.Sprintf("take back %q", paper.Shorten(b.undo[len(b.undo)-1].words, 18))
}

func (b *blockScreen) help() { b.r.help("block", b.table(), b.r.common(nil)) }

func (b *blockScreen) step(rows, trees int) {
	if len(b.rows) == 0 {
		return
	}
	b.at = max(0, min(b.at+rows, len(b.rows)-1))
	b.tree = max(0, min(b.tree+trees, len(b.rows[b.at].sums)-1))
}

func (b *blockScreen) open() {
	if id := b.cursor(); id != record.NoStump {
		b.r.openStump(id)
	}
}

func (b *blockScreen) pick() {
	id := b.cursor()
	if b.picked[id] {
		delete(b.picked, id)
	} else if id != record.NoStump {
		b.picked[id] = true
	}
	b.x.say(fmt.Sprintf("%d picked; a gives all of them one answer.", len(b.picked)))
	b.step(0, 1)
}

func (b *blockScreen) letGo() {
	b.picked, b.filter, b.what = map[record.StumpID]bool{}, nil, ""
	b.x.say("")
}

// find asks for a place and goes there; on the block a digit begins it.
func (r *root) find(begun string) {
	r.ask("Go to row/tree:", "", true, func(text string) error {
		row, tree, limb, err := record.ParsePlace(text)
		if err != nil {
			return err
		}
		id := record.StumpID{Block: r.x.block, Row: row, Tree: tree, Limb: limb}
		if r.block == nil || !r.block.moveTo(id) {
			return fmt.Errorf("there is no stump at %s in this block", id.Place())
		}
		r.x.say("")
		r.openStump(id)
		return nil
	})
	r.prompt.field.text = begun
}

// nextStump opens the next stump that needs a hand after one: those to paint
// first, the soonest first, then in walking order, round to the beginning.
func (r *root) nextStump(after record.StumpID) {
	sums := r.x.summaries(r.x.block)
	if r.rounds != nil && r.on == onStump {
		r.openRounds()
		return
	}
	id, ok := nextNeedy(sums, after, r.on == onBlock, r.x.now())
	if cut, is := r.nextToCut(sums, after); !ok && is {
		r.openStump(cut)
		r.x.say("Nothing else needs a hand now; this one is next to be cut back.")
		return
	}
	if !ok {
		r.openBlock()
		r.x.say("Nothing more needs a hand now.")
		return
	}
	r.x.say("")
	r.openStump(id)
}

// nextToCut is the next standing stump in walking order, where the one before
// is standing too or was cut back today: on that day the work goes from one to
// the next, though nothing is due on any.
func (r *root) nextToCut(sums []due.Summary, after record.StumpID) (record.StumpID, bool) {
	today := r.x.site().Day(r.x.now())
	cutting, next := false, record.NoStump
	for _, s := range sums {
		if s.ID == after {
			if s.Stage == record.StageStanding && r.on == onBlock {
				return after, true // the one under the cursor
			}
			cutting = s.Stage == record.StageStanding || s.Stage == record.StageDraining && s.CutBack == today
			continue
		}
		if s.Stage == record.StageStanding && s.ID.WalkCompare(after) > 0 && (next == record.NoStump || s.ID.WalkCompare(next) < 0) {
			next = s.ID
		}
	}
	return next, cutting && next != record.NoStump
}

// nextNeedy is the next stump with something due: one to paint before all, also
// where it is the one at hand, as under the cursor.
func nextNeedy(sums []due.Summary, after record.StumpID, atHand bool, now time.Time) (record.StumpID, bool) {
	var white, first, next record.StumpID
	var soonest time.Time
	for _, s := range sums {
		if s.ID == after && !atHand {
			continue
		}
		dues := s.Dues
		if s.Stage == record.StageGrafted { // unsealed: nothing is due by the clock, but it cannot wait
			dues = append([]due.Due{{Stump: s.ID, Kind: due.Graft, Opens: s.Newest, By: s.Newest}}, dues...)
		}
		for _, d := range dues {
			if !d.Open(now) {
				continue
			}
			if d.Kind == due.White && (white == record.NoStump || d.By.Before(soonest)) {
				white, soonest = s.ID, d.By
			}
			if s.ID == after {
				continue
			}
			if first == record.NoStump || s.ID.WalkCompare(first) < 0 {
				first = s.ID
			}
			if s.ID.WalkCompare(after) > 0 && (next == record.NoStump || s.ID.WalkCompare(next) < 0) {
				next = s.ID
			}
		}
	}
	for _, id := range []record.StumpID{white, next, first} {
		if id != record.NoStump {
			return id, true
		}
	}
	return record.NoStump, false
}
