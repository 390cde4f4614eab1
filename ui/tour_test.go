package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/walk"
	"barkslip/ui/first"
)

// visit is told of every screen the tour comes to.
type visit func(name string, d *driver)

// tour goes through every screen: those of first use, the block, the walk step
// by step, and what opens over them.
func tour(t *testing.T, see visit) {
	tourFirst(t, see)
	tourBlocks(t, see)
	tourWalk(t, see)
	tourSide(t, see)
}

func tourFirst(t *testing.T, see visit) {
	d := newDriver(t, "2027-04-26 09:00")
	d.root.x.Hand, d.root.x.Prefs.Hand = "", ""
	d.files(map[string]string{"rows.csv": "row,tree,variety\n1,1,Amber\n4,7,\n", "bad.csv": "row,tree\n1,one\n"})
	see("start", d)
	d.press("?")
	see("start help", d)
	d.press("esc", "2", "RK", "enter", "By list", "enter")
	see("start list", d)
	d.press("bad.csv", "enter")
	see("start list wrong", d)
	d.press("esc", "esc", "esc", "1", "enter")
	for is[*first.Screen](d) {
		see("start "+d.asked(), d)
		if d.asked() == "name" {
			d.press("Home")
		}
		d.press("enter")
	}
}

func tourBlocks(t *testing.T, see visit) {
	for name, places := range map[string][][2]int{
		"block 12x20": rows(12, 20), "block 3x200": rows(3, 200), "block 300x2": rows(300, 2), "block with gaps": {{1, 1}, {1, 9}, {4, 3}, {9, 200},
			{900, 1}}, "block empty": nil,
	} {
		d := newDriver(t, "2027-05-04 08:00")
		d.plant("Hollow Lane", places...)
		see(name, d)
		d.press("right", "down", "right", "space", "space")
		see(name+" cursor", d)
		d.press("down", "down", "down", "down", "down")
		for range 30 {
			d.press("right")
		}
		see(name+" far", d)
		for _, over := range []struct{ name, key string }{{"help", "?"}, {"filter", "f"}, {"settings", "o"}, {"blocks", "b"}, {"lots", "l"}, {"find", "/"},
			{"hand", "h"}, {"time", "t"}, {"words", "i"}} {
			d.press(over.key)
			see(name+" "+over.name, d)
			d.press("esc")
		}
	}
}

// tourWalk goes through the walk of one stump, with its turnings.
func tourWalk(t *testing.T, see visit) {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.press("o")
	d.pickWord("earwigs")
	d.press("yes", "enter", "esc", "enter")
	step := func(want walk.StepID, keys ...string) {
		t.Helper()
		d.on(want)
		see("step "+string(want), d)
		d.press(keys...)
	}
	step(walk.StepLimbs, "2")
	step(walk.StepReach, "12", "enter")
	step(walk.StepLimbOff, "1")
	step(walk.StepReach, "24", "enter")
	step(walk.StepLeaf, "enter")
	step(walk.StepHeight, "enter")
	step(walk.StepGashes, "enter")
	step(walk.StepWait, "2")
	step(walk.StepNewGashes, "esc", "3")
	step(walk.StepDrill, "esc", "4")
	see("reasons", d)
	d.press("esc")
	d.clock("2027-05-04 08:00")
	step(walk.StepBleeding, "4")
	step(walk.StepSlip, "1")
	step(walk.StepDrill, "1")
	see("look after the drain hole", d)
	d.wait(31 * time.Minute)
	step(walk.StepBleeding, "1")
	step(walk.StepNewGashes, "enter")
	step(walk.StepFreshCut, "3")
	see("other height", d)
	d.press("esc", "2")
	step(walk.StepTorn, "120:1in", "enter")
	step(walk.StepNewFace)
	d.wait(16 * time.Minute)
	d.press("2")
	see("wiped", d)
	d.wait(16 * time.Minute)
	d.press("1")
	step(walk.StepMeasure, "3.4 3.1")
	see("measure typed", d)
	d.press("enter")
	step(walk.StepLongWay, "5")
	see("a bearing", d)
	d.press("esc", "1")
	step(walk.StepSlots, "4")
	see("block bark", d)
	d.press("esc", "2")
	see("one slot more", d)
	d.press("3", "enter")
	step(walk.StepWood, "9")
	see("other wood", d)
	d.press("Harvest", "enter")
	step(walk.StepThick, "enter")
	step(walk.StepNodes, "enter")
	step(walk.StepScion, "3")
	see("scion marked", d)
	d.press("enter")
	for d.step() == walk.StepScion {
		see("scion", d)
		d.press("enter")
	}
	step(walk.StepSeal, "enter")
	step(walk.StepWhite)
	d.wait(150 * time.Minute)
	see("white open", d)
	d.wait(2 * time.Hour)
	see("white late", d)
	tourOver(d, see)
	d.press("1")
	step(walk.StepRing, "1")
	see("after white", d)
	d.press("x")
	d.pickWord("failed")
	see("causes", d)
	d.press("7")
	see("failed", d)
}

// tourOver opens what can be opened over a stump.
func tourOver(d *driver, see visit) {
	for _, over := range []struct{ name, key string }{{"help", "?"}, {"why", "w"}, {"story", "j"}, {"note", "m"}, {"end", "x"}, {"place", "/"},
		{"earlier time", "t"}} {
		d.press(over.key)
		see("stump "+over.name, d)
		d.press("esc")
	}
	d.press("c")
	see("stump coach", d)
	d.press("c")
	for range 14 {
		d.press("up")
		see("correct "+string(d.step()), d)
	}
	d.press("esc", "u")
	see("taken back", d)
	d.press("U", "t", "20", "enter")
	see("for an earlier time", d)
	d.press("t")
}

// tourSide is the walks that end early: a stump too small, and one that does
// not stop running.
func tourSide(t *testing.T, see visit) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.append(record.Event{At: d.now, Hand: "RK", Stump: tree(1, 9), Body: &record.StumpAdded{Across: inches(0.8), Stock: "black walnut"}})
	d.open()
	d.goTo(1, 9)
	d.on(walk.StepSmall)
	see("step small", d)
	d.press("2")
	see("measure again", d)
	d.press("esc", "1")
	see("given up", d)
	d.press("/", "1/1", "enter", "2", "enter", "enter", "enter", "enter")
	d.clock("2027-05-12 09:00")
	runOn(d)
	d.on(walk.StepLeave)
	see("step leave", d)
	d.press("esc", "g", "ctrl-p")
	see("paper", d)
	d.press("esc", "esc", "p", "ctrl-p")
	see("paper from the plan", d)
}

// runOn answers that a stump runs on and on, until the walk gives it up.
func runOn(d *driver) {
	d.t.Helper()
	for range 60 {
		switch d.step() {
		case walk.StepBleeding:
			if u := d.walk().Asked().Until; u != nil && u.After(d.now) {
				d.wait(u.Sub(d.now))
			}
			d.choose(string(record.Running))
		case walk.StepSlip:
			d.press("1")
		case walk.StepDrill, walk.StepNewGashes:
			d.press("enter")
		case walk.StepWait:
			d.wait(d.walk().Asked().Until.Sub(d.now))
		default:
			return
		}
	}
	d.t.Fatalf("it is still running:\n%s", d.screen())
}
