package ui

import (
	"slices"

	"barkslip/core"
)

// sums are the summaries of the blocks opened in this session, kept in step with
// every answer. No other program can write the book while this one has it, so
// they need reading once.
type sums map[core.ID][]core.Summary

// summaries is the summaries of a block in list order. An error is shown, and
// gives none.
func (x *shared) summaries(block core.ID) []core.Summary {
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
func (x *shared) answered(events []core.Event) {
	whole := false
	seen := map[core.StumpID]bool{}
	for _, e := range events {
		if e.Stump == core.NoStump {
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
		x.oddsFor = core.None
		x.clocks.refresh(x)
	}
}

// renew makes one stump's summary anew; it says whether the stump was known.
func (x *shared) renew(id core.StumpID) bool {
	block := x.Book.Folded().Blocks[id.Block]
	have := x.sums[id.Block]
	at, known := slices.BinarySearchFunc(have, id, func(s core.Summary, id core.StumpID) int { return s.ID.Compare(id) })
	if !known || block == nil {
		return false
	}
	stump, err := x.Book.Stump(id)
	if err != nil {
		x.fail(err)
		return true
	}
	have[at] = core.Summarize(stump, block, len(stump.All))
	x.clocks.renew(have[at])
	return true
}
