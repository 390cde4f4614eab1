package ui

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/block"
	"barkslip/ui/first"
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

// TestSettings changes settings of a block; a value that cannot be is refused
// with what can.
func TestSettings(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	for _, c := range []struct {
		word, wrong, right string
		holds              func(b *record.Block) bool
	}{
		{"name", "", "River field", func(b *record.Block) bool { return b.Name == "River field" }},
		{"units", "cubits", "metric", func(b *record.Block) bool { return b.Units == unit.Metric }},
		{"time zone", "Mars/Olympus", "America/Los_Angeles", func(b *record.Block) bool { return b.Zone.String() == "America/Los_Angeles" }},
		{"latitude", "91", "38.5", func(b *record.Block) bool { return b.Lat == 38.5 }},
		{"longitude", "far", "-121.5", func(b *record.Block) bool { return b.Lon == -121.5 }},
		{"variety planned", "", "Amber", func(b *record.Block) bool { return b.Variety == "Amber" }},
		{"graft height", "tall", "30in", func(b *record.Block) bool { return b.GraftHeight.Length == 30*unit.Inch }},
		{"browse height", "six", "6ft", func(b *record.Block) bool { return b.Browse.Length == 6*unit.Foot }},
		{"frosty", "maybe", "yes", func(b *record.Block) bool { return b.Frosty }},
		{"earwigs", "some", "yes", func(b *record.Block) bool { return b.Earwigs }},
		{"pinch until", "13-40", "09-01", func(b *record.Block) bool { return b.PinchUntil.Day == 1 }},
	} {
		d.press("o")
		d.pickWord(c.word)
		if c.word != "variety planned" {
			d.press(c.wrong, "enter")
			if !over[*part.Prompt](d) || !d.root.said.Wrong {
				t.Errorf("%s: %q was taken", c.word, c.wrong)
				continue
			}
			for range c.wrong {
				d.press("backspace")
			}
		}
		d.press(c.right, "enter")
		if c.word == "time zone" { // three hours off the place that is set still
			d.sees("do not agree")
			d.pickWord("both are right")
		}
		if over[*part.Prompt](d) || !c.holds(d.root.x.Site()) {
			t.Errorf("%s: %q was not taken: %s", c.word, c.right, d.root.said.Text)
		}
		d.press("esc", "esc")
	}
	d.sees("River field")
	d.open()
	d.sees("River field")
	if n := len(d.book.Folded().Answers("block/" + home.String() + "/name")); n != 1 {
		t.Errorf("%d names stand", n)
	}
}

// TestBareLengthOfASetting refuses a height without a unit: 6 may be feet as well
// as inches.
func TestBareLengthOfASetting(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	before := d.root.x.Site().GraftHeight
	d.press("o")
	d.pickWord("graft height")
	d.press("34", "enter")
	if !over[*part.Prompt](d) || !strings.Contains(d.root.said.Text, "unit") || d.root.x.Site().GraftHeight != before {
		t.Fatalf("a bare 34 is taken as %v; %s", d.root.x.Site().GraftHeight, d.root.said.Text)
	}
	d.press("in", "enter")
	if h := d.root.x.Site().GraftHeight.Length; h != 34*unit.Inch {
		t.Errorf("34in is taken as %v; %s", h, d.root.said.Text)
	}
}

// TestBlockFromAList makes a block from a list, after lists that cannot be.
func TestBlockFromAList(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.files(map[string]string{
		"good.csv":  "row,tree,variety,across,note\n1,1,Amber,3.5in,by the gate\n1,2,,,\n7,40,,,\n",
		"twice.csv": "row,tree\n1,1\n1,1\n",
		"word.csv":  "row,tree\n1,x\n",
		"head.csv":  "column,place\n1,1\n",
		"empty.csv": "",
	})
	d.press("b")
	d.pickWord("a new block")
	d.press("2", "River field", "enter")
	d.sees("Which list?")
	for _, path := range []string{"", "none.csv", "twice.csv", "word.csv", "head.csv", "empty.csv"} {
		d.press(path, "enter")
		if !is[*first.Screen](d) || !d.root.said.Wrong {
			t.Fatalf("%q was taken:\n%s", path, d.screen())
		}
		if strings.HasSuffix(path, "word.csv") {
			d.sees("line 2", "tree")
		}
		d.sees("Which list?")
		for range path {
			d.press("backspace")
		}
	}
	d.press("good.csv", "enter")
	for range 12 {
		if !is[*first.Screen](d) {
			break
		}
		d.press("enter")
	}
	d.sees("River field", "3 stumps")
	d.goTo(7, 40)
	d.press("esc")
	d.goTo(1, 1)
	d.sees("for Amber")
	if s := d.stump(); s.Across() != 3.5*unit.Inch {
		t.Errorf("%v across", s.Across())
	}
}

