package core

import (
	"cmp"
	"slices"
	"time"

	"barkslip/core/unit"
)

// Call is one stump of a round with what is due there.
type Call struct {
	Stump StumpID
	Dues  []Due // in the order in which they are done
}

// White says whether the call is to paint.
func (c Call) White() bool { return c.Dues[0].Kind == DueWhite }

// Late says whether anything there should have been done before now.
func (c Call) Late(now time.Time) bool {
	return slices.ContainsFunc(c.Dues, func(d Due) bool { return d.Late(now) })
}

// Round is the stumps that need something by an instant, those to paint first,
// the soonest of them first, then in walking order: up one row and down the
// next. keep may be nil to take every due.
func Round(sums []Summary, until time.Time, keep func(Due) bool) []Call {
	var calls []Call
	for _, s := range sums {
		if c := callOn(s, until, keep); len(c.Dues) > 0 {
			calls = append(calls, c)
		}
	}
	slices.SortFunc(calls, func(a, b Call) int {
		if a.White() != b.White() {
			if a.White() {
				return -1
			}
			return 1
		}
		if a.White() {
			return cmp.Or(a.Dues[0].By.Compare(b.Dues[0].By), a.Stump.WalkCompare(b.Stump))
		}
		return a.Stump.WalkCompare(b.Stump)
	})
	return calls
}

func callOn(s Summary, until time.Time, keep func(Due) bool) Call {
	c := Call{Stump: s.ID}
	for i, d := range s.Dues {
		if d.Open(until) && (keep == nil || keep(d)) {
			if c.Dues == nil {
				c.Dues = make([]Due, 0, len(s.Dues)-i)
			}
			c.Dues = append(c.Dues, d)
		}
	}
	slices.SortFunc(c.Dues, func(a, b Due) int { return cmp.Compare(a.Kind, b.Kind) })
	return c
}

// Walked is how far it is from the first call of a round to the last, along the
// rows and across them; ok is false where the block's spacings are not set.
func Walked(calls []Call, b *Block) (far unit.Length, ok bool) {
	rows, trees := b.RowSpacing.Length, b.TreeSpacing.Length
	if rows <= 0 || trees <= 0 {
		return 0, false
	}
	for i := 1; i < len(calls); i++ {
		from, to := calls[i-1].Stump, calls[i].Stump
		far += apart(from.Row, to.Row)*rows + apart(from.Tree, to.Tree)*trees
	}
	return far, true
}

func apart(a, b uint16) unit.Length {
	if a > b {
		a, b = b, a
	}
	return unit.Length(b - a)
}

// EndOf is the last second of a day in a zone, at which a round for that day is
// judged.
func EndOf(d unit.Date, zone *time.Location) time.Time { return d.Add(1).In(zone).Add(-time.Second) }
