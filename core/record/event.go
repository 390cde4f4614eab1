package record

import (
	"cmp"
	"time"

	"barkslip/core/unit"
)

// Version is the journal's version; an event of a newer one is kept as Foreign.
// An event of version 1 is one without an act.
const Version = 2

// Event is one thing that was done or seen. Events are never changed; a later
// one may replace or withdraw it.
type Event struct {
	ID       ID
	Act      ID        // what was given together carries one act; None in an event of version 1
	Clock    uint64    // logical clock: one more than the newest event known when it was made
	At       time.Time // when it was done or seen, to the second, with the zone's offset
	Hand     string    // initials
	Stump    StumpID   // NoStump where it is about none
	Replaces []ID      // earlier answers to the same question that this one settles
	Body     Body
}

// Body is what an event says. The kinds of body are listed in kinds.go.
type Body interface {
	// Kind is the event's name in kebab case.
	Kind() string
	// Say is what it says in a few words, lengths in the system given.
	Say(sys unit.System) string
	// fields visits every field in a fixed order; new ones go last.
	fields(f fields)
}

// onStump is a body that changes the record of one stump.
type onStump interface {
	Body
	apply(s *Stump, a *Attempt, e Event)
}

// onBook is a body about blocks, lots, hands or weather.
type onBook interface {
	Body
	applyBook(b *Book, e Event)
}

// answers is a body that is a standing answer to a question: the latest by
// order stands. Bodies without it are dated observations and are all kept.
type answers interface{ question() string }

// checked is a body that can be wrong in itself.
type checked interface{ check() error }

// Compare is the order of the journal: logical clock, then id.
func (e Event) Compare(o Event) int { return cmp.Or(cmp.Compare(e.Clock, o.Clock), e.ID.Compare(o.ID)) }

// Question is the standing question an event answers, or "" for a dated
// observation.
func (e Event) Question() string {
	if q, ok := e.Body.(answers); ok {
		return q.question()
	}
	return ""
}

// Said is a body with who said it and when.
type Said[T any] struct {
	ID    ID
	Clock uint64
	At    time.Time
	Hand  string
	What  T
}

func said[T any](e Event, what T) Said[T] { return Said[T]{e.ID, e.Clock, e.At, e.Hand, what} }

// Newer says whether one thing was said after another; of two put down for the
// same second, as from notes on paper, the later in order is.
func Newer[A, B any](a Said[A], b Said[B]) bool {
	return a.At.After(b.At) || a.At.Equal(b.At) && a.Clock > b.Clock
}

func standing[T any](e Event, what T) *Said[T] { s := said(e, what); return &s }

// Measure is a length with the text it was typed as.
type Measure struct {
	unit.Length
	Typed string
}

// Given says whether a length was entered at all.
func (m Measure) Given() bool { return m.Typed != "" || m.Length != 0 }

// Measured makes a measure from a length reckoned by the program.
func Measured(l unit.Length, sys unit.System) Measure { return Measure{l, sys.Length(l)} }

// ReadMeasure reads a length, keeping the text as typed.
func ReadMeasure(text string, bare unit.Length) (Measure, error) {
	l, err := unit.ParseLength(text, bare)
	if err != nil {
		return Measure{}, err
	}
	return Measure{l, text}, nil
}

// Degrees is a temperature with the text it was typed as.
type Degrees struct {
	unit.Temperature
	Typed string
}

// Given says whether a temperature was entered.
func (d Degrees) Given() bool { return d.Typed != "" }

// Arc is a stretch of bark that cannot take a slot, Width long along the bark
// and centred on a bearing from the stump's centre.
type Arc struct {
	Bearing unit.Bearing
	Width   Measure
	Why     string // torn, knot, rot
}

func (a *Arc) fields(f fields) {
	f.bearing("bearing_deg", &a.Bearing)
	f.length("width", &a.Width)
	f.text("why", &a.Why)
}

func arcs(f fields, name string, v *[]Arc) {
	listOf(f, name, v, (*Arc).fields)
}

// LastOf is the newest of what was said, nil if nothing was.
func LastOf[T any](list []Said[T]) *Said[T] {
	if len(list) == 0 {
		return nil
	}
	return &list[len(list)-1]
}

// Last is the newest of what was said, at nought if nothing was.
func Last[T any](said []Said[T]) (s Said[T]) {
	if n := len(said); n > 0 {
		s = said[n-1]
	}
	return s
}

// OfStump says whether a body belongs to the record of one stump.
func OfStump(b Body) bool {
	_, book := b.(onBook)
	return !book
}
