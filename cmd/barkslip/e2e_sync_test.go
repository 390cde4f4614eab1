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
	d := w.dial(true, strace, "-f", "-s", "65536", "-e", "trace=fdatasync,fsync,write", "-o", w.in("trace"), binary)
	d.comes(0, blockName)
	mark := d.mark()
	d.write("\r")
	d.comes(mark, here+` +bleeding`)
	before := len(trace(w)) - 1 // the last may not be whole yet
	mark = d.mark()
	d.write("1")
	d.comes(mark, "Recorded: ")
	n, shown := syncs(trace(w)[before:])
	t.Logf("one answer: %d syncs before it was shown as taken", n)
	if n < 2 || !shown { // its pages, then the first page
		t.Errorf("an answer was shown as taken after %d syncs (seen in the trace: %v)", n, shown)
	}
	d.write("q")
	if code := d.gone(); code != 0 {
		t.Errorf("exit code %d", code)
	}
}

// trace is the system calls so far, one a line.
func trace(w *world) []string {
	w.t.Helper()
	lines, err := os.ReadFile(w.in("trace"))
	if err != nil {
		w.t.Fatal(err)
	}
	return strings.SplitAfter(string(lines), "\n")
}

// syncs counts the syncs that were through before the first word that an answer
// was taken.
func syncs(calls []string) (n int, shown bool) {
	for _, call := range calls {
		switch {
		case strings.Contains(call, "write(") && strings.Contains(call, "Recorded: "):
			return n, true
		case strings.Contains(call, "sync") && strings.HasSuffix(call, "= 0\n"):
			n++
		}
	}
	return n, false
}
