package walk

import (
	"barkslip/core/due"
	"barkslip/core/ready"
	"barkslip/core/record"
)

// The steps of the walk.
const (
	StepLimbs     StepID = "limbs"
	StepReach     StepID = "limb-reach"
	StepLeaf      StepID = "leaf"
	StepHeight    StepID = "height"
	StepGashes    StepID = "gashes"
	StepLimbOff   StepID = "limb-off"
	StepSmall     StepID = "small"
	StepBleeding  StepID = "bleeding"
	StepSlip      StepID = "slip"
	StepWait      StepID = "wait"
	StepDrill     StepID = "drain-hole"
	StepLeave     StepID = "leave"
	StepNewGashes StepID = "fresh-gashes"
	StepFreshCut  StepID = "fresh-cut"
	StepTorn      StepID = "torn"
	StepNewFace   StepID = "new-face"
	StepMeasure   StepID = "measure"
	StepLongWay   StepID = "long-way"
	StepSlots     StepID = "slots"
	StepWood      StepID = "wood"
	StepThick     StepID = "thickness"
	StepNodes     StepID = "buds"
	StepScion     StepID = "scions"
	StepSeal      StepID = "seal"
	StepWhite     StepID = "white"
	StepRing      StepID = "earwig-ring"
)

// Present is the step that is asked now: the one that ends what was begun today,
// else that of the first due that is open. Where none is open it is what the
// stump waits for.
func (c *Case) Present() StepID {
	if id := c.begun(); id != "" {
		return id
	}
	if d, ok := due.First(c.Dues(), c.Now); ok {
		return c.Meets(d.Kind)
	}
	return c.waiting()
}

// Begun says whether something was begun today and not ended.
func (c *Case) Begun() bool { return c.begun() != "" }

// Meets is the step on which a kind of work is met here: most kinds have one;
// cutting back, looking and grafting are led through theirs.
func (c *Case) Meets(kind due.Kind) StepID {
	switch kind {
	case due.CutBack:
		return c.cutsAgain()
	case due.Regraft:
		if !c.over() { // its limbs were judged anew already
			return c.cuttingBack()
		}
	case due.Look, due.LookAgain, due.Graft:
		return c.preparing()
	case due.Leader:
		if l, ok := c.A.Leads(); ok && l.Slot != 0 && l.Shoot == "" && !c.leaderLost() {
			return StepLeaderShoot
		}
	case due.KeepSprouts:
		if c.A.Failed == nil {
			return StepFailed
		}
	}
	return kind.Step()
}

// cutsAgain is the next step of part 1; a stump that was cut back for an earlier
// season, and not grafted in it, begins anew.
func (c *Case) cutsAgain() StepID {
	if c.cutAgain() && !c.inCutBack() && c.Advice.Verdict != ready.OtherGraft {
		if n := c.A.Nurse; n != nil && c.S.Elsewhere(n.ID) && n.At.After(c.A.CutBack.At) {
			return StepHeight // another limb was asked for the whole tree
		}
		return StepLimbs
	}
	return c.cuttingBack()
}

func (c *Case) leaderLost() bool {
	_, lost := c.A.LeaderLost()
	return lost
}

// over says whether the attempt is lost, given up or untied.
func (c *Case) over() bool {
	stage := c.A.Stage()
	return stage == record.StageFailed || stage == record.StageGivenUp || stage == record.StageUntied
}

// waiting is the step shown while nothing is open.
func (c *Case) waiting() StepID {
	next, some := due.Next(c.Dues(), c.Now)
	switch {
	case c.over():
		return StepEnded
	case len(c.A.Grafts) == 0 && c.A.CutBack == nil:
		return c.cuttingBack()
	case len(c.A.Grafts) == 0 && some && next.Kind != due.CutBack:
		if c.draining() {
			return StepWait
		}
		return c.preparing()
	case some && next.Kind == due.White:
		return StepWhite
	}
	return StepRest
}

// draining says whether the verdict is to wait, and nothing else can be told
// meanwhile. A look that is due is waited for no longer.
func (c *Case) draining() bool {
	return c.Advice.Verdict == ready.Wait && c.Advice.Until.After(c.Now) && !c.nextLimbOpen()
}

