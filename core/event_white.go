package core

// PaintedWhite ends the white clock.
type PaintedWhite struct{}

// Kind is painted-white.
func (*PaintedWhite) Kind() string { return "painted-white" }

func (*PaintedWhite) fields(fields) {}

func (*PaintedWhite) question() string { return "white" }

func (b *PaintedWhite) apply(_ *Stump, a *Attempt, e Event) { a.White = standing(e, *b) }
