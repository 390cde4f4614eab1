package walk

import (
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

// Present is the step that is asked now.
func (c *Case) Present() StepID {
	a := c.A
	switch stage := a.Stage(); {
	case stage == record.StageFailed, stage == record.StageGivenUp, stage == record.StageUntied:
		return c.afterEnd()
	case a.White != nil && c.B.Earwigs && len(a.Rings) == 0 && a.FirstPush().IsZero():
		return StepRing
	case a.White != nil:
		return c.afterWhite()
	case a.Sealed != nil:
		return StepWhite
	case c.split(true) != nil:
		return StepSplit
	case a.AllSet():
		return StepSeal
	case len(a.Grafts) > 0:
		return StepScion
	case c.AgainstToday():
		return c.grafting()
	}
	return c.preparing()
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
	case c.A.CutBack == nil || c.inCutBack():
		return c.cuttingBack()
	case v == ready.TakeLimbOff:
		return StepLimbOff
	case c.nextLimbOpen():
		return StepReach
	case v == ready.Wait && c.Advice.Until.After(c.Now):
		return StepWait
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
	return c.today(c.A.CutBack.At) && len(c.A.Gashes) == 0 && len(c.A.Looks) == 0
}

// cuttingBack is the next step of part 1.
func (c *Case) cuttingBack() StepID {
	switch n := c.nurse(); {
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
