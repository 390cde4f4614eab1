package record

import (
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// NurseJudged says which limbs were left below the graft to draw sap.
type NurseJudged struct {
	Limbs   int     // how many were left
	Nearest Measure // clear stem from the planned graft height down to the nearest
	Leaf    string  // how much leaf was left: none, little, some, much
	Other   bool    // the tree's other limb, which is a stump itself, draws the sap
}

// Leaves lists how much leaf may be left, from none to much.
var Leaves = []string{"none", "little", "some", "much"}

// Kind is nurse-limbs.
func (*NurseJudged) Kind() string { return "nurse-limbs" }

// Say is the answer in a few words.
func (b *NurseJudged) Say(sys unit.System) string {
	words := sayLimbs(b.Limbs)
	if b.Other {
		words = "nurse limb: the other limb" + saidIf(b.Limbs > 0, ", "+words)
	}
	if b.Limbs == 0 {
		return words
	}
	return words + saidIf(b.Nearest.Given(), ", nearest "+sys.Exact(b.Nearest.Length)+" below") + saidIf(b.Leaf != "", ", leaf below "+b.Leaf)
}

func (b *NurseJudged) fields(f fields) {
	f.number("limbs", &b.Limbs)
	f.length("nearest", &b.Nearest)
	f.text("leaf", &b.Leaf)
	f.flag("other_limb", &b.Other)
}

func (*NurseJudged) question() string { return "nurse-limbs" }

func (b *NurseJudged) check() error { return oneOf("leaf", b.Leaf, true, Leaves...) }

func (b *NurseJudged) apply(_ *Stump, a *Attempt, e Event) { a.Nurse = standing(e, *b) }

func (*NurseJudged) begins(c *course) bool { return c.ended() || c.stale() }

// LimbTakenOff is a limb near the graft sawn off after it was judged.
type LimbTakenOff struct {
	Left    int     // limbs that stay
	Nearest Measure // clear stem down to the nearest that stays, 0 if none or not yet measured
}

// Kind is limb-taken-off.
func (*LimbTakenOff) Kind() string { return "limb-taken-off" }

// Say is the answer in a few words.
func (b *LimbTakenOff) Say(sys unit.System) string {
	return "limb off, " + sayLimbs(b.Left) + saidIf(b.Nearest.Given(), ", nearest "+sys.Length(b.Nearest.Length)+" below")
}

func (b *LimbTakenOff) fields(f fields) {
	f.number("left", &b.Left)
	f.length("nearest", &b.Nearest)
}

func (b *LimbTakenOff) apply(_ *Stump, a *Attempt, e Event) {
	a.LimbsOff = append(a.LimbsOff, said(e, *b))
}

func (*LimbTakenOff) cause(a *Attempt) cause {
	return answered(a.Nurse, "its limbs were judged", "no limbs were recorded to take off")
}

// CutBack is the first cut, a week or so before the graft.
type CutBack struct {
	Height Measure // of the cut above the ground
	Across Measure // diameter at the cut, 0 if not measured
}

// Kind is cut-back.
func (*CutBack) Kind() string { return "cut-back" }

// Say is the answer in a few words.
func (b *CutBack) Say(sys unit.System) string {
	return "cut back " + sys.Length(b.Height.Length) + saidIf(b.Across.Given(), ", "+sys.Beside(b.Across.Length, trade.StumpLimits...)+" across")
}

func (b *CutBack) fields(f fields) {
	f.length("height", &b.Height)
	f.length("across", &b.Across)
}

func (*CutBack) question() string { return "cut-back" }

func (b *CutBack) apply(_ *Stump, a *Attempt, e Event) { a.CutBack = standing(e, *b) }

// begins: grafts are cut away with what they stand on.
func (*CutBack) begins(c *course) bool { return c.ended() || c.stale() || len(c.grafts) > 0 }

// fare: of two that were not said to replace each other the later by order stands.
func (*CutBack) fare(c *course) {
	if c.cut.Body == nil || c.hand.Compare(c.cut) > 0 {
		c.cut = c.hand
	}
}

func (*CutBack) followed(a *Attempt) bool { return len(a.Grafts) > 0 }

// Gashed is a set of gashes made low on the stem.
type Gashed struct {
	Number int
	Depth  Measure // into sapwood
}

// Kind is gashed.
func (*Gashed) Kind() string { return "gashed" }

// Say is the answer in a few words.
func (b *Gashed) Say(sys unit.System) string {
	return unit.Count(b.Number, "gash") + saidIf(b.Depth.Given(), ", "+sys.Length(b.Depth.Length)+" deep")
}

func (b *Gashed) fields(f fields) {
	f.number("number", &b.Number)
	f.length("depth", &b.Depth)
}

func (b *Gashed) apply(_ *Stump, a *Attempt, e Event) { a.Gashes = append(a.Gashes, said(e, *b)) }

func (*Gashed) begins(c *course) bool { return c.ended() }

// Drilled is drain holes bored low on the stem.
type Drilled struct{ Number int }

// Kind is drilled.
func (*Drilled) Kind() string { return "drilled" }

// Say is the answer in a few words.
func (b *Drilled) Say(_ unit.System) string {
	return unit.Count(b.Number, "drain hole")
}

func (b *Drilled) fields(f fields) { f.number("number", &b.Number) }

func (b *Drilled) apply(_ *Stump, a *Attempt, e Event) { a.Holes = append(a.Holes, said(e, *b)) }

func (*Drilled) cause(a *Attempt) cause { return a.wasCutBack() }
