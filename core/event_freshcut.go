package core

// FreshCut is the top cut again on the graft day.
type FreshCut struct {
	Height Measure // of the new face above the ground
	Torn   []Arc   // bark torn by the cut
}

// Kind is fresh-cut.
func (*FreshCut) Kind() string { return "fresh-cut" }

func (b *FreshCut) fields(f fields) {
	f.length("height", &b.Height)
	arcs(f, "torn", &b.Torn)
}

func (b *FreshCut) apply(_ *Stump, a *Attempt, e Event) {
	a.FreshCuts = append(a.FreshCuts, said(e, *b))
}
