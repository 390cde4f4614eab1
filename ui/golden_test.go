package ui

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
)

var update = flag.Bool("update", false, "write the goldens anew")

// golden compares the screen, without its inks, with the one kept.
func (d *driver) golden(name string) {
	d.t.Helper()
	var lines []string
	for _, l := range strings.Split(d.screen(), "\n") {
		lines = append(lines, strings.TrimRight(l, " "))
	}
	got := strings.Join(lines, "\n") + "\n"
	path := filepath.Join("testdata", name+".golden")
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			d.t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		d.t.Fatal(err)
	}
	if got != string(want) {
		d.t.Errorf("%s has changed; look at it, then write it with -update. It was:\n%s\nit is:\n%s", path, want, got)
	}
}

// TestGoldenFirstUse is the screens of first use.
func TestGoldenFirstUse(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.golden("first")
	d.press("1", "Hollow Lane", "enter", "12", "enter", "20", "enter", "enter")
	d.golden("first-place")
	d.press("42.7 -77.2", "enter")
	d.golden("first-zone")
	d.press("Pacific", "enter")
	d.golden("first-agree")
}

// TestGoldenBlock is a block with stumps at several stages.
func TestGoldenBlock(t *testing.T) {
	d := newDriver(t, "2027-05-04 11:30")
	d.plant("Hollow Lane", rows(12, 20)...)
	for n := 1; n <= 20; n++ {
		d.did(tree(4, n), "2027-04-26 09:00", cut()...)
	}
	for n := 1; n <= 9; n++ {
		d.did(tree(4, n), "2027-05-03 09:00", graft()...)
		d.did(tree(4, n), "2027-05-03 10:00", &record.Sealed{Cover: record.Wrapped})
		d.did(tree(4, n), "2027-05-03 12:30", &record.PaintedWhite{})
	}
	d.did(tree(2, 7), "2027-05-03 15:00", &record.GivenUp{Why: "rotten"})
	d.did(tree(4, 10), "2027-05-04 08:30", graft()...)
	d.did(tree(4, 10), "2027-05-04 09:15", &record.Sealed{Cover: record.Wrapped})
	d.open()
	d.golden("block")
	for range 3 {
		d.press("down")
	}
	for range 9 {
		d.press("right")
	}
	d.press("space")
	d.size(120, 40)
	d.golden("block-wide")
	d.size(60, 15)
	d.golden("block-small")
	d.size(80, 24)
	d.press("?")
	d.golden("block-keys")
}

// TestGoldenWalk is the walk at its turnings.
func TestGoldenWalk(t *testing.T) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.press("enter")
	d.golden("limbs")
	d.press("2", "enter", "enter")
	d.golden("height")
	d.press("enter", "enter")
	d.golden("wait")
	d.clock("2027-05-04 08:00")
	d.press("c")
	d.golden("look-coach")
	d.press("c", "1", "1", "enter", "enter")
	d.golden("new-face")
	d.wait(15 * time.Minute)
	d.press("1", "3.4 3.1")
	d.golden("measure-typed")
	d.press("enter", "1")
	d.golden("slots")
	d.size(120, 40)
	d.golden("slots-wide")
	d.root.x.Plain = true
	d.golden("slots-plain")
	d.root.x.Plain = false
	d.size(80, 24)
	d.press("w")
	d.golden("slots-why")
	d.press("esc", "enter", "9", "Harvest", "enter")
	d.golden("thickness-other-variety")
	d.press("enter", "enter", "2", "5")
	d.golden("scion-marked")
	d.size(60, 15)
	d.golden("scion-small")
	d.size(80, 24)
	d.press("enter", "enter", "enter", "enter")
	d.golden("white")
	d.wait(4 * time.Hour)
	d.golden("white-late")
	d.correct(walk.StepSeal)
	d.golden("correcting")
	d.press("esc", "j")
	d.golden("story")
	d.press("esc", "x", "1")
	d.golden("causes")
	d.press("esc", "t")
	d.golden("earlier-time")
	d.size(50, 12)
	d.golden("tiny")
}
