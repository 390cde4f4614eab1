package core

import "barkslip/core/trade"

// Failed is a stump on which no graft lives, with the cause as judged.
type Failed struct{ Cause string }

// Kind is failed.
func (*Failed) Kind() string { return "failed" }

func (b *Failed) fields(f fields) { f.text("cause", &b.Cause) }

func (*Failed) question() string { return "failed" }

func (b *Failed) check() error { return oneOf("cause", b.Cause, false, trade.Causes...) }

func (b *Failed) apply(_ *Stump, a *Attempt, e Event) { a.Failed = standing(e, *b) }
