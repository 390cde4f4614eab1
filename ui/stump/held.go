package stump

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/ui/part"
)

// flags is the held lots of which scions live on the stump.
func (s *Screen) flags() []plan.Flag {
	sums := s.x.Summaries(s.id.Block)
	at, found := due.Find(sums, s.id)
	if !found {
		return nil
	}
	return plan.Flags(s.x.Book.Folded(), sums[at])
}

// heldWords is what is to be minded of wood of held lots that is set here, or was
// chosen and is not set yet.
func (s *Screen) heldWords() (out []string) {
	for _, f := range s.flags() {
		words := fmt.Sprintf("Of %s. %s here: %s.", f.Lot.HeldWords(), part.Counted(f.Use.Living(), "scion"), f.Do.Words())
		if f.Open() {
			words += " l asks what becomes of it."
		}
		out = append(out, words)
	}
	w := s.walk.A.Wood
	if w == nil || len(s.walk.A.Grafts) > 0 || len(out) > 0 {
		return out
	}
	if l := s.x.Book.Folded().LotOf(w.What.Lot); l != nil && l.IsHeld() && s.asked.Warn == "" {
		out = append(out, "The wood chosen here is of "+l.HeldWords()+".")
	}
	return out
}

// lots goes to what is asked about wood of a held lot here, else to the lots.
func (s *Screen) lots() part.Msgs {
	for _, f := range s.flags() {
		return part.Msgs{part.FollowLot{Lot: f.Lot.ID, From: s.id}}
	}
	return part.Msgs{part.Wood{}}
}

// lotWords names the lot of the wood that an answer tells of, "" where it tells of
// none that was recorded.
func (s *Screen) lotWords(b record.Body) string {
	var lot record.ID
	switch b := b.(type) {
	case *record.ScionSet:
		lot = b.Lot
	case *record.WoodChosen:
		lot = b.Lot
	case *record.ScionBroke:
		lot = b.Lot
	case *record.LotFollowed:
		lot = b.Lot
	}
	if lot == record.None {
		return ""
	}
	l := s.x.Book.Folded().LotOf(lot)
	switch {
	case l == nil:
		return ", of a lot that was never received here"
	case l.IsHeld():
		return " (" + l.HeldWords() + ")"
	}
	return ", of lot " + l.Name()
}
