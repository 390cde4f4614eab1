package part

import (
	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/results"
)

// sums are the summaries of the blocks opened in this session, kept in step with
// every answer. No other program can write the book while this one has it, so
// they need reading once.
type sums map[record.ID][]due.Summary

// Summaries is the summaries of a block in list order. An error is
// kept as trouble, and gives none.
func (x *Session) Summaries(block record.ID) []due.Summary {
	if have, ok := x.sums[block]; ok {
		return have
	}
	read, err := x.Book.Summaries(block)
	if err != nil {
		x.trouble = err
		return nil
	}
	if x.sums == nil {
		x.sums = sums{}
	}
	x.sums[block] = read
	return read
}

// answered brings what the screens know in step after events were written.
func (x *Session) answered(out due.Appended) {
	x.results = nil
	whole, stumps := false, map[record.StumpID]bool{}
	for _, e := range out.Events {
		whole = whole || e.Stump == record.NoStump
		stumps[e.Stump] = true
	}
	for _, c := range out.Changed {
		delete(stumps, c.Stump.ID)
		whole = !c.Stump.Standing() || !x.renew(c.Summary) || whole // a limb came or went
	}
	if whole || len(stumps) > 0 { // a block, its settings or its weather: everything may have changed
		x.Reread()
	}
}

// renew takes in one stump's summary; it says whether the stump was known.
func (x *Session) renew(sum due.Summary) bool {
	have := x.sums[sum.ID.Block]
	at, known := due.Find(have, sum.ID)
	if !known {
		return false
	}
	if x.used != nil {
		for _, u := range have[at].Used {
			x.used[u.Lot] -= u.Scions
		}
		plan.UsedOf(x.used, []due.Summary{sum})
	}
	have[at] = sum
	delete(x.told, sum.ID)
	x.Clocks.renew(sum)
	return true
}

// Reread forgets all that was read of the book, which has changed as a whole.
func (x *Session) Reread() {
	x.sums, x.used, x.told, x.oddsFor, x.results = nil, nil, nil, record.None, nil
	x.Clocks.refresh(x)
}

// Used is how many scions of each lot were set, on all blocks of the book; it is
// counted once and kept in step with every answer.
func (x *Session) Used() map[record.ID]int {
	if x.used == nil {
		used := map[record.ID]int{}
		for _, b := range x.Book.Folded().List() {
			plan.UsedOf(used, x.Summaries(b.ID))
		}
		x.used = used
	}
	return x.used
}

// Results is the grafts of the block as columns, decoded once after every answer.
func (x *Session) Results() *results.Columns {
	if x.results == nil || x.resultsFor != x.Block {
		x.results, x.resultsFor = results.Of(x.Book.Folded(), x.Site(), x.Summaries(x.Block)), x.Block
	}
	return x.results
}
