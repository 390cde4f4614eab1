package ui

import (
	"testing"

	"barkslip/core/record"
)

// The block that a look is on goes on as another, or is put away, elsewhere.
func TestLookAtABlockThatWentOnAsAnother(t *testing.T) {
	for name, body := range map[string]record.Body{
		"one":  &record.Same{What: "block", A: home.String(), B: record.ID{9}.String()},
		"away": &record.BlockSet{Block: home, Setting: "away", Value: "yes"},
	} {
		for _, first := range []record.ID{home, {9}} {
			d := newDriver(t, "2027-05-04 10:00")
			d.plant("Hollow Lane", rows(2, 3)...)
			d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockMade{Block: record.ID{9}, Name: "Far field"}})
			d.append(record.Event{Stump: record.StumpID{Block: record.ID{9}, Row: 1, Tree: 1}, At: d.now, Hand: "RK", Body: &record.StumpAdded{}})
			newer := false
			d.root = looker(d, d.book, func() (bool, error) { was := newer; newer = false; return was, nil })
			d.size(80, 24)
			d.root.openBlock(first)
			d.append(record.Event{At: d.now, Hand: "RK", Body: body})
			func() {
				defer func() {
					if p := recover(); p != nil {
						t.Errorf("%s, on %v: the screens fall over: %v", name, first[:2], p)
					}
				}()
				newer = true
				d.root.Update(glanced(d.now))
				d.screen()
				d.press("enter")
				d.root.Update(glanced(d.now))
				d.screen()
			}()
		}
	}
}
