package record

import (
	"slices"
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// matter is one thing on which what was done or seen can contradict, although
// each answer is kept by itself. Where two hands that did not know of one another
// say different things of it at about the same time, both are shown, and until
// somebody settles it the careful one holds: the one that leaves work to do.
type matter struct {
	name string
	// says is what a body says on the matter; none where it says nothing of it.
	says func(b Body) []claim
	// within is what "at about the same time" is; 0 for the same calendar day.
	within time.Duration
	// without is the body with nothing said on the matter about one slot, nil where
	// nothing is left of it.
	without func(b Body, slot int) Body
}

// claim is what an event says on a matter. Of claims that contradict, the one
// with the most care holds; where several with as much care contradict, none.
type claim struct {
	slot int // of the graft it is about, 0 for the stump
	says string
	care int
}

// matters lists all on which dated answers can contradict. Standing answers
// need no row: those to one question disagree of themselves (see careful).
var matters = []matter{
	{name: "white", says: onWhite, within: trade.StillWetMinutes * time.Minute, without: nothing},
	{name: "seal", says: onSeal, without: nothing},
	{name: "bleeding", says: onBleeding, within: trade.FaceMinutes * time.Minute, without: noBleeding},
	{name: "slip", says: onSlip, without: noSlip},
	{name: "graft", says: onGraft, without: noFinding},
	{name: "lost", says: onLoss, without: noneAlive},
	{name: "twine", says: onTwine, without: nothing},
	{name: "head-back", says: onHeadBack, without: nothing},
	{name: "nurse-limbs", says: onNurseLimbs, without: nothing},
	{name: "untie", says: onUntie, without: nothing},
}

func nothing(Body, int) Body { return nil }

func one(says string, care int) []claim { return []claim{{0, says, care}} }

// onWhite: what is said to be wet still is painted later, and not yet.
func onWhite(b Body) []claim {
	switch b.(type) {
	case *PaintedWhite:
		return one("white", 0)
	case *StillWet:
		return one("wet", 1)
	}
	return nil
}

// onSeal: a crack is sealed again.
func onSeal(b Body) []claim {
	switch c, ok := b.(*SealChecked); {
	case !ok:
		return nil
	case c.Cracked:
		return one("cracked", 1)
	}
	return one("sound", 0)
}

// onBleeding: the wetter the face was seen, the longer it waits.
func onBleeding(b Body) []claim {
	if l, ok := b.(*Looked); ok && l.Bleeding != "" {
		return one(string(l.Bleeding), slices.Index(Bleedings, l.Bleeding))
	}
	return nil
}

// onSlip: the worse the bark slips, the longer it waits.
func onSlip(b Body) []claim {
	if l, ok := b.(*Looked); ok && l.Slip != "" {
		return one(string(l.Slip), slices.Index(Slips, l.Slip))
	}
	return nil
}

func noBleeding(b Body, _ int) Body {
	if l := b.(*Looked); l.Slip != "" {
		return &Looked{Slip: l.Slip, Wiped: l.Wiped}
	}
	return nil
}

func noSlip(b Body, _ int) Body {
	if l := b.(*Looked); l.Bleeding != "" {
		return &Looked{Bleeding: l.Bleeding, Wiped: l.Wiped}
	}
	return nil
}

// onGraft: a graft is dead, or it moves or is green under its bark. Neither holds
// before somebody has been there again.
func onGraft(b Body) (out []claim) {
	v, ok := b.(*Visited)
	if !ok {
		return nil
	}
	for _, f := range v.Found {
		switch {
		case f.State == Dead || f.Scratch == Brown:
			out = append(out, claim{f.Slot, "dead", 0})
		case f.alive() || f.Scratch == Green:
			out = append(out, claim{f.Slot, "alive", 0})
		}
	}
	return out
}

// alive says whether the graft was seen moving.
func (f Finding) alive() bool { return f.State == Swelling || f.State == Pushing || f.State == Growing }

func noFinding(b Body, slot int) Body {
	return found(b, func(f Finding) bool { return f.Slot != slot })
}

// found is a visit with some of its findings, nil where none is left.
func found(b Body, keep func(Finding) bool) Body {
	var out []Finding
	for _, f := range b.(*Visited).Found {
		if keep(f) {
			out = append(out, f)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return &Visited{Found: out}
}

// onLoss: a stump on which a graft was seen alive is not lost.
func onLoss(b Body) []claim {
	switch b := b.(type) {
	case *Failed:
		return one("lost", 0)
	case *SeasonsEnd:
		if b.Word == "dead" {
			return one("lost", 0)
		}
		return one("alive", 1)
	case *Visited:
		if slices.ContainsFunc(b.Found, Finding.alive) {
			return one("alive", 1)
		}
	}
	return nil
}

func noneAlive(b Body, _ int) Body {
	if _, visit := b.(*Visited); !visit {
		return nil
	}
	return found(b, func(f Finding) bool { return !f.alive() })
}

// onTwine: tight twine comes off within days.
func onTwine(b Body) []claim {
	switch c, ok := b.(*TwineChecked); {
	case !ok:
		return nil
	case c.Tight:
		return one("tight", 1)
	}
	return one("loose", 0)
}

// onHeadBack: what was too short, or was left, is asked again next winter.
func onHeadBack(b Body) []claim {
	switch b := b.(type) {
	case *HeadedBack:
		if b.Short {
			return one("short", 1)
		}
		return one("headed", 0)
	case *AnotherYear:
		return b.on("head-back")
	}
	return nil
}

// on is the claim that the work was left, if it is that work that was.
func (b *AnotherYear) on(work string) []claim {
	if b.Work == work {
		return one("left", 2)
	}
	return nil
}

// onNurseLimbs: limbs that are left are asked for again next winter.
func onNurseLimbs(b Body) []claim {
	switch b := b.(type) {
	case *NurseLimbOff:
		if b.Left == 0 {
			return one("off", 0)
		}
	case *AnotherYear:
		return b.on("nurse-limbs-off")
	}
	return nil
}

// onUntie: a tree that is left tied is looked at again.
func onUntie(b Body) []claim {
	switch b := b.(type) {
	case *Untied:
		return one("untied", 0)
	case *AnotherYear:
		return b.on("untie")
	}
	return nil
}

// near says whether two times are about the same on the matter.
func (m *matter) near(x, y time.Time) bool {
	if m.within > 0 {
		return x.Sub(y).Abs() < m.within
	}
	return unit.DateOf(x) == unit.DateOf(y)
}
