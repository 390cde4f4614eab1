package core

// SproutsKept is stock sprouts left to grow because every graft is dead.
type SproutsKept struct{ Number int }

// Kind is sprouts-kept.
func (*SproutsKept) Kind() string { return "sprouts-kept" }

func (b *SproutsKept) fields(f fields) { f.number("number", &b.Number) }

func (*SproutsKept) question() string { return "sprouts-kept" }

func (b *SproutsKept) apply(_ *Stump, a *Attempt, e Event) { a.Kept = standing(e, *b) }
