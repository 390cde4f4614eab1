package core

// NurseJudged says which limbs were left below the graft to draw sap.
type NurseJudged struct {
	Limbs   int     // how many were left
	Nearest Measure // clear stem from the planned graft height down to the nearest
	Leaf    string  // how much leaf was left: none, little, some, much
}

// Leaves lists how much leaf may be left, from none to much.
var Leaves = []string{"none", "little", "some", "much"}

// Kind is nurse-limbs.
func (*NurseJudged) Kind() string { return "nurse-limbs" }

func (b *NurseJudged) fields(f fields) {
	f.number("limbs", &b.Limbs)
	f.length("nearest", &b.Nearest)
	f.text("leaf", &b.Leaf)
}

func (*NurseJudged) question() string { return "nurse-limbs" }

func (b *NurseJudged) check() error { return oneOf("leaf", b.Leaf, true, Leaves...) }

func (b *NurseJudged) apply(_ *Stump, a *Attempt, e Event) { a.Nurse = standing(e, *b) }
