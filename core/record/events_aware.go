package record

import (
	"errors"

	"barkslip/core/unit"
)

// Aware says that what is one act with it was said with an earlier answer at
// hand that says otherwise: the matter has changed, or was seen better, and the two
// are no disagreement.
type Aware struct{ Of ID }

// Kind is aware.
func (*Aware) Kind() string { return "aware" }

// Say is the answer in a few words.
func (*Aware) Say(unit.System) string { return "an earlier answer said otherwise" }

func (b *Aware) fields(f fields) { f.id("of", &b.Of) }

func (b *Aware) check() error {
	if b.Of == None {
		return errors.New("aware needs the answer that says otherwise")
	}
	return nil
}

func (*Aware) apply(*Stump, *Attempt, Event) {}