// TestFirstUseRefusesNonsense types what cannot be to each question of first
// use.
func TestFirstUseRefusesNonsense(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.press("1")
	wrong := map[string]string{"name": "", "rows": "none", "trees": "0", "units": "cubits", "zone": "Mars", "place": "91 0", "graft-height": "12 parsecs"}
	asked := 0
	for is[*first.Screen](d) {
		q := d.asked()
		if bad, ok := wrong[q]; ok {
			asked++
			d.press(bad, "enter")
			if now := d.asked(); now != q || !d.root.said.Wrong {
				t.Fatalf("%s: %q was taken", q, bad)
			}
			for range bad {
				d.press("backspace")
			}
		}
		if q == "name" {
			d.press("Home")
		}
		d.press("enter")
		if asked > 20 {
			t.Fatal("it goes round")
		}
	}
	if asked != len(wrong) {
		t.Errorf("%d of %d questions asked", asked, len(wrong))
	}
	d.sees("Home", "240 stumps")
}

// TestFirstUseGoesBack corrects an answer before the last.
func TestFirstUseGoesBack(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.press("1", "Home", "enter", "2", "enter")
	d.press("esc", "esc")
	d.sees("> Home")
	d.press(" field", "enter")
	d.sees("> 2")
	for is[*first.Screen](d) {
		d.press("enter")
	}
	d.sees("Home field", "2 rows")
}

// TestSampleFromFirstUse opens the made-up block, or says that there is none.
func TestSampleFromFirstUse(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.press("3")
	d.sees("not to be had")
	d.root.x.Sample = func() (Options, error) { return Options{}, errors.New("no room for it") }
	d.press("3")
	d.sees("no room for it")
	real := d.root.x.Options
	made := newDriver(t, "2027-05-04 09:00")
	made.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockMade{Block: home, Name: "Hollow Lane"}},
		record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: "made-up", Value: "yes"}})
	d.root.x.Sample = func() (Options, error) {
		o := made.root.x.Options
		o.Tick = real.Tick
		o.Own = func() (Options, error) { return real, nil }
		return o, nil
	}
	d.press("3")
	d.sees("Hollow Lane", "Nothing in it is real")
	if n := len(d.book.Folded().Blocks); n != 0 {
		t.Errorf("%d made-up blocks in the real book", n)
	}
	d.marked()
	for _, keys := range [][]string{{"?"}, {"esc", "o"}, {"esc", "w"}, {"esc", "p"}, {"esc", "l"}, {"esc", "g"}, {"esc", "b"}} {
		d.press(keys...)
		d.marked()
	}
	d.pickWord("your own book")
	if !is[*first.Screen](d) || strings.Contains(d.screen(), "made up:") {
		t.Errorf("not back in the own book:\n%s", d.screen())
	}

	made.root.x.OwnDay = func() bool { return true }
	made.root.start()
	made.sees("Its own day is 4 May 2027")
	made.marked()
}

// TestNextThatNeedsWork goes from stump to stump: the white clock first, then
// on in walking order and round to the beginning.
func TestNextThatNeedsWork(t *testing.T) {
	d := newDriver(t, "2027-05-04 13:00")
	d.plant("Hollow Lane", rows(3, 3)...)
	for _, p := range [][2]int{{1, 3}, {2, 1}, {2, 3}, {3, 2}} {
		d.did(tree(p[0], p[1]), "2027-04-20 09:00", cut()...)
	}
	d.open()
	d.press("n")
	// those standing are cut back in their turn, those cut back are looked at
	met, last := map[record.StumpID]bool{}, d.walk().ID()
	for !met[last] {
		met[last] = true
		d.press("n")
		if id := d.walk().ID(); id.WalkCompare(last) <= 0 && !met[id] {
			t.Fatalf("from %s back to %s", last.Place(), id.Place())
		}
		last = d.walk().ID()
	}
	for _, p := range [][2]int{{1, 3}, {2, 1}, {2, 3}, {3, 2}} {
		if !met[tree(p[0], p[1])] {
			t.Errorf("%v was passed by", p)
		}
	}
	d.sealed(tree(3, 3), "2027-04-20 09:00", "2027-05-04 10:00", "2027-05-04 10:30")
	d.open()
	d.press("n")
	if id := d.walk().ID(); id != tree(3, 3) {
		t.Errorf("on %s, want the one to be painted", id.Place())
	}
}

// TestNoMoreWork says so.
func TestNoMoreWork(t *testing.T) {
	d := newDriver(t, "2027-05-04 13:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	for n := 1; n <= 3; n++ {
		d.did(tree(1, n), "2027-05-04 12:00", &record.GivenUp{Why: "given up"})
	}
	d.open()
	d.press("n")
	d.sees("No more work is due now.")
	if !is[*block.Screen](d) {
		t.Error("a stump is open")
	}
}

