package record

import (
	"errors"
	"slices"

	"barkslip/core/unit"
)

// FollowUp is what is done on a stump about its scions of a lot that is held.
type FollowUp string

// The answers to what is done where wood of a lot that is held was set; "" where
// nothing was said.
const (
	Watch   FollowUp = "watch"   // they stay and are looked at
	CutOut  FollowUp = "cut-out" // they are to be cut out, and the stump grafted again
	WereCut FollowUp = "gone"    // they were cut out
)

// FollowUps lists them.
var FollowUps = []FollowUp{Watch, CutOut, WereCut}

// Words is the answer in words.
func (f FollowUp) Words() string {
	switch f {
	case Watch:
		return "kept and watched"
	case CutOut:
		return "to be cut out"
	case WereCut:
		return "cut out"
	}
	return "what to do not decided"
}

// LotFollowed is what is done on a stump about its scions of a lot: a lot that is
// held is followed to every stump that it went to.
type LotFollowed struct {
	Lot ID
	Do  FollowUp
}

// Kind is lot-followed.
func (*LotFollowed) Kind() string { return "lot-followed" }

// Say is the answer in a few words.
func (b *LotFollowed) Say(unit.System) string { return "wood of a held lot: " + b.Do.Words() }

func (b *LotFollowed) fields(f fields) {
	f.id("lot", &b.Lot)
	word(f, "do", &b.Do)
}

func (b *LotFollowed) question() string { return "followed/" + b.Lot.String() }

func (b *LotFollowed) check() error {
	if b.Lot == None {
		return errors.New("lot-followed needs a lot")
	}
	return oneOf("do", b.Do, false, FollowUps...)
}

func (b *LotFollowed) apply(_ *Stump, a *Attempt, e Event) {
	a.Followed = slices.DeleteFunc(a.Followed, func(f Said[LotFollowed]) bool { return f.What.Lot == b.Lot })
	a.Followed = append(a.Followed, said(e, *b))
}
