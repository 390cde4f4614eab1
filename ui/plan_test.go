package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/plan"
)

// planned is a block of 3 rows of 4 in its season of slip, of which the first two
// rows are ready to be grafted.
func planned(t *testing.T) *driver {
	d := newDriver(t, "2027-05-20 09:00")
	d.plant("Hollow Lane", rows(3, 4)...)
	for _, s := range [][2]string{{"latitude", "42.7"}, {"longitude", "-77.2"}, {"a-day", "3"}, {"variety", "Lantern"}} {
		d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: s[0], Value: s[1]}})
	}
	for row := uint16(1); row <= 2; row++ {
		for tree := uint16(1); tree <= 4; tree++ {
			d.append(record.Event{At: at("2027-05-12 09:00"), Hand: "RK", Stump: record.StumpID{Block: home, Row: row, Tree: tree},
				Body: &record.CutBack{Height: record.Measured(914, unit.US)}})
		}
	}
	d.open()
	return d
}

// What a hand is given is refused, kept, shown, taken back and put back.
func TestWorkIsGiven(t *testing.T) {
	d := planned(t)
	d.press("p")
	d.sees("8 draining (8 ready)", "Nothing is given for today, Thu 20 May")
	give := func(what string) { d.press("1111", what, "enter") }
	give("1 1")
	d.sees("row 1 is named twice")
	d.press("esc")
	give("9")
	d.sees("there is no row 9 in this block")
	d.press("esc")
	give("one")
	d.sees("rows such as 1 2 5-8")
	d.press("esc")
	give("1")
	d.sees("Given: RK has row 1 on 20 May.", "row 1; work is due on 4 stumps.", "Nobody has", "in row")
	d.press("112", "MK", "enter", "1", "1", "enter")
	d.sees("row 1 is given to RK that day")
	d.press("esc", "112", "MK", "enter", "2", "99", "enter")
	d.sees("that no other hand has")
	d.press("esc", "112", "MK", "enter", "2", "2", "enter")
	d.sees("MK has 2 stumps on 20 May.", "2 stumps from 2/4 to 2/3")
	d.press("u")
	d.sees("Took back: MK has 2 stumps on 20 May.")
	d.lacks("2 stumps from")
	d.press("U")
	d.sees("2 stumps from 2/4 to 2/3")

	d.press("o2", "mk ab", "enter", "esc")
	d.sees("AB: nothing yet.")
	d.press("esc", "/1/1", "enter", "esc")
	d.sees("today RK")
	d.press("g", "f", "3")
	d.sees("Work is due today on 4 stumps", "Only what RK is given for 20 May")
	d.press("f", "3", "hAB", "enter", "f", "3")
	d.sees("Nothing is given to AB for 20 May")
}

// Days off and rates are refused, kept and gone by; with all days off it is said.
func TestThePlanGoesByItsSettings(t *testing.T) {
	d := planned(t)
	d.press("p")
	d.sees("All 12 to graft can be done by", "3 stumps a day, set for the block.")
	d.press("o1", "someday", "enter")
	d.sees("someday")
	d.press("esc", "o1", "sun, 22 May", "enter", "esc")
	d.sees("Days off: Sun, 22 May 2027.", "day off")
	d.press("o3", "0", "enter")
	d.sees("a whole number from 1 to 1000")
	d.press("esc", "o1", "sun mon tue wed thu fri sat", "enter", "esc")
	d.sees("every day to 10 Jun 2027 is a day off")
	d.press("o1", "none", "enter", "esc", "o7", "3", "enter", "esc")
	d.press("21")
	d.sees("12 stumps to graft take 36 scions", "36 of 3/4 in", "72 of 1 1/4 in")
	d.press("esc", "22")
	d.sees("8 stumps to graft take 24 scions", "no lot of this variety and thickness ")
	d.press("esc", "w")
	d.sees("Will the block be grafted while bark slips?", "cut back today")
}

// A block without stumps, and one where all is done, say so.
func TestThePlanOfNothing(t *testing.T) {
	d := newDriver(t, "2027-05-20 09:00")
	d.plant("Hollow Lane")
	d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: "latitude", Value: "42.7"}})
	d.open()
	d.press("p")
	d.sees("No stump is left to graft.")
	d.press("1")
	d.sees("There is no stump in this block to give.")
	d.press("21")
	d.sees("Nothing has to be loaded for the season.")
}

// The plan of 100,000 stumps opens at once.
func TestThePlanOpensFast(t *testing.T) {
	if raceDetector {
		t.Skip("times are not those of the program then")
	}
	r := newCrowded()
	block := r.x.Site()
	block.SlipFrom, block.SlipTo = record.MonthDay{Month: 4, Day: 20}, record.MonthDay{Month: 6, Day: 10}
	best := time.Hour
	for range 5 {
		begun := time.Now()
		if err := plan.New(r.x).Load(); err != nil {
			t.Fatal(err)
		}
		best = min(best, time.Since(begun))
	}
	t.Logf("opens in %v", best)
	if best > 300*time.Millisecond {
		t.Errorf("opens in %v", best)
	}
}
