package core

// SproutsRubbed is stock sprouts taken off: near the graft and lower down.
type SproutsRubbed struct {
	Near  int    // rubbed near the graft
	Below int    // rubbed lower down
	Leaf  string // leaf left below: none, little, some, much
}

// Kind is sprouts-rubbed.
func (*SproutsRubbed) Kind() string { return "sprouts-rubbed" }

func (b *SproutsRubbed) fields(f fields) {
	f.number("near", &b.Near)
	f.number("below", &b.Below)
	f.text("leaf", &b.Leaf)
}

func (b *SproutsRubbed) check() error { return oneOf("leaf", b.Leaf, true, Leaves...) }

func (b *SproutsRubbed) apply(_ *Stump, a *Attempt, e Event) {
	a.Rubbed = append(a.Rubbed, said(e, *b))
}
