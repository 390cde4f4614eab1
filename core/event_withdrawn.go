package core

import "errors"

// Withdrawn takes back an earlier event; taking back the taking back restores it.
type Withdrawn struct{ Of ID }

// Kind is withdrawn.
func (*Withdrawn) Kind() string { return "withdrawn" }

func (b *Withdrawn) fields(f fields) { f.id("of", &b.Of) }

func (b *Withdrawn) check() error {
	if b.Of == None {
		return errors.New("withdrawn needs the event it takes back")
	}
	return nil
}
