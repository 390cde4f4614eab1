package main_test

import (
	"strings"
	"testing"
)

// testWhileOpen uses the commands on a book whose screens are open.
func testWhileOpen(t *testing.T) {
	slow(t)
	t.Parallel()
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", true)
	w.plant(1, 3, func(p *planting) { p.cutBack(1, 1, "2027-04-26 10:00") })
	x := w.open(80, 24)
	x.sees(blockName)
	x.answers("Enter", "bleeding")
	x.answers("1", "slip")
	w.sound()
	if n := w.kinds("1/1")["looked"]; n != 1 {
		t.Errorf("the journal of the open book has %d looks, want 1", n)
	}
	w.run("copy", w.in("copy.bark"))
	if out := w.run("check", "--book", w.in("copy.bark")); !strings.Contains(out, "sound") {
		t.Errorf("check of the copy says: %s", out)
	}
	if a, b := w.run("journal", "export"), w.run("journal", "export", "--book", w.in("copy.bark")); a != b {
		t.Error("the copy's journal is another than the book's")
	}
	second(w)
	x.answers("1", "fresh gashes") // and the first goes on
	if n := w.kinds("1/1")["looked"]; n != 2 {
		t.Errorf("the journal has %d looks, want 2", n)
	}
	x.press("q")
	x.ended()
	w.sound()
}

// second opens the screens of the same book again: it is offered to look on, where
// nothing is written; who does not want that is told in a sentence that the book is
// open already.
func second(w *world) {
	w.t.Helper()
	d := w.dial(true, binary)
	d.comes(0, "y/n")
	mark := d.mark()
	d.write("n\r")
	if code := d.gone(); code != 1 {
		w.t.Errorf("a second opening ends with exit code %d, want 1", code)
	}
	lines := strings.Split(strings.TrimSpace(text(d.raw()[mark:])), "\n")
	said := strings.TrimSpace(lines[len(lines)-1])
	if !strings.Contains(said, "already open") || strings.Contains(said, "flock") {
		w.t.Errorf("a second opening says: %q", said)
	}

	d = w.dial(true, binary)
	d.comes(0, "y/n")
	mark = d.mark()
	d.write("y\r")
	d.comes(mark, "looking on")
	d.write("q")
	if code := d.gone(); code != 0 {
		w.t.Errorf("a look ends with exit code %d", code)
	}
}
