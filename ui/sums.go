package ui

import (
	"slices"

	"barkslip/core/due"
	"barkslip/core/record"
)

// sums are the summaries of the blocks opened in this session, kept in step with
// every answer. No other program can write the book while this one has it, so
// they need reading once.
type sums map[record.ID][]due.Summary

// summaries is the summaries of a block in list order. An error is shown, and
// gives none.
func (x *shared) summaries(block record.ID) []due.Summary {
	if have, ok := x.sums[block]; ok {
		return have
	}
	read, err := x.Book.Summaries(block)
	if err != nil {
		x.fail(err)
		return nil
	}
	if x.sums == nil {
		x.sums = sums{}
	}
	x.sums[block] = read
	return read
}

// answered brings what the screens know in step after events were written.
func (x *shared) answered(events []record.Event) {
	whole := false
	seen := map[record.StumpID]bool{}
	for _, e := range events {
		if e.Stump == record.NoStump {
			whole = true
			continue
		}
		if !seen[e.Stump] {
			seen[e.Stump] = true
			whole = !x.renew(e.Stump) || whole
		}
	}
	if whole { // a block, its settings or its weather: everything may have changed
		x.sums = nil
		x.oddsFor = record.None
		x.clocks.refresh(x)
	}
}

// renew makes one stump's summary anew; it says whether the stump was known.
func (x *shared) renew(id record.StumpID) bool {
	block := x.Book.Folded().Blocks[id.Block]
	have := x.sums[id.Block]
	at, known := slices.BinarySearchFunc(have, id, func(s due.Summary, id record.StumpID) int { return s.ID.Compare(id) })
	if !known || block == nil {
		return false
	}
	stump, err := x.Book.Stump(id)
	if err != nil {
		x.fail(err)
		return true
	}
	have[at] = due.Summarize(stump, block, len(stump.All))
	x.clocks.renew(have[at])
	return true
}
