package main_test

import (
	"os"
	"os/exec"
	"strings"
	"testing"
)

// testSync sees to it that an answer is forced onto the disk before it is shown
// as taken; a kill alone would not tell.
func testSync(t *testing.T) {
	slow(t)
	strace, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("strace is not there")
	}
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", false)
	w.plant(1, 1, func(p *planting) { p.cutBack(1, 1, "2027-04-26 10:00") })
	d := w.dial(true, strace, "-f", "-y", "-e", "trace=fdatasync,fsync", "-o", w.in("trace"), binary)
	d.comes(0, blockName)
	mark := d.mark()
	d.write("\r")
	d.comes(mark, here+` +bleeding`)
	before := syncs(w)
	mark = d.mark()
	d.write("1")
	d.comes(mark, "Taken: ")
	n := syncs(w) - before
	t.Logf("one answer: the book was synced %d times", n)
	if n < 1 {
		t.Error("an answer was shown as taken without a sync")
	}
	d.write("q")
	if code := d.gone(); code != 0 {
		t.Errorf("exit code %d", code)
	}
}

// syncs counts the syncs of the book so far.
func syncs(w *world) int {
	w.t.Helper()
	trace, err := os.ReadFile(w.in("trace"))
	if err != nil {
		w.t.Fatal(err)
	}
	n := 0
	for line := range strings.Lines(string(trace)) {
		if (strings.Contains(line, "fdatasync(") || strings.Contains(line, "fsync(")) && strings.Contains(line, "book.bark") {
			n++
		}
	}
	return n
}
