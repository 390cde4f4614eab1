package main_test

import (
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
)

// testBurst sends keys faster than they can be drawn, and holds one down.
func testBurst(t *testing.T) {
	slow(t)
	t.Run("answer", burstAnswer)
	t.Run("steps", burstSteps)
	t.Run("held", burstHeld)
	t.Run("held before a field", burstHeldField)
}

// burstAnswer types a measure and Enter in one piece.
func burstAnswer(t *testing.T) {
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", false)
	w.plant(1, 1, func(p *planting) {
		p.cutBack(1, 1, "2027-04-26 10:00")
		p.faced(1, 1, "2027-05-04")
	})
	d := w.dial(true, binary)
	d.comes(0, blockName)
	mark := d.mark()
	d.write("\r")
	d.comes(mark, here+` +measure`)
	mark = d.mark()
	d.write("3.4\r")
	d.comes(mark, "Recorded: ")
	for _, e := range w.journal() {
		if m, ok := e.Body.(*record.StumpMeasured); ok && m.Across.Typed == "3.4" {
			return
		}
	}
	t.Error("no measure typed as 3.4 is in the journal")
}

// burstSteps goes four rows down, and four steps along the stake.
func burstSteps(t *testing.T) {
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", false)
	w.plant(8, 3, func(p *planting) {
		p.cutBack(5, 1, "2027-04-26 10:00")
		p.faced(5, 1, "2027-05-04")
	})
	d := w.dial(true, binary)
	d.comes(0, blockName)
	mark := d.mark()
	d.write(strings.Repeat("\x1b[B", 4))
	d.write("\r")
	d.comes(mark, `row 5 tree 1\b`)
	d.comes(mark, here+` +measure`)
	mark = d.mark()
	d.write(strings.Repeat("\x1b[A", 4)) // from measure back: new face, fresh cut, fresh gashes, slip
	d.comes(mark, `Correcting slip`)
	mark = d.mark()
	d.write(strings.Repeat("\x1b[B", 4))
	d.comes(mark, here+` +measure`)
}

// burstHeld holds the digit that answers a question: only the first is an
// answer, and once the key is let go it answers again.
func burstHeld(t *testing.T) {
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", false)
	w.plant(1, 2, func(p *planting) { p.cutBack(1, 1, "2027-04-26 10:00") })
	before := w.kinds("1/1")["looked"]
	d := w.dial(true, binary)
	d.comes(0, blockName)
	mark := d.mark()
	d.write("\r")
	d.comes(mark, here+` +bleeding`)
	mark = d.mark()
	d.holds("1")
	d.comes(mark, "ignored")
	d.comes(mark, here+` +slip`)
	mark = d.mark()
	d.write("?") // behind all of them
	d.comes(mark, "Keys")
	if n := w.kinds("1/1")["looked"] - before; n != 1 {
		t.Errorf("a key held down gave %d answers, want 1", n)
	}
	mark = d.mark()
	d.write("\x1b")
	d.comes(mark, here+` +slip`)
	time.Sleep(unhurried)
	d.write("1")
	d.comes(mark, here+` +fresh gashes`)
}

// burstHeldField holds the digit of an answer after which a length is typed:
// nothing may be typed by it.
func burstHeldField(t *testing.T) {
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", false)
	w.plant(1, 2, nil)
	d := w.dial(true, binary)
	d.comes(0, blockName)
	mark := d.mark()
	d.write("\r")
	d.comes(mark, here+` +nurse limbs`)
	mark = d.mark()
	d.holds("2")
	d.comes(mark, here+` +nearest limb`)
	d.write("?") // behind all of them
	d.comes(mark, "Keys")
	mark = d.mark()
	d.write("\x1b")
	d.comes(mark, `Enter takes 18 in`)
}

// holds holds a key down: a keyboard sends it once, waits half a second, then
// sends it thirty times a second.
func (d *wire) holds(key string) {
	d.write(key)
	time.Sleep(550 * time.Millisecond)
	for range 19 {
		d.write(key)
		time.Sleep(time.Second / 30)
	}
}
