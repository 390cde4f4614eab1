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

// second opens the screens of the same book again, and is told in a sentence
// that it cannot be.
func second(w *world) {
	w.t.Helper()
	d := w.dial(true, binary)
	if code := d.gone(); code != 1 {
		w.t.Errorf("a second opening ends with exit code %d, want 1", code)
	}
	said := strings.TrimSpace(text(d.raw()))
	if !strings.Contains(said, "already open") || strings.Count(said, "\n") > 0 || strings.Contains(said, "flock") {
		w.t.Errorf("a second opening says: %q", said)
	}
}
