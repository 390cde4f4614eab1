package ui

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
)

// pasteText puts a text in as a terminal does.
func (d *driver) pasteText(text string) {
	d.root.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

var sickLot = record.ID{8}

// withLot is a block of 2 rows of 4 on which a lot was set at 1/1, 1/3, 2/2 and 2/4,
// and another at 1/2.
func withLot(t *testing.T) *driver {
	d := newDriver(t, "2027-05-20 09:00")
	d.plant("Hollow Lane", rows(2, 4)...)
	d.append(record.Event{At: at("2027-04-01 09:00"), Hand: "RK", Body: &record.LotReceived{Lot: sickLot, Name: "L-8",
		Variety: "Lantern", Sticks: 9, Source: "old orchard"}},
		record.Event{At: at("2027-04-01 09:00"), Hand: "RK", Body: &record.LotReceived{Lot: record.ID{9}, Name: "L-9", Variety: "Lantern"}})
	for _, id := range []record.StumpID{tree(1, 1), tree(1, 3), tree(2, 2), tree(2, 4)} {
		d.set(id, sickLot)
	}
	d.set(tree(1, 2), record.ID{9})
	d.open()
	return d
}

// set sets two scions of a lot on a stump and seals them.
func (d *driver) set(id record.StumpID, lot record.ID) {
	d.did(id, "2027-05-03 09:00", cut()...)
	var bodies []record.Body
	for n := 1; n <= 2; n++ {
		bodies = append(bodies, &record.ScionSet{Slot: n, Lot: lot, Variety: "Lantern", Checks: record.AllGood})
	}
	d.did(id, "2027-05-12 09:00", bodies...)
	d.did(id, "2027-05-12 10:00", &record.Sealed{Cover: record.Wrapped})
	d.did(id, "2027-05-12 13:00", &record.PaintedWhite{})
}

// toLot opens the lot from the block by its name.
func (d *driver) toLot(name string) {
	d.t.Helper()
	d.press("l")
	for n, line := 0, strings.Split(d.screen(), "\n"); n < len(line); n++ {
		words := strings.Fields(strings.TrimPrefix(line[n], ">"))
		if len(words) > 1 && words[1] == name {
			d.press(words[0])
			d.sees("Went")
			return
		}
	}
	d.t.Fatalf("no lot %s:\n%s", name, d.screen())
}

// TestWhereALotWent: a list in walking order, and the stumps marked on the map until
// Esc lets go of them.
func TestWhereALotWent(t *testing.T) {
	d := withLot(t)
	d.toLot("L-8")
	d.sees("8 set on 4 stumps, 19 to 28 scions left of 9 sticks", "4 stumps: 8 wait", "old orchard")
	screen := d.screen()
	from := 0
	for _, place := range []string{"1/1", "1/3", "2/4", "2/2"} { // up one row, down the next
		i := strings.Index(screen[from:], place)
		if i < 0 {
			t.Fatalf("%s is not in its place:\n%s", place, screen)
		}
		from += i
	}
	d.press("3")
	d.sees("only lot L-8", "4 of 8 are lot L-8. Esc shows all.")
	_, tall := d.root.x.TallMark(record.StagePainted)
	painted, standing := regexp.MustCompile(tall+"+"), d.root.x.Mark(record.StageStanding)
	if n := len(painted.FindAllString(fieldOf(d), -1)); n != 4 || strings.Contains(fieldOf(d), standing) {
		t.Errorf("%d stumps are shown:\n%s", n, d.screen())
	}
	d.press("esc")
	if n := len(painted.FindAllString(fieldOf(d), -1)) + strings.Count(fieldOf(d), standing); n != 8 {
		t.Errorf("%d stumps are shown again:\n%s", n, d.screen())
	}
}

// fieldOf is the two rows of the block as drawn, without what stands beside them.
func fieldOf(d *driver) string {
	var out []string
	for _, l := range strings.Split(d.screen(), "\n") {
		l = strings.TrimPrefix(l, ">")
		if r := []rune(l); len(r) > 40 && strings.TrimSpace(string(r[:6])) != "" && strings.Trim(strings.TrimSpace(string(r[:5])), "12") == "" {
			out = append(out, string(r[5:40]))
		}
	}
	return strings.Join(out, "\n")
}

// TestHoldingALotAsksAtEachStump goes through its stumps one by one; each answer is in
// the record and can be taken back.
func TestHoldingALotAsksAtEachStump(t *testing.T) {
	d := withLot(t)
	d.toLot("L-8")
	d.press("2", "mouldy", "enter")
	d.sees("its scions live on 4 stumps")
	d.press("1")
	d.sees("What is done at 1/1 about its wood of lot L-8?", "mouldy", "2 wait", "Stump 1 of 4; 4 without an answer")
	d.press("enter")
	d.sees("Look at the stump")
	d.press("1")
	d.sees("What is done at 1/3", "kept and watched", "3 without an answer")
	d.press("2")
	d.sees("What is done at 2/4", "1 to be cut out")
	d.press("3")
	d.sees("What is done at 2/2", "cut out, graft 1 dead, poor wood; 2 dead, poor wood")
	s, err := d.book.Stump(tree(2, 4))
	if err != nil {
		t.Fatal(err)
	}
	if !s.Now().AllDead() || len(s.Now().Followed) != 1 || s.Now().Followed[0].What.Do != record.WereCut {
		t.Errorf("2/4 is %+v", s.Now())
	}
	d.press("u") // both of the act
	d.sees("Took back", "What is done at 2/4")
	if s, _ = d.book.Stump(tree(2, 4)); s.Now().AllDead() || len(s.Now().Followed) != 0 {
		t.Errorf("2/4 is %+v", s.Now())
	}
	d.press("esc")
	d.sees("HELD: mouldy", "No answer yet at 2 stumps", "To be cut out at 1 stump", "kept and watched")
	d.press("2")
	d.sees("may be used again")
	d.lacks("HELD", "kept and watched", "not said")
}

// TestAHeldLotIsFlagged: under the cursor, at the stump and in its story; l asks there.
func TestAHeldLotIsFlagged(t *testing.T) {
	d := withLot(t)
	d.append(record.Event{At: d.now, Hand: "RK", Body: &record.LotHeld{Lot: sickLot, Held: true, Why: "mouldy"}})
	d.open()
	d.goTo(1, 3)
	d.sees("Of lot L-8, HELD: mouldy. 2 scions here", "l asks what becomes of it.")
	d.press("j")
	d.sees("scion 1 set (lot L-8, HELD: mouldy)")
	d.press("esc", "l")
	d.sees("What is done at 1/3")
	d.press("1", "esc")
	d.sees("2 scions here: kept")
	d.lacks("l asks")
	d.press("esc")
	d.sees("2 scions of HELD lot L-8, kept and watched")
	d.goTo(1, 2)
	d.lacks("HELD")
	d.press("j")
	d.sees("scion 1 set, of lot L-9")
}

// TestALotHeldAfterItsScionsDied asks nothing: there is nothing to do.
func TestALotHeldAfterItsScionsDied(t *testing.T) {
	d := withLot(t)
	for _, id := range []record.StumpID{tree(1, 1), tree(1, 3), tree(2, 2), tree(2, 4)} {
		d.did(id, "2027-05-19 09:00", &record.Visited{Found: []record.Finding{{Slot: 1, State: record.Dead}, {Slot: 2, State: record.Dead}}})
	}
	d.open()
	d.toLot("L-8")
	d.press("2", "mouldy", "enter")
	d.sees("None of its scions lives any more; nothing is to be done at 4 stumps.", "8 dead")
	d.press("5")
	d.sees("No scion of this lot lives")
}

// TestHoldingWhatIsLeftFlagsNoStump: sticks gone soft in the store say nothing of the
// scions set.
func TestHoldingWhatIsLeftFlagsNoStump(t *testing.T) {
	d := withLot(t)
	d.toLot("L-8")
	d.press("2", "store flooded", "enter", "2")
	d.sees("HELD: store flooded")
	d.lacks("not said what to do", "Not said")
	d.press("esc", "esc")
	d.goTo(1, 1)
	d.lacks("HELD")
}

// TestLotsOfOddLabels: two of one name are refused, a hot store is said, and a label is
// put right without losing the day it came in.
func TestLotsOfOddLabels(t *testing.T) {
	d := withLot(t)
	d.press("l", "3", "l-8", "enter")
	d.sees("there is a lot L-8 already, received 1 Apr 2027")
	d.press("esc", "esc")
	d.toLot("L-9")
	d.sees("sticks not counted")
	d.press("1", "60F", "enter")
	d.sees("WARM WOOD: its store stood at 60 F on 20 May, over 40 F")
	d.press("4", "enter", "enter", "enter", "30", "enter", "enter", "house", "enter", "-", "enter", "enter")
	d.pasteText("NY\x1b[31m \u202e\u2028木/½ ⚠\x00")
	d.press("enter")
	d.sees("Recorded: lot L-9, Lantern", "2 set on 1 stump, 88 to 118 scions left of 30 sticks", "Permit NY[31m 木/½ ⚠")
	if l := d.root.x.Book.Folded().LotOf(record.ID{9}); !l.Received.At.Equal(at("2027-04-01 09:00")) || l.Received.What.Source != "house" {
		t.Errorf("the lot is %+v", l.Received)
	}
}

// TestLotScreensFitEveryWindow draws them in each size; nothing that must be read is
// cut off.
func TestLotScreensFitEveryWindow(t *testing.T) {
	for _, size := range [][2]int{{60, 15}, {80, 24}, {120, 40}} {
		t.Run(fmt.Sprint(size), func(t *testing.T) {
			d := withLot(t)
			d.size(size[0], size[1])
			d.press("l")
			d.sees("Lots of scion wood", "L-8", "L-9", "receive a lot")
			if size[1] == 40 {
				d.sees("Lantern by thickness", "9 for 3 stumps", "19 to 28 left")
			}
			d.press("esc")
			d.toLot("L-8")
			d.sees("1 read the store", "3 show on the map", "1/1")
			d.press("2", "mouldy", "enter", "1")
			d.sees("What is done at 1/1", "keep and watch", "cut out and graft again", "leave it for now")
		})
	}
}
