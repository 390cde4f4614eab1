package ui

import (
	"testing"

	"barkslip/core/record"
	"barkslip/ui/part"
)

// sealedRow is a block of two rows of three; of the first row two are sealed.
func sealedRow(t *testing.T) *driver {
	d := newDriver(t, "2027-05-04 12:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.sealed(tree(1, 1), "2027-04-20 09:00", "2027-05-04 08:30", "2027-05-04 09:00")
	d.sealed(tree(1, 3), "2027-04-20 09:00", "2027-05-04 08:50", "2027-05-04 09:20")
	d.sealed(tree(2, 2), "2027-04-20 09:00", "2027-05-04 09:00", "2027-05-04 09:30")
	d.open()
	return d
}

func (d *driver) stages() []record.Stage {
	d.t.Helper()
	sums, err := d.book.Summaries(home)
	if err != nil {
		d.t.Fatal(err)
	}
	var out []record.Stage
	for _, s := range sums {
		out = append(out, s.Stage)
	}
	return out
}

func (d *driver) wantStages(want ...record.Stage) {
	d.t.Helper()
	got := d.stages()
	for i := range want {
		if got[i] != want[i] {
			d.t.Fatalf("stages %v, want %v", got, want)
		}
	}
}

// TestRowAnswer paints a row white at a time given, for those it fits, in one
// go, and takes it back in one go.
func TestRowAnswer(t *testing.T) {
	d := sealedRow(t)
	d.sees("3 to paint")
	d.press("r")
	d.pickWord("painted white")
	d.press("11:50", "enter")
	d.sees("Recorded: row 1, painted white, 2 stumps")
	d.wantStages(record.StagePainted, record.StageStanding, record.StagePainted, record.StageStanding, record.StageSealed, record.StageStanding)
	d.sees("1 to paint")
	s, err := d.book.Stump(tree(1, 3))
	if err != nil || !s.Now().White.At.Equal(at("2027-05-04 11:50")) || s.Now().White.Hand != "RK" {
		t.Errorf("white %+v %v", s.Now().White, err)
	}
	for range 2 { // taken back, put back, taken back
		d.press("u")
		d.sees("Took back: row 1, painted white, 2 stumps")
		d.wantStages(record.StageSealed, record.StageStanding, record.StageSealed, record.StageStanding, record.StageSealed, record.StageStanding)
		d.sees("3 to paint")
		d.press("U")
		d.sees("Put back: row 1, painted white, 2 stumps")
		d.wantStages(record.StagePainted, record.StageStanding, record.StagePainted)
	}
	d.press("U")
	d.sees("Nothing was taken back")
	d.press("u")
	d.press("u")
	d.sees("Nothing more was answered since the program was opened")
}

// afterLooks is a row of five painted on 4 May: on the 7th one was seen cracked
// and mended this morning, one stands uncut.
func afterLooks(t *testing.T) *driver {
	d := newDriver(t, "2027-05-07 10:00")
	d.plant("Hollow Lane", rows(2, 5)...)
	for n := 1; n <= 4; n++ {
		d.sealed(tree(1, n), "2027-04-20 09:00", "2027-05-04 08:30", "2027-05-04 09:00")
		d.did(tree(1, n), "2027-05-04 11:30", &record.PaintedWhite{})
	}
	d.did(tree(1, 2), "2027-05-07 08:00", &record.SealChecked{Cracked: true}, &record.Resealed{})
	d.open()
	return d
}

// TestRowAnswerGoesOverNothingSeen: a seal seen cracked this morning is not sound
// because the row is, and the one left out is named with what was seen.
func TestRowAnswerGoesOverNothingSeen(t *testing.T) {
	d := afterLooks(t)
	d.keys = 0
	d.press("r")
	d.pickWord("seal whole")
	d.sees("row 1, seal whole, 3 stumps. When?", "Left out 2: 1/2 cracked, 08:00; 1/5 not due.")
	d.press("enter")
	t.Logf("a row's seals looked at: %d key presses", d.keys)
	if d.keys != 3 {
		t.Errorf("%d key presses, want 3", d.keys)
	}
	d.sees("Recorded: row 1, seal whole, 3 stumps, 10:00.", "Left out 2")
	for n, want := range []int{1, 1, 1, 1, 0} {
		if s, _ := d.book.Stump(tree(1, n+1)); len(s.Now().SealChecks) != want {
			t.Errorf("1/%d has %d looks at its seal", n+1, len(s.Now().SealChecks))
		}
	}
	d.press("r")
	for _, item := range d.root.over.(*part.List).Items() {
		if item.Word == "seal whole" || item.Word == "headed back" || item.Word == "gashed" {
			t.Errorf("%s is offered on 7 May, with every seal looked at", item.Word)
		}
	}
}

// TestRoundAnswer gives one answer to the work under the cursor, for its row.
func TestRoundAnswer(t *testing.T) {
	d := afterLooks(t)
	d.press("g", "tab", "tab", "r")
	d.pickWord("seal whole")
	d.press("enter")
	d.sees("Recorded: row 1, seal whole, 3 stumps")
	d.press("u")
	d.sees("Took back: row 1, seal whole, 3 stumps")
	d.press("U")
	d.sees("Put back: row 1, seal whole, 3 stumps")
}

// TestBlockTakesBackActsOfTheSession: one act at a time, and nothing that was
// answered before the program was opened.
func TestBlockTakesBackActsOfTheSession(t *testing.T) {
	d := afterLooks(t)
	d.press("enter", "1", "esc", "r")
	d.pickWord("seal whole")
	d.press("enter", "u")
	d.sees("Took back: row 1, seal whole, 2 stumps")
	d.press("u")
	d.sees("Took back: 1/1, seal whole")
	d.press("u")
	d.sees("Nothing more was answered")
	if s, _ := d.book.Stump(tree(1, 2)); len(s.Now().SealChecks) != 1 {
		t.Error("an answer of before was taken back")
	}
}

// TestRowAnswerTimes types when it was done.
func TestRowAnswerTimes(t *testing.T) {
	d := sealedRow(t)
	d.press("r")
	d.pickWord("painted white")
	for _, wrong := range []string{"12:01", "25:00", "99"} {
		d.press(wrong, "enter")
		if !over[*part.Prompt](d) {
			t.Fatalf("%s was taken", wrong)
		}
		for range wrong {
			d.press("backspace")
		}
	}
	d.press("enter")
	d.sees("Recorded: row 1", "12:00")
}

// TestRowAnswerLeft leaves the list and the time without an answer.
func TestRowAnswerLeft(t *testing.T) {
	d := sealedRow(t)
	before := d.stages()
	d.press("r", "esc", "r")
	d.pickWord("painted white")
	d.press("esc")
	d.wantStages(before...)
}

// TestPickedAnswer picks two stumps of two rows and answers for both.
func TestPickedAnswer(t *testing.T) {
	d := sealedRow(t)
	d.press("a")
	d.sees("One answer for which stumps?")
	d.press("esc", "space", "down", "space")
	d.sees("2 picked")
	d.press("a")
	d.pickWord("painted white")
	d.press("enter")
	d.sees("the picked, painted white, 2 stumps")
	d.wantStages(record.StagePainted, record.StageStanding, record.StageSealed, record.StageStanding, record.StagePainted, record.StageStanding)
	d.press("u")
	d.wantStages(record.StageSealed, record.StageStanding, record.StageSealed, record.StageStanding, record.StageSealed, record.StageStanding)
	d.press("esc", "a")
	d.sees("One answer for which stumps?")
	d.pickWord("all of the block")
	d.sees("6 picked")
}

// TestPickAndLeaveOut picks a stump and leaves it out again.
func TestPickAndLeaveOut(t *testing.T) {
	d := sealedRow(t)
	d.press("space", "left", "space")
	d.sees("0 picked")
}

// TestRowWithoutAnAnswer asks for a row that nothing fits.
func TestRowWithoutAnAnswer(t *testing.T) {
	d := newDriver(t, "2027-05-04 12:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	for n := 1; n <= 3; n++ {
		d.did(tree(1, n), "2027-05-04 11:00", &record.GivenUp{Why: "given up"})
	}
	d.open()
	d.press("r")
	d.sees("fits row 1")
	if over[*part.List](d) {
		t.Error("an empty list is open")
	}
}

// TestRowCutBack cuts a whole row back at the block's height, and gashes it.
func TestRowCutBack(t *testing.T) {
	d := newDriver(t, "2027-05-04 12:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.press("r")
	d.pickWord("cut back")
	d.press("enter")
	d.sees("row 1, cut back, 3 stumps")
	d.press("r")
	d.pickWord("gashed")
	d.press("enter")
	d.wantStages(record.StageDraining, record.StageDraining, record.StageDraining, record.StageStanding)
	if s, _ := d.root.x.Book.Stump(tree(1, 2)); s.Now().CutBack.What.Height.Typed != "42 in" || len(s.Now().Gashes) != 1 {
		t.Errorf("1/2 is cut at %s with %d gashes", s.Now().CutBack.What.Height.Typed, len(s.Now().Gashes))
	}
}

// TestRowAnswerAndStumpUndo takes back on one stump what was answered for the
// row; the others keep it.
func TestRowAnswerAndStumpUndo(t *testing.T) {
	d := sealedRow(t)
	d.press("r")
	d.pickWord("painted white")
	d.press("enter", "enter", "u")
	d.sees("Took back: painted white")
	d.press("esc")
	d.wantStages(record.StageSealed, record.StageStanding, record.StagePainted)
}

// TestTwoBlocksAreOne joins two blocks that were begun by hand for one ground.
func TestTwoBlocksAreOne(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	other := record.ID{0xff, 1}
	d.append(record.Event{At: d.now, Hand: "AB", Body: &record.BlockMade{Block: other, Name: "Lane"}},
		record.Event{At: d.now, Hand: "AB", Stump: record.StumpID{Block: other, Row: 1, Tree: 2}, Body: &record.StumpAdded{}},
		record.Event{At: d.now, Hand: "AB", Stump: record.StumpID{Block: other, Row: 1, Tree: 3}, Body: &record.CutBack{Height: inches(40)}})
	d.open()
	d.press("b")
	d.pickWord("Lane")
	d.press("b")
	d.pickWord("two are one")
	d.pickWord("Hollow Lane")
	d.pickWord("one block")
	d.sees("Lane and Hollow Lane are one block.", "3 stumps")
	d.wantStages(record.StageStanding, record.StageStanding, record.StageDraining)
	if blocks := d.root.x.Book.Folded().List(); len(blocks) != 1 || d.root.x.Block != home {
		t.Errorf("%d blocks go on", len(blocks))
	}
}

// TestSettleAClash picks one of two answers given on two laptops.
func TestSettleAClash(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.did(tree(1, 1), "2027-04-26 09:00", cut()...)
	d.append(record.Event{At: at("2027-04-26 10:00"), Hand: "AB", Stump: tree(1, 1), Body: &record.CutBack{Height: inches(50)}})
	d.open()
	d.press("enter")
	d.sees("Two answers stand", "cut back 42 in (RK, 26 Apr", "50 in (AB, 26 Apr 10:00)")
	d.press("e")
	d.pickWord("cut back 50 in")
	d.sees("Settled: cut back 50 in.")
	d.lacks("Two answers stand")
	if s := d.stump(); len(s.Clashes) != 0 || s.Now().CutBack.What.Height.Inches() != 50 || !s.Now().CutBack.At.Equal(at("2027-04-26 10:00")) {
		t.Errorf("%+v", s.Now().CutBack)
	}
	d.press("e")
	d.sees("Nowhere in this block do answers disagree.")
}

// TestWhiteOrWet shows two hands that differ about the white, lets the careful
// answer count, leads to the place and settles it by one key.
func TestWhiteOrWet(t *testing.T) {
	d := newDriver(t, "2027-05-04 14:45")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.did(tree(1, 2), "2027-04-26 09:00", cut()...)
	for _, e := range []record.Event{
		{At: at("2027-05-04 10:00"), Hand: "RK", Body: &record.ScionSet{Slot: 1}}, {At: at("2027-05-04 11:00"), Hand: "RK", Body: &record.Sealed{Cover: record.Wrapped}},
		{At: at("2027-05-04 14:00"), Hand: "RK", Body: &record.StillWet{}}, {At: at("2027-05-04 14:05"), Hand: "AB", Body: &record.PaintedWhite{}},
	} {
		e.Stump = tree(1, 2)
		d.append(e)
	}
	d.open()
	d.sees("?")
	d.press("e")
	d.sees("row 1 tree 2", "still wet (RK, 14:00) and", "painted white (AB, 14:05). Until e settles it", "still wet counts.")
	if d.stump().Now().IsWhite() {
		t.Error("it counts as white")
	}
	d.press("e")
	d.pickWord("painted white")
	d.sees("Settled: painted white.")
	if s := d.stump(); len(s.Clashes) != 0 || !s.Now().IsWhite() {
		t.Errorf("%d disagree, white %v", len(s.Clashes), s.Now().IsWhite())
	}
	d.press("e")
	d.sees("Nowhere in this block do answers disagree.")
	d.press("u")
	if s := d.stump(); len(s.Clashes) != 1 || s.Now().IsWhite() {
		t.Errorf("taken back, %d disagree", len(s.Clashes))
	}
}
