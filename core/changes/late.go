package changes

import (
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// Nobody stands for the hand of late work where no hand was ever at the stump nor
// in its row.
const Nobody = "nobody yet"

// Late is the late work of calls by the hand who last worked the stump or, where
// nobody did, any stump of its row: Count is how many dues are late.
func Late(calls []due.Call, sums []due.Summary, now time.Time) []Group {
	hand, row, newest := map[record.StumpID]string{}, map[uint16]string{}, map[uint16]time.Time{}
	for _, s := range sums {
		if s.Hand == "" {
			continue
		}
		hand[s.ID] = s.Hand
		if !s.Newest.Before(newest[s.ID.Row]) {
			row[s.ID.Row], newest[s.ID.Row] = s.Hand, s.Newest
		}
	}
	var late []Change
	for _, c := range calls {
		n := 0
		for _, d := range c.Dues {
			if d.Late(now) {
				n++
			}
		}
		who := hand[c.Stump]
		if who == "" {
			who = row[c.Stump.Row]
		}
		if who == "" {
			who = Nobody
		}
		if n > 0 {
			late = append(late, Change{Hand: who, Stump: c.Stump, Count: n})
		}
	}
	return Grouped(late, func(c Change) string { return c.Hand })
}
