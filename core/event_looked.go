package core

import "errors"

// Looked is a look at the face, at the bark, or at both.
type Looked struct {
	Bleeding Bleeding // "" if only the bark was tried
	Slip     Slip     // "" if only the face was looked at
	Wiped    bool     // the face had been wiped for this look
}

// Kind is looked.
func (*Looked) Kind() string { return "looked" }

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
