package record

import (
	"errors"
	"strings"

	"barkslip/core/unit"
)

// Looked is a look at the face, at the bark, or at both.
type Looked struct {
	Bleeding Bleeding // "" if only the bark was tried
	Slip     Slip     // "" if only the face was looked at
	Wiped    bool     // the face had been wiped for this look
}

// Kind is looked.
func (*Looked) Kind() string { return "looked" }

// Say is the answer in a few words.
func (b *Looked) Say(_ unit.System) string {
	var words []string
	if b.Bleeding != "" {
		words = append(words, string(b.Bleeding))
	}
	if b.Slip != "" {
		words = append(words, "bark "+b.Slip.Word())
	}
	if b.Wiped {
		words = append(words, "after a wipe")
	}
	return strings.Join(words, ", ")
}

func (b *Looked) fields(f fields) {
	word(f, "bleeding", &b.Bleeding)
	word(f, "slip", &b.Slip)
	f.flag("wiped", &b.Wiped)
}

func (b *Looked) check() error {
	if b.Bleeding == "" && b.Slip == "" {
		return errors.New("looked needs bleeding or slip")
	}
	return errors.Join(oneOf("bleeding", b.Bleeding, true, Bleedings...), oneOf("slip", b.Slip, true, Slips...))
}

func (b *Looked) apply(_ *Stump, a *Attempt, e Event) { a.Looks = append(a.Looks, said(e, *b)) }

func (*Looked) cause(a *Attempt) cause { return a.wasCutBack() }

// sameStep: a look at the face is not a try of the bark.
func (b *Looked) sameStep(other Body) bool {
	o, ok := other.(*Looked)
	return ok && (b.Slip != "") == (o.Slip != "")
}

// FreshCut is the top cut again on the graft day.
type FreshCut struct {
	Height Measure // of the new face above the ground
	Torn   []Arc   // bark torn by the cut
}

// Kind is fresh-cut.
func (*FreshCut) Kind() string { return "fresh-cut" }

// Say is the answer in a few words.
func (b *FreshCut) Say(sys unit.System) string {
	return "fresh cut " + sys.Length(b.Height.Length) + saidIf(len(b.Torn) > 0, ", torn")
}

func (b *FreshCut) fields(f fields) {
	f.length("height", &b.Height)
	arcs(f, "torn", &b.Torn)
}

func (b *FreshCut) apply(_ *Stump, a *Attempt, e Event) {
	a.FreshCuts = append(a.FreshCuts, said(e, *b))
}

func (*FreshCut) cause(a *Attempt) cause { return a.wasCutBack() }

// AgainstAdvice is work gone on with although the verdict was another.
type AgainstAdvice struct {
	Verdict Verdict
	Why     string
}

// Kind is against-advice.
func (*AgainstAdvice) Kind() string { return "against-advice" }

// Say is the answer in a few words.
func (b *AgainstAdvice) Say(_ unit.System) string {
	return "against advice: " + b.Why
}

func (b *AgainstAdvice) fields(f fields) {
	word(f, "verdict", &b.Verdict)
	f.text("why", &b.Why)
}

func (b *AgainstAdvice) check() error { return oneOf("verdict", b.Verdict, false, Verdicts...) }

func (b *AgainstAdvice) apply(_ *Stump, a *Attempt, e Event) {
	a.Against = append(a.Against, said(e, *b))
}
