package record

import (
	"strings"

	"barkslip/core/unit"
)

// TapesLoosened is the ties loosened or taken off for the winter.
type TapesLoosened struct{}

// Kind is tapes-loosened.
func (*TapesLoosened) Kind() string { return "tapes-loosened" }

// Say is the answer in a few words.
func (b *TapesLoosened) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (*TapesLoosened) fields(fields) {}

func (b *TapesLoosened) apply(_ *Stump, a *Attempt, e Event) {
	a.TapesOff = append(a.TapesOff, said(e, *b))
}

func (*TapesLoosened) cause(a *Attempt) cause {
	need := cause{done: "the first tie was put on", never: "no tie was put on"}
	if len(a.Ties) > 0 {
		need.at = a.Ties[0].At
	}
	return need
}

// HeadedBack is the leader cut back in the dormant season, or left to regrow
// because it had not passed its stake.
type HeadedBack struct {
	Short  bool    // too short: cut to strong buds to regrow
	Height Measure // of the cut above the graft
}

// Kind is headed-back.
func (*HeadedBack) Kind() string { return "headed-back" }

// Say is the answer in a few words.
func (b *HeadedBack) Say(sys unit.System) string {
	if b.Short {
		return "leader too short, cut to strong buds"
	}
	return "headed back" + saidIf(b.Height.Given(), " at "+sys.Length(b.Height.Length))
}

func (b *HeadedBack) fields(f fields) {
	f.flag("short", &b.Short)
	f.length("height", &b.Height)
}

func (b *HeadedBack) apply(_ *Stump, a *Attempt, e Event) { a.Headed = append(a.Headed, said(e, *b)) }

func (*HeadedBack) cause(a *Attempt) cause {
	return cause{a.FirstPush(), "the first push was seen", "no graft was seen pushing yet"}
}

// RivalCut is the rival branch taken off.
type RivalCut struct{}

// Kind is rival-cut.
func (*RivalCut) Kind() string { return "rival-cut" }

// Say is the answer in a few words.
func (b *RivalCut) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (*RivalCut) fields(fields) {}

func (b *RivalCut) apply(_ *Stump, a *Attempt, e Event) {
	a.RivalsCut = append(a.RivalsCut, said(e, *b))
}

func (*RivalCut) cause(a *Attempt) cause { return a.wasLed() }

// goesWith: both cuts are made on one round.
func (*RivalCut) goesWith(first Body) bool { _, ok := first.(*HeadedBack); return ok }

// SecondShootOff is the second shoot taken off, so that the leader is alone.
type SecondShootOff struct{ None bool } // None: there was none to take off

// Kind is second-shoot-off.
func (*SecondShootOff) Kind() string { return "second-shoot-off" }

// Say is the answer in a few words.
func (b *SecondShootOff) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (b *SecondShootOff) fields(f fields) { f.flag("none", &b.None) }

func (*SecondShootOff) question() string { return "second-shoot" }

func (b *SecondShootOff) apply(_ *Stump, a *Attempt, e Event) { a.SecondOff = standing(e, *b) }

func (*SecondShootOff) cause(a *Attempt) cause { return a.wasLed() }

// NurseLimbOff is nurse limbs taken off in the dormant season.
type NurseLimbOff struct{ Left int }

// Kind is nurse-limb-off.
func (*NurseLimbOff) Kind() string { return "nurse-limb-off" }

// Say is the answer in a few words.
func (b *NurseLimbOff) Say(_ unit.System) string {
	return "nurse limb off, " + sayLimbs(b.Left)
}

func (b *NurseLimbOff) fields(f fields) { f.number("left", &b.Left) }

func (b *NurseLimbOff) apply(_ *Stump, a *Attempt, e Event) {
	a.NurseOff = append(a.NurseOff, said(e, *b))
}

func (*NurseLimbOff) cause(a *Attempt) cause {
	return answered(a.Nurse, "its limbs were judged", "no nurse limbs were recorded to take off")
}

// GivenUp is a stump that will not be grafted, or not again.
type GivenUp struct {
	Why    string
	Season bool // for this season only
}

// Kind is given-up.
func (*GivenUp) Kind() string { return "given-up" }

// Say is the answer in a few words.
func (*GivenUp) Say(_ unit.System) string {
	return "given up"
}

func (b *GivenUp) fields(f fields) {
	f.text("why", &b.Why)
	f.flag("season", &b.Season)
}

func (*GivenUp) question() string { return "given-up" }

func (b *GivenUp) apply(_ *Stump, a *Attempt, e Event) { a.GivenUp = standing(e, *b) }

func (*GivenUp) fare(c *course) { c.over = true }

// Untied is twine, tapes and stake off: the tree stands alone.
type Untied struct{}

// Kind is untied.
func (*Untied) Kind() string { return "untied" }

// Say is the answer in a few words.
func (b *Untied) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (*Untied) fields(fields) {}

func (*Untied) question() string { return "untied" }

func (b *Untied) apply(_ *Stump, a *Attempt, e Event) { a.Untied = standing(e, *b) }

func (*Untied) cause(a *Attempt) cause { return a.wasSet() }

func (*Untied) fare(c *course) { c.over = true }

// goesWith: the twine comes off with the stake.
func (*Untied) goesWith(first Body) bool { _, ok := first.(*TwineCut); return ok }

// AnotherYear puts work of the dormant season, or untying, off to the next year.
type AnotherYear struct{ Work string }

// PutOffNurse is leaving the nurse limbs on another year.
const PutOffNurse = "nurse-limbs-off"

// PutOff lists the work that may be left another year.
var PutOff = []string{"head-back", PutOffNurse, "untie"}

// Kind is another-year.
func (*AnotherYear) Kind() string { return "another-year" }

// Say is the answer in a few words.
func (b *AnotherYear) Say(unit.System) string {
	return strings.ReplaceAll(b.Work, "-", " ") + ": left another year"
}

func (b *AnotherYear) fields(f fields) { f.text("work", &b.Work) }

func (b *AnotherYear) check() error { return oneOf("work", b.Work, false, PutOff...) }

func (b *AnotherYear) apply(_ *Stump, a *Attempt, e Event) {
	a.AnotherYear = append(a.AnotherYear, said(e, *b))
}
