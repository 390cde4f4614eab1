package main_test

import (
	"os"
	"os/exec"
	"strings"
	"testing"
)

// testJoinStopped joins a journal that comes through a pipe and never ends: the program
// says how far it is, and Esc stops it with what came.
func testJoinStopped(t *testing.T) {
	slow(t)
	t.Parallel()
	w := newWorld(t, "2027-05-04 10:00")
	w.plant(1, 3, func(p *planting) { p.cutBack(1, 1, "2027-04-26 10:00") })
	journal := w.run("journal", "export")
	pipe := w.in("pipe")
	if out, err := exec.Command("mkfifo", pipe).CombinedOutput(); err != nil {
		t.Fatalf("mkfifo: %v\n%s", err, out)
	}
	x := w.open(100, 12, "journal", "join", "--book", w.in("joined.bark"), pipe)
	into, err := os.OpenFile(pipe, os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer into.Close()
	// Enough for several pieces of the journal, with a line of which the end does not come.
	for range 1 + 600_000/len(journal) {
		if _, err := into.WriteString(journal); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := into.WriteString(`{"v":2`); err != nil {
		t.Fatal(err)
	}
	x.sees(`Reading .*pipe: \d+ MB.*Esc stops`)
	x.press("Escape")
	x.sees(`join again for the rest`)
	x.sees(`\d+ added`)
	x.ended()
	if got := w.run("journal", "export", "--book", w.in("joined.bark")); got != journal {
		t.Errorf("the book holds\n%s\nwant\n%s", got, journal)
	}
	if out := w.run("journal", "join", "--book", w.in("joined.bark"), w.book()); !strings.HasPrefix(out, "0 added") {
		t.Errorf("joined again: %s", out)
	}
}
