package core

// SecondShootOff is the second shoot taken off, so that the leader is alone.
type SecondShootOff struct{}

// Kind is second-shoot-off.
func (*SecondShootOff) Kind() string { return "second-shoot-off" }

func (*SecondShootOff) fields(fields) {}

func (*SecondShootOff) question() string { return "second-shoot" }

func (b *SecondShootOff) apply(_ *Stump, a *Attempt, e Event) { a.SecondOff = standing(e, *b) }