// AgainstToday says whether the stump is grafted today against advice.
func (c *Case) AgainstToday() bool {
	n := len(c.A.Against)
	return n > 0 && c.today(c.A.Against[n-1].At)
}

// preparing is the step before the graft, led by the verdict.
func (c *Case) preparing() StepID {
	v := c.Advice.Verdict
	switch {
	case v == ready.OtherGraft:
		return StepSmall
	case v == ready.TakeLimbOff:
		return StepLimbOff
	case c.nextLimbOpen():
		return StepReach
	case !c.today(c.Found.Looked):
		return StepBleeding
	case !c.today(c.Found.Slipped):
		return StepSlip
	}
	switch v {
	case ready.Gash:
		return StepNewGashes
	case ready.Drill:
		return StepDrill
	case ready.Leave:
		return StepLeave
	case ready.FreshCut:
		return StepFreshCut
	case ready.Graft:
		return c.grafting()
	}
	if c.torn() {
		return StepTorn
	}
	if c.faceOfToday() {
		return StepNewFace
	}
	return StepBleeding
}

// inCutBack says whether the first part was begun on this day and not ended.
func (c *Case) inCutBack() bool {
	a := c.A
	switch {
	case len(a.Grafts) > 0 || c.over():
		return false
	case a.CutBack == nil:
		return a.Nurse != nil && c.today(a.Nurse.At) && !c.S.Elsewhere(a.Nurse.ID)
	}
	looked := record.LastOf(a.Looks)
	return c.today(a.CutBack.At) && !c.today(record.Last(a.Gashes).At) && (looked == nil || looked.At.Before(a.CutBack.At))
}

// cutAgain says whether the stump was cut back in an earlier year and is to be
// cut back anew.
func (c *Case) cutAgain() bool {
	_, open := c.openDue(due.CutBack)
	return open && c.A.CutBack != nil
}

// cuttingBack is the next step of part 1.
func (c *Case) cuttingBack() StepID {
	switch n := c.nurse(); {
	case c.Advice.Verdict == ready.OtherGraft && !c.AgainstToday():
		return StepSmall
	case c.A.Nurse == nil:
		return StepLimbs
	case c.limbTooNear():
		return StepLimbOff
	case n.Limbs > 0 && !n.Nearest.Given():
		return StepReach
	case n.Limbs > 0 && n.Leaf == "":
		return StepLeaf
	case c.A.CutBack == nil:
		return StepHeight
	}
	return StepGashes
}

// torn says whether bark was torn by the newest fresh cut and it is not yet
// said where.
func (c *Case) torn() bool {
	n := len(c.A.FreshCuts)
	if n == 0 {
		return false
	}
	for _, t := range c.A.FreshCuts[n-1].What.Torn {
		if !t.Width.Given() {
			return true
		}
	}
	return false
}

func (c *Case) faceOfToday() bool { return c.today(c.Found.FreshCut) }

// grafting is the next step from measuring to the last scion.
func (c *Case) grafting() StepID {
	a := c.A
	switch {
	case c.torn():
		return StepTorn
	case !c.today(c.Found.Gashed): // against advice these were not asked yet
		return StepNewGashes
	case !c.faceOfToday():
		return StepFreshCut
	case c.Found.Looked.Before(c.Found.FreshCut):
		return StepNewFace
	case a.Measured == nil || len(a.FreshCuts) > 0 && record.Newer(record.Last(a.FreshCuts), *a.Measured):
		return StepMeasure
	case c.oval() && !c.longWayGiven():
		return StepLongWay
	case a.Marked() == 0 || record.Newer(*a.Measured, *a.Slots):
		return StepSlots
	case a.Wood == nil:
		return StepWood
	case !a.Wood.What.Thickness.Given():
		return StepThick
	case len(a.Wood.What.Nodes) == 0 && len(a.Wood.What.Pieces) == 0:
		return StepNodes
	case !a.AllSet():
		return StepScion
	}
	return StepSeal
}

// oval says whether the two diameters differ enough for the long way to
// matter: by more than one part in twenty.
func (c *Case) oval() bool {
	m := c.A.Measured
	return m != nil && m.What.Across2.Given() && m.What.Across.Length > m.What.Across2.Length*1.05
}

func (c *Case) longWayGiven() bool { return c.A.Measured.What.LongWaySaid }
