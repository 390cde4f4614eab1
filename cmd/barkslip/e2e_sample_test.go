package main_test

import (
	"errors"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"
)

// testSampleCutOff cuts the program off while it makes the sample block: its book is whole
// or not there, and can be made in the same place after that.
func testSampleCutOff(t *testing.T) {
	slow(t)
	w := newWorld(t, "2027-04-26 10:00")
	began := time.Now()
	w.run("sample", "--stumps", "240", "--book", w.in("whole.bark"))
	whole, takes := w.run("check", "--book", w.in("whole.bark")), time.Since(began)
	there := 0
	for range 20 {
		path := w.in("cut.bark")
		prog := exec.Command(binary, "sample", "--stumps", "240", "--book", path)
		prog.Env = w.env
		if err := prog.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(rand.Int64N(int64(takes * 5 / 4))))
		_ = prog.Process.Kill()
		_ = prog.Wait()
		switch _, err := os.Stat(path); {
		case errors.Is(err, fs.ErrNotExist):
		case err != nil:
			t.Fatal(err)
		default:
			there++
			if said := w.run("check", "--book", path); strings.ReplaceAll(said, "cut.bark", "whole.bark") != whole {
				t.Fatalf("cut off: %s\nwhole: %s", said, whole)
			}
			if err := os.Remove(path); err != nil {
				t.Fatal(err)
			}
		}
	}
	t.Logf("cut off 20 times in the first %v: there and whole %d times, else not there", takes*5/4, there)
	if there == 20 {
		t.Error("it was never cut off in time")
	}
	w.run("sample", "--stumps", "240", "--book", w.in("cut.bark"))
}
