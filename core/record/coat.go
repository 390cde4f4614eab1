package record

import "time"

// IsSealed says whether the graft was sealed since its last scion was set.
func (a *Attempt) IsSealed() bool { return a.Sealed != nil && !a.SetAt().After(a.Sealed.At) }

// Coat is when the sealer was last put on, or the white over it was washed off:
// what is not white since then is dark. Zero before it was sealed.
func (a *Attempt) Coat() (at time.Time) {
	if a.Sealed == nil {
		return at
	}
	at = a.Sealed.At
	if r := LastOf(a.Reseals); r != nil && r.At.After(at) {
		at = r.At
	}
	if w := LastOf(a.Washed); w != nil && w.At.After(at) {
		at = w.At
	}
	return at
}

// IsWhite says whether the last coat of sealer was painted white.
func (a *Attempt) IsWhite() bool { return a.White != nil && !a.White.At.Before(a.Coat()) }
