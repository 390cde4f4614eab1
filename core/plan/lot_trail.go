package plan

import (
	"cmp"
	"slices"

	"barkslip/core/due"
	"barkslip/core/record"
)

// Place is a stump that a lot went to: at what stage it is, and how the scions of
// the lot fare there.
type Place struct {
	Stump record.StumpID
	Stage record.Stage
	Use   due.LotUse // of the lot alone
	Do    record.FollowUp
}

// Open says whether something is still to be said or done about the scions there:
// some live, and nobody said what to do, or they are to be cut out. It means
// nothing where the lot is not followed.
func (p Place) Open() bool { return p.Use.Living() > 0 && (p.Do == "" || p.Do == record.CutOut) }

// Trail is where a lot went: every stump in walking order, block by block, and the
// sums over them.
type Trail struct {
	Places []Place
	All    due.LotUse // over all places
	Living int        // stumps on which a scion of it lives
	Untold int        // of these, stumps of which nobody said what to do since it is held
	ToCut  int        // stumps at which its scions are to be cut out
}

// Broke is how many of its scions broke before they were sealed.
func (t Trail) Broke() int {
	return t.All.Scions - t.All.Waiting - t.All.Growing - t.All.Dead
}

// TrailOf follows a lot through the summaries of blocks. What was said before the
// lot was held last is not an answer to that.
func TrailOf(book *record.Book, lot *record.Lot, sums ...[]due.Summary) (t Trail) {
	same := map[record.ID]bool{}
	one := func(id record.ID) bool {
		is, known := same[id]
		if !known {
			is = book.LotOf(id) == lot
			same[id] = is
		}
		return is
	}
	for _, block := range sums {
		from := len(t.Places)
		for _, s := range block {
			if u := useOf(s, one); u.Scions > 0 {
				t.add(Place{Stump: s.ID, Stage: s.Stage, Use: u, Do: since(lot, u)})
			}
		}
		slices.SortStableFunc(t.Places[from:], func(a, b Place) int { return walking(a.Stump, b.Stump) })
	}
	return t
}

func (t *Trail) add(p Place) {
	t.Places, t.All = append(t.Places, p), t.All.And(p.Use)
	if p.Use.Living() == 0 {
		return
	}
	t.Living++
	switch p.Do {
	case "":
		t.Untold++
	case record.CutOut:
		t.ToCut++
	}
}

// useOf is what a stump took of the lots that are one.
func useOf(s due.Summary, one func(record.ID) bool) (use due.LotUse) {
	for _, u := range s.Used {
		if one(u.Lot) {
			use = use.And(u)
		}
	}
	return use
}

// since is the answer about the scions of a lot given since it is held.
func since(lot *record.Lot, u due.LotUse) record.FollowUp {
	if lot.Held == nil || u.Told < lot.Held.Clock {
		return ""
	}
	return u.Do
}

// walking is the order in which stumps of a block are walked: up one row, down the
// next.
func walking(a, b record.StumpID) int {
	if a.Row == b.Row && a.Row%2 == 0 {
		return b.Compare(a)
	}
	return a.Compare(b)
}

// Flag is a lot that is held with what was set of it, and scions of it that live on
// a stump.
type Flag struct {
	Lot *record.Lot
	Place
}

// Flags is the lots that are followed and live on a stump, in order of their names.
func Flags(book *record.Book, s due.Summary) (out []Flag) {
	for _, u := range s.Used {
		lot := book.LotOf(u.Lot)
		known := slices.ContainsFunc(out, func(f Flag) bool { return f.Lot == lot })
		if lot == nil || !lot.Follows() || known {
			continue
		}
		if u := useOf(s, func(id record.ID) bool { return book.LotOf(id) == lot }); u.Living() > 0 {
			out = append(out, Flag{lot, Place{s.ID, s.Stage, u, since(lot, u)}})
		}
	}
	slices.SortStableFunc(out, func(a, b Flag) int { return cmp.Compare(a.Lot.Name(), b.Lot.Name()) })
	return out
}
