package record

import (
	"strings"

	"barkslip/core/unit"
)

// Twined is the two loops of twine put round the stem and the stake.
type Twined struct {
	Loops    int
	Loop     Measure // girth of the tighter loop
	Stem     Measure // girth of the stem inside it
	Material string  // natural or synthetic
}

// Kind is twined.
func (*Twined) Kind() string { return "twined" }

// Say is the answer in a few words.
func (b *Twined) Say(sys unit.System) string {
	return unit.Count(b.Loops, "loop") + " of twine " + sys.Length(b.Loop.Length) + " round, stem " + sys.Length(b.Stem.Length) + " round" +
		saidIf(b.Material != "", ", "+b.Material)
}

func (b *Twined) fields(f fields) {
	f.number("loops", &b.Loops)
	f.length("loop", &b.Loop)
	f.length("stem", &b.Stem)
	f.text("material", &b.Material)
}

func (*Twined) question() string { return "twine" }

func (b *Twined) check() error { return oneOf("material", b.Material, true, "natural", "synthetic") }

func (b *Twined) apply(_ *Stump, a *Attempt, e Event) { a.Twine = standing(e, *b) }

func (*Twined) cause(a *Attempt) cause { return a.wasLed() }

// TwineChecked is a look at the twine, with the stem's girth if measured.
type TwineChecked struct {
	Stem  Measure
	Tight bool
}

// Kind is twine-checked.
func (*TwineChecked) Kind() string { return "twine-checked" }

// Say is the answer in a few words.
func (b *TwineChecked) Say(sys unit.System) string {
	words := "twine loose"
	if b.Tight {
		words = "twine tight"
	}
	return words + saidIf(b.Stem.Given(), ", stem "+sys.Length(b.Stem.Length)+" round")
}

func (b *TwineChecked) fields(f fields) {
	f.length("stem", &b.Stem)
	f.flag("tight", &b.Tight)
}

func (b *TwineChecked) apply(_ *Stump, a *Attempt, e Event) {
	a.TwineChecks = append(a.TwineChecks, said(e, *b))
}

func (*TwineChecked) cause(a *Attempt) cause { return a.wasTwined() }

// TwineMoved is the twine let out or moved up, with the new loop's girth.
type TwineMoved struct {
	Loop Measure
	Stem Measure
}

// Kind is twine-moved.
func (*TwineMoved) Kind() string { return "twine-moved" }

// Say is the answer in a few words.
func (b *TwineMoved) Say(sys unit.System) string {
	return "twine let out" + saidIf(b.Loop.Given(), ", loop "+sys.Length(b.Loop.Length)+" round") + saidIf(b.Stem.Given(), ", stem "+sys.Length(b.Stem.Length)+" round")
}

func (b *TwineMoved) fields(f fields) {
	f.length("loop", &b.Loop)
	f.length("stem", &b.Stem)
}

func (b *TwineMoved) apply(_ *Stump, a *Attempt, e Event) {
	a.TwineMoves = append(a.TwineMoves, said(e, *b))
}

func (*TwineMoved) cause(a *Attempt) cause { return a.wasTwined() }

// TwineCut is the twine taken off before it girdles.
type TwineCut struct{}

// Kind is twine-cut.
func (*TwineCut) Kind() string { return "twine-cut" }

// Say is the answer in a few words.
func (b *TwineCut) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (*TwineCut) fields(fields) {}

func (*TwineCut) question() string { return "twine-cut" }

func (b *TwineCut) apply(_ *Stump, a *Attempt, e Event) { a.TwineCut = standing(e, *b) }

func (*TwineCut) cause(a *Attempt) cause { return a.wasTwined() }
