package core

// CutBack is the first cut, a week or so before the graft.
type CutBack struct {
	Height Measure // of the cut above the ground
	Across Measure // diameter at the cut, 0 if not measured
}

// Kind is cut-back.
func (*CutBack) Kind() string { return "cut-back" }

func (b *CutBack) fields(f fields) {
	f.length("height", &b.Height)
	f.length("across", &b.Across)
}

func (*CutBack) question() string { return "cut-back" }

func (b *CutBack) apply(_ *Stump, a *Attempt, e Event) { a.CutBack = standing(e, *b) }
