package due

import (
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
func (c Call) White() bool {
	return slices.ContainsFunc(c.Dues, func(d Due) bool { return d.Kind == White })
}

// Late says whether anything there should have been done before now.
func (c Call) Late(now time.Time) bool {
	return slices.ContainsFunc(c.Dues, func(d Due) bool { return d.Late(now) })
}

// Asked says what a round takes.
type Asked struct {
	From, Until time.Time      // what can be done at some time from one to the other
	Keep        func(Due) bool // nil takes every kind of work
	CutBack     int            // at most so many stumps to cut back; below nought all of them
}

// Now asks for all that is open at an instant; see plan for how many stumps are
// cut back a day.
func Now(now time.Time) Asked { return Asked{From: now, Until: now, CutBack: -1} }

// Round is the stumps that need something, in the order of the next: white that
// is late or running out, scions to finish and grafts to seal, faces whose wait
// is over, white that is open, then the rest; each part in walking order, up one
// row and down the next.
func Round(sums []Summary, ask Asked) []Call {
	var parts [lastPart + 1][]Call
	dues := make([]Due, 0, len(sums)) // of all calls, one behind the other
	for _, s := range sums {
		first := len(dues)
		for _, d := range s.Dues {
			if d = d.On(ask.From); d.OpenBetween(ask.From, ask.Until) && (ask.Keep == nil || ask.Keep(d)) {
				dues = append(dues, d)
			}
		}
		here := dues[first:len(dues):len(dues)]
		if len(here) == 0 {
			continue
		}
		slices.SortStableFunc(here, func(a, b Due) int { return place[a.Kind] - place[b.Kind] })
		p := lastPart
		for _, d := range here {
			p = min(p, d.part(ask.From))
		}
		parts[p] = append(parts[p], Call{s.ID, here})
	}
	var out []Call
	for _, calls := range parts {
		intoWalk(calls)
		if byWalk := func(a, b Call) int { return a.Stump.WalkCompare(b.Stump) }; !slices.IsSortedFunc(calls, byWalk) {
			slices.SortFunc(calls, byWalk)
		}
		out = append(out, calls...)
	}
	return fewerCut(out, ask.CutBack)
}

// The parts of a round, in order; lastPart is all that can wait its turn.
const (
	whiteRunsOut = iota
	graftOpen
	faceReady
	whiteOpen
	lastPart
)

// runsOut is how long before its time white is said to run out.
const runsOut = 30 * time.Minute

// part is the part of a round that a due belongs to at now.
func (d Due) part(now time.Time) int {
	switch {
	case d.Opens.After(now):
	case d.Kind == White && now.Add(runsOut).After(d.By):
		return whiteRunsOut
	case d.Kind == White:
		return whiteOpen
	case d.Kind == Finish || d.Kind == Seal:
		return graftOpen
	case d.Face() && d.Opens.Sub(d.Since) < 2*time.Hour && now.Sub(d.Opens) < 12*time.Hour:
		return faceReady
	}
	return lastPart
}

// Face says whether the due is a look at a face that was cut, gashed, drilled or
// wiped minutes before.
func (d Due) Face() bool { return d.Kind == LookAgain && (d.Hint == againLook || d.Hint == againWipe) }

// After is the stump to go to next from one: the first call if that cannot wait,
// else the next in walking order behind it, round to the beginning. The stump
// itself counts only where it is at hand, as under a cursor.
func After(calls []Call, from record.StumpID, atHand bool, now time.Time) (record.StumpID, bool) {
	if !atHand {
		calls = slices.DeleteFunc(slices.Clone(calls), func(c Call) bool { return c.Stump == from })
	}
	if len(calls) == 0 {
		return record.NoStump, false
	}
	if first := calls[0]; slices.ContainsFunc(first.Dues, func(d Due) bool { return d.part(now) < lastPart }) {
		return first.Stump, true
	}
	for _, c := range calls {
		if c.Stump.WalkCompare(from) > 0 || c.Stump == from {
			return c.Stump, true
		}
	}
	return calls[0].Stump, true
}

// fewerCut leaves out stumps to cut back past so many; what else is due on them
// stays.
func fewerCut(calls []Call, most int) []Call {
	if most < 0 {
		return calls
	}
	out := calls[:0]
	for _, c := range calls {
		if i := slices.IndexFunc(c.Dues, func(d Due) bool { return d.Kind == CutBack }); i >= 0 {
			if most--; most < 0 {
				c.Dues = slices.Delete(slices.Clone(c.Dues), i, i+1)
			}
		}
		if len(c.Dues) > 0 {
			out = append(out, c)
		}
	}
	return out
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
