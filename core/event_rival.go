package core

// RivalCut is the rival branch taken off.
type RivalCut struct{}

// Kind is rival-cut.
func (*RivalCut) Kind() string { return "rival-cut" }

func (*RivalCut) fields(fields) {}

func (b *RivalCut) apply(_ *Stump, a *Attempt, e Event) {
	a.RivalsCut = append(a.RivalsCut, said(e, *b))
}
