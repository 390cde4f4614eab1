package record

import (
	"errors"
	"strings"

	"barkslip/core/unit"
)

// StumpAdded puts a stump into its block, with what a list may say of it.
type StumpAdded struct {
	Across  Measure // diameter as listed, 0 if unknown
	Stock   string  // species or rootstock
	Variety string  // variety planned, "" for the block's
	Note    string
}

// Kind is stump-added.
func (*StumpAdded) Kind() string { return "stump-added" }

// Say is the answer in a few words.
func (b *StumpAdded) Say(_ unit.System) string {
	return strings.TrimSpace("added " + b.Variety)
}

func (b *StumpAdded) fields(f fields) {
	f.length("across", &b.Across)
	f.text("stock", &b.Stock)
	f.text("variety", &b.Variety)
	f.text("note", &b.Note)
}

func (*StumpAdded) question() string { return "added" }

func (b *StumpAdded) apply(s *Stump, _ *Attempt, e Event) { s.Added = standing(e, *b) }

// Noted is a note on a stump.
type Noted struct{ Text string }

// Kind is noted.
func (*Noted) Kind() string { return "noted" }

// Say is the answer in a few words.
func (b *Noted) Say(_ unit.System) string {
	return "note: " + b.Text
}

func (b *Noted) fields(f fields) { f.text("text", &b.Text) }

func (b *Noted) check() error {
	if b.Text == "" {
		return errors.New("a note needs text")
	}
	return nil
}

func (b *Noted) apply(s *Stump, _ *Attempt, e Event) { s.Notes = append(s.Notes, said(e, *b)) }

// Withdrawn takes back an earlier event; taking back the taking back restores it.
type Withdrawn struct{ Of ID }

// Kind is withdrawn.
func (*Withdrawn) Kind() string { return "withdrawn" }

// Say is the answer in a few words.
func (*Withdrawn) Say(_ unit.System) string {
	return "taken back"
}

func (b *Withdrawn) fields(f fields) { f.id("of", &b.Of) }

func (b *Withdrawn) check() error {
	if b.Of == None {
		return errors.New("withdrawn needs the event it takes back")
	}
	return nil
}
