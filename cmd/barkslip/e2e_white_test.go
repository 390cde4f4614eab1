package main_test

import "testing"

// testWhite follows the clock of a sealed graft: it shows in the frame, rings
// once when it is due and once when it runs out, outlives the program, is put
// off by a graft still wet, and ends with the paint.
func testWhite(t *testing.T) {
	slow(t)
	t.Parallel()
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", true)
	w.plant(2, 3, func(p *planting) {
		p.cutBack(1, 1, "2027-04-26 10:00")
		p.grafted(1, 1, "2027-05-04", 3)
	})
	x := w.open(100, 30)
	x.sees(blockName)
	x.answers("Enter", "seal")
	x.answers("1", "paint white")
	x.sees("1 to paint, next in 2 h")
	x.at("2027-05-04 11:59")
	x.sees("1 to paint, next in 1 min")
	x.rang(0)
	x.at("2027-05-04 12:00")
	x.sees("1 to paint, 1 now, by 13:00")
	x.at("2027-05-04 12:04")
	x.rang(1)

	x.press("2") // still wet
	x.sees("1 to paint, next in 30 min")
	x.at("2027-05-04 12:34")
	x.sees("1 to paint, 1 now, by 13:00")
	rung := x.bells()

	x.press("q")
	x.ended()
	w.clock("2027-05-04 12:40")
	x = w.open(100, 30)
	x.sees("1 to paint, 1 now, by 13:00")
	x.at("2027-05-04 13:00")
	x.sees("1 to paint, 1 now, by 13:00")
	open := x.bells() // once more for what is due may ring when it is opened
	x.at("2027-05-04 13:01")
	x.sees("1 to paint, 1 LATE")
	x.at("2027-05-04 13:20")
	x.rang(open + 1)
	if rung > 2 || open > 1 {
		t.Errorf("rang %d times before it was closed and %d times after", rung, open)
	}

	x.goes("1/1")
	x.asks("paint white")
	x.answers("1", "rest")
	x.lacks("to paint")
	x.at("2027-05-04 14:00")
	x.rang(open + 1)
	w.sound()
}

// rang says how often the bell must have rung by now.
func (x *screens) rang(times int) {
	x.w.t.Helper()
	if n := x.bells(); n != times {
		x.w.t.Errorf("the bell rang %d times, want %d:\n%s", n, times, x.screen())
	}
}
