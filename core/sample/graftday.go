package sample

import (
	"math"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// scion is one scion with what will become of it.
type scion struct {
	slot   int
	set    time.Time
	faulty bool
	lives  bool
	pushes unit.Date // 0 if it never will
	dies   unit.Date // from when a visit finds it dead
	cause  string
	buried bool // it was seen dead
}

// graft tells the setting of the scions. A stump of today's batch is set so
// that it is sealed in its turn along the front.
func (l *life) graft(ready time.Time) {
	n := scionsFor(l.across)
	setting := time.Duration(7*n+10) * time.Minute
	start := ready.Add(time.Duration(l.between(2, 25)) * time.Minute)
	if unit.DateOf(ready) == l.today && l.index >= l.earlier {
		start = later(start, l.sealsToday().Add(-setting))
	}
	who := l.hand.initials
	l.measure(start.Add(-time.Minute), who)
	slots, first := make([]record.Slot, n), l.between(0, 8)*10
	for i := range slots {
		slots[i].Bearing = unit.Bearing(float64(first) + 360/float64(n)*float64(i)).Normal()
	}
	l.say(start, who, &record.SlotsMarked{Slots: slots})
	l.say(start.Add(time.Minute), who, &record.WoodChosen{Lot: l.wood.Lot, Variety: l.wood.Variety, Thickness: l.wood.Thickness, Nodes: l.nodes()})
	for i := range n {
		l.set(start.Add(time.Duration(7*(i+1))*time.Minute), i+1)
	}
	l.sealed = start.Add(setting)
}

// measure is the face measured both ways; a slip of the tape is put right.
func (l *life) measure(at time.Time, who string) {
	body := record.StumpMeasured{Across: eighths(l.across), Across2: eighths(l.across - l.between(0, 3)), LongWay: unit.Bearing(l.between(0, 17) * 10)}
	if l.odds(0.01) {
		wrong := body
		wrong.Across = eighths(l.across * 2)
		first := l.say(at.Add(-time.Minute), who, &wrong)
		l.say(at, who, &body, first)
		return
	}
	l.say(at, who, &body)
}

// scionsFor is how many a stump takes: one to 80 mm of girth, at least two, at
// most four up to 6 in across.
func scionsFor(across int) int {
	girth := math.Pi * float64(across) * 25.4 / 8
	return min(max(int(girth/80+0.5), 2), 4)
}

func (l *life) nodes() []record.Node {
	nodes := []record.Node{{Buds: l.wood.Buds}, {Buds: l.wood.Buds}}
	if l.odds(0.1) {
		nodes[1].Buds = record.First
	}
	return nodes
}

// set is one scion set, with its six checks; a learner's are not all good.
func (l *life) set(at time.Time, slot int) {
	checks := record.AllGood
	fault := 0.04 - 0.06*min(l.hand.skill, 0)
	faulty := l.odds(fault)
	if faulty {
		switch l.between(0, 3) {
		case 0:
			checks.LongCut = false
		case 1:
			checks.SlotEasy = false
		case 2:
			checks.Nails = false
		default:
			checks.BackCut = false
		}
	}
	body := &record.ScionSet{Slot: slot, Lot: l.wood.Lot, Variety: l.wood.Variety, Thickness: l.wood.Thickness, Nodes: l.nodes(), Checks: checks}
	if l.odds(0.05) {
		body.Split = eighths(l.between(3, 10))
	}
	l.say(at, l.hand.initials, body)
	l.scions = append(l.scions, scion{slot: slot, set: at, faulty: faulty})
}