// TestCutBackDayGoesFromStumpToStump: where nothing is due the next one to cut
// back is opened, the one under the cursor first.
func TestCutBackDayGoesFromStumpToStump(t *testing.T) {
	d := newDriver(t, "2027-05-04 13:00")
	d.plant("Hollow Lane", rows(2, 2)...)
	d.open()
	for _, want := range []record.StumpID{tree(1, 1), tree(1, 2), tree(2, 2), tree(2, 1)} {
		d.press("n")
		if !is[*stump.Screen](d) || d.walk().ID() != want {
			t.Fatalf("not on %s:\n%s", want.Place(), d.screen())
		}
		d.did(want, "2027-05-04 13:00", cut()...)
		d.open()
		d.goTo(int(want.Row), int(want.Tree))
		if want == tree(2, 1) {
			break
		}
		d.press("esc")
	}
	d.press("n")
	d.sees("No more work is due now.")
}

// TestFind goes to a place typed, and says which there is not.
func TestFind(t *testing.T) {
	d := newDriver(t, "2027-05-04 13:00")
	d.plant("Hollow Lane", rows(5, 20)...)
	d.append(record.Event{At: d.now, Hand: "RK", Stump: record.StumpID{Block: home, Row: 4, Tree: 17, Limb: 2}, Body: &record.StumpAdded{}})
	d.open()
	d.press("4", "/17", "enter")
	d.sees("row 4 tree 17 limb b") // a tree with limbs is its first limb
	d.press("/", "2/3", "enter")
	d.sees("row 2 tree 3")
	d.press("esc")
	if id := d.ground().Cursor(); id != tree(2, 3) {
		t.Errorf("the cursor is on %s", id.Place())
	}
	d.press("4/17/2", "enter")
	d.sees("row 4 tree 17 limb b")
	d.press("esc", "4/17b", "enter")
	d.sees("row 4 tree 17 limb b")
	d.press("esc")
	for _, wrong := range []string{"9/9", "4/21", "21", "4/x", "0/1", "4/17/9", "99999/1", "/"} {
		d.press("/", wrong, "enter")
		if !is[*block.Screen](d) || !over[*part.Prompt](d) || !d.root.said.Wrong {
			t.Errorf("%q was taken:\n%s", wrong, d.screen())
		}
		d.press("esc")
	}
	d.press("9", "/9", "enter")
	d.sees("9/9")
}

// TestFilter leaves only stumps of one stage to be seen.
func TestFilter(t *testing.T) {
	d := newDriver(t, "2027-05-04 13:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.sealed(tree(1, 2), "2027-04-20 09:00", "2027-05-04 08:00", "2027-05-04 08:30")
	d.did(tree(2, 3), "2027-04-20 09:00", cut()...)
	d.did(tree(2, 1), "2027-05-04 08:00", &record.Noted{Text: "crooked"})
	d.open()
	for word, want := range map[string]string{"sealed": "1 of 6", "draining": "1 of 6", "standing": "4 of 6", "late": "2 of 6", "with notes": "1 of 6",
		"disagree": "0 of 6"} {
		d.press("f")
		if slices.ContainsFunc(record.Stages(), func(s record.Stage) bool { return s.String() == word }) {
			d.pickWord("stage")
		}
		d.pickWord(word)
		d.sees(want)
		d.press("esc")
		d.lacks("only")
	}
}

// TestHand takes initials and refuses what is none.
func TestHand(t *testing.T) {
	d := newDriver(t, "2027-05-04 13:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	saved := Prefs{}
	d.root.x.SavePrefs = func(p Prefs) error { saved = p; return nil }
	for _, wrong := range []string{"ABCDE", "R2", "R K", "-"} {
		d.press("h", wrong, "enter")
		if !over[*part.Prompt](d) {
			t.Errorf("%q was taken", wrong)
		}
		d.press("esc")
	}
	d.press("h", "jm", "enter", "enter", "2")
	if e, _ := newest[*record.NurseJudged](d); e.Hand != "JM" || saved.Hand != "JM" {
		t.Errorf("hand %q, kept %q", e.Hand, saved.Hand)
	}
	d.root.x.SavePrefs = func(p Prefs) error { return errors.New("the settings cannot be written") }
	d.press("*")
	d.sees("cannot be written")
}

// TestThemeAndCoachAreKept switches both.
func TestThemeAndCoachAreKept(t *testing.T) {
	d := newDriver(t, "2027-05-04 13:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	saved := Prefs{}
	d.root.x.SavePrefs = func(p Prefs) error { saved = p; return nil }
	d.press("*", "enter", "c")
	d.sees("Look for")
	if saved.Theme != "sunlight" || !saved.Coach {
		t.Errorf("kept %+v", saved)
	}
	d.press("f3", "c")
	d.lacks("Look for")
	if saved.Theme != "dark" || saved.Coach {
		t.Errorf("kept %+v", saved)
	}
}
