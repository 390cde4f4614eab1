package main_test

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"barkslip/core/record"
)

// testWalk takes one stump of a list from standing to painted white, over ten
// days, from the keyboard, with the power cut between two scions.
func testWalk(t *testing.T) {
	slow(t)
	t.Parallel()
	w := newWorld(t, "2027-04-26 10:00")
	list, err := filepath.Abs("../../testdata/lists/sixty.csv")
	if err != nil {
		t.Fatal(err)
	}
	if out := w.run("block", "add", list, "--block", blockName, "--zone", zone.String()); !strings.Contains(out, "60 stumps added") {
		t.Fatalf("block add says: %s", out)
	}
	x := w.open(120, 40)
	x.sees(blockName + `.*60 stumps`)
	x.sees("(?i)initials")
	x.types("RK")
	x.press("Enter")
	x.sees("Hand: RK")
	x.goes("4/17")
	x.sees("for Lantern")
	walkCutBack(x)
	walkDrain(x)
	walkFace(x)
	walkScions(x, 1)
	x = walkPowerCut(w, x)
	walkScions(x, 2)
	walkWhite(x)

	want := map[string]int{"stump-added": 1, "nurse-limbs": 3, "cut-back": 1, "gashed": 3, "looked": 8, "drilled": 1, "fresh-cut": 1,
		"measured": 2, "slots-marked": 1, "wood-chosen": 3, "scion-seen": 21, "scion-set": 3, "sealed": 1, "painted-white": 1}
	got := w.kinds("4/17")
	for kind, n := range want {
		if got[kind] != n {
			t.Errorf("%d of %s in the journal, want %d", got[kind], kind, n)
		}
		delete(got, kind)
	}
	for kind, n := range got {
		t.Errorf("%d of %s in the journal, want none", n, kind)
	}
	w.sound()
}

func walkCutBack(x *screens) {
	x.w.t.Helper()
	x.asks("nurse limbs")
	x.answers("2", "nearest limb")
	x.answers("Enter", "leaf below")
	x.answers("3", "height")
	x.answers("Enter", "gashes")
	x.answers("2", "wait")
	x.sees("3 May")
}

// walkDrain is a stump that runs through new gashes and a hole, is left three
// days, and is dry on the fourth.
func walkDrain(x *screens) {
	x.w.t.Helper()
	x.at("2027-05-03 09:00")
	x.asks("bleeding")
	x.answers("4", "slip")
	x.answers("1", "drain hole")
	x.answers("3", "fresh gashes")
	x.answers("2", "bleeding")
	x.at("2027-05-03 09:35")
	x.answers("4", "drain hole")
	x.answers("1", "bleeding")
	x.at("2027-05-03 10:10")
	x.answers("4", "wait")
	x.sees("6 May")
}

// walkFace is graft day up to the slots and the wood.
func walkFace(x *screens) {
	x.w.t.Helper()
	x.at("2027-05-06 11:00")
	x.asks("bleeding")
	x.answers("1", "slip")
	x.answers("1", "fresh gashes")
	x.answers("2", "fresh cut")
	x.answers("1", "new face")
	x.at("2027-05-06 11:15")
	x.press("2")
	x.sees("Does it wet again")
	x.at("2027-05-06 11:31")
	x.answers("1", "measure")
	x.types("3.4 3.1")
	x.answers("Enter", "long way")
	x.answers("2", "slots")
	x.sees("3 slots")
	x.answers("1", "wood")
	x.press("9")
	x.types("Lantern")
	x.answers("Enter", "thickness")
	x.types("3/8")
	x.answers("Enter", "nodes")
	x.answers("1", "scions")
	x.sees("Scion 1 of 3")
}

// walkScions sets scions up to the one before the last, or to the end. The coach is
// on: each thing on a scion is asked by itself.
func walkScions(x *screens, from int) {
	x.w.t.Helper()
	if from == 1 {
		walkScion(x, 1, -1)
		return
	}
	walkScion(x, 2, 3) // the back cut shows no cambium, and it stays as it is
	walkScion(x, 3, -1)
	x.asks("seal")
}

// walkScion answers the things on one scion, one of them as wrong.
func walkScion(x *screens, scion, wrong int) {
	x.w.t.Helper()
	const things = record.SlitItem
	for i := 1; i <= things; i++ {
		x.sees(fmt.Sprintf("Scion %d of 3, %d of %d", scion, i, things))
		key := "1"
		if i == wrong {
			key = "2"
		}
		x.press(key)
	}
	if scion < 3 {
		x.sees(fmt.Sprintf("Scion %d of 3, 1 of %d", scion+1, things))
	}
}

// walkPowerCut kills the program, and finds everything where it was.
func walkPowerCut(w *world, x *screens) *screens {
	w.t.Helper()
	x.press("c") // which cautions were said is not remembered
	x.sees("c coach  ")
	before, journal := body(x.screen()), w.run("journal", "export")
	x.kill()
	x = w.open(120, 40)
	x.sees(blockName)
	x.goes("4/17")
	x.asks("scions")
	x.sees("Scion 2 of 3")
	if after := body(x.screen()); after != before {
		w.t.Errorf("before the power cut:\n%s\nafter it:\n%s", before, after)
	}
	if after := w.run("journal", "export"); after != journal {
		w.t.Errorf("the journal was\n%s\nand is\n%s", journal, after)
	}
	x.press("c")
	x.sees("c coach off")
	return x
}

var messages = regexp.MustCompile(`(?s)\n[^\n]*\n[^\n]*\n*$`)

// body is a screen without its message and key lines.
func body(screen string) string { return messages.ReplaceAllString(screen, "") }

func walkWhite(x *screens) {
	x.w.t.Helper()
	x.sees("Wrapped or bare")
	x.answers("1", "paint white")
	x.sees("1 to paint, next in 2 h")
	x.at("2027-05-06 14:01")
	x.sees("1 to paint.*now")
	x.answers("1", "rest")
	x.lacks("to paint")
	x.press("Escape")
	x.sees(`painted +1\b`)
}
