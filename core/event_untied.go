package core

// Untied is twine, tapes and stake off: the tree stands alone.
type Untied struct{}

// Kind is untied.
func (*Untied) Kind() string { return "untied" }

func (*Untied) fields(fields) {}

func (*Untied) question() string { return "untied" }

func (b *Untied) apply(_ *Stump, a *Attempt, e Event) { a.Untied = standing(e, *b) }
