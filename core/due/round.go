package due

import (
	"cmp"
	"slices"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// Call is one stump of a round with what is due there.
type Call struct {
	Stump record.StumpID
	Dues  []Due // in the order in which they are done
}

// White says whether the call is to paint.
func (c Call) White() bool { return c.Dues[0].Kind == White }

// Late says whether anything there should have been done before now.
func (c Call) Late(now time.Time) bool {
	return slices.ContainsFunc(c.Dues, func(d Due) bool { return d.Late(now) })
}

// Round is the stumps that need something between two instants, those to paint first,
// each part in walking order: up one row and down the next. keep may be nil to take every due.
func Round(sums []Summary, from, until time.Time, keep func(Due) bool) []Call {
	most := 0
	for _, s := range sums {
		most += len(s.Dues)
	}
	dues := make([]Due, 0, most) // of all calls, one behind the other
	white, rest := []Call(nil), make([]Call, 0, len(sums))
	for _, s := range sums {
		first := len(dues)
		for i := range s.Dues {
			if d := &s.Dues[i]; d.OpenBetween(from, until) && (keep == nil || keep(*d)) {
				dues = append(dues, *d)
			}
		}
		here := dues[first:]
		if len(here) == 0 {
			continue
		}
		slices.SortFunc(here, func(a, b Due) int { return cmp.Compare(a.Kind, b.Kind) })
		if c := (Call{s.ID, here[:len(here):len(here)]}); c.White() {
			white = append(white, c)
		} else {
			rest = append(rest, c)
		}
	}
	byWalk := func(a, b Call) int { return a.Stump.WalkCompare(b.Stump) }
	slices.SortFunc(white, byWalk)
	intoWalk(rest)
	if !slices.IsSortedFunc(rest, byWalk) {
		slices.SortFunc(rest, byWalk)
	}
	return append(white, rest...)
}

// intoWalk turns every second row round. Summaries come in the order of the
// list, so after that most rounds stand in walking order.
func intoWalk(calls []Call) {
	for from := 0; from < len(calls); {
		to := from + 1
		for to < len(calls) && calls[to].Stump.Row == calls[from].Stump.Row && calls[to].Stump.Block == calls[from].Stump.Block {
			to++
		}
		if calls[from].Stump.Row%2 == 0 {
			slices.Reverse(calls[from:to])
		}
		from = to
	}
}

// Walked is how far it is from the first call of a round to the last, along the
// rows and across them; ok is false where the block's spacings are not set.
func Walked(calls []Call, b *record.Block) (far unit.Length, ok bool) {
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
