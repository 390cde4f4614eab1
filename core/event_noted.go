package core

import "errors"

// Noted is a note on a stump.
type Noted struct{ Text string }

// Kind is noted.
func (*Noted) Kind() string { return "noted" }

func (b *Noted) fields(f fields) { f.text("text", &b.Text) }

func (b *Noted) check() error {
	if b.Text == "" {
		return errors.New("a note needs text")
	}
	return nil
}

func (b *Noted) apply(s *Stump, _ *Attempt, e Event) { s.Notes = append(s.Notes, said(e, *b)) }
