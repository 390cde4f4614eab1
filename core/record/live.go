package record

import (
	"bytes"
	"slices"
)

// Live is the events that stand, in order: each once, without those withdrawn
// or replaced by a standing one, and without the withdrawals themselves.
func Live(events []Event) []Event { return live(InOrder(events)) }

func live(sorted []Event) []Event {
	void := voided(sorted)
	replaced := map[ID]bool{}
	for i, e := range sorted {
		if void[i] {
			continue
		}
		for _, id := range e.Replaces {
			replaced[id] = true
		}
	}
	live := make([]Event, 0, len(sorted))
	for i, e := range sorted {
		_, taking := e.Body.(*Withdrawn)
		if !void[i] && !replaced[e.ID] && !taking {
			live = append(live, e)
		}
	}
	return live
}

// InOrder is the events in the journal's order, each once. Of two with one id
// the one that comes first in order is kept; of two that say different things
// at one place in the order, the same one whichever was read first.
func InOrder(events []Event) []Event {
	sorted := slices.Clone(events)
	if !rising(sorted) {
		slices.SortFunc(sorted, func(a, b Event) int {
			if c := a.Compare(b); c != 0 {
				return c
			}
			return bytes.Compare(Pack(nil, a), Pack(nil, b))
		})
	}
	seen := make(map[ID]bool, len(sorted))
	out := sorted[:0]
	for _, e := range sorted {
		if !seen[e.ID] {
			seen[e.ID] = true
			out = append(out, e)
		}
	}
	return out
}

// rising says whether events are in the journal's order already, as they stand in it.
func rising(events []Event) bool {
	for i := 1; i < len(events); i++ {
		if events[i-1].Compare(events[i]) >= 0 {
			return false
		}
	}
	return true
}

// voided marks the events taken back. A withdrawal counts only for what stands
// before it, so going from the last to the first settles chains of them.
func voided(sorted []Event) []bool {
	void := make([]bool, len(sorted))
	var place map[ID]int
	for i := len(sorted) - 1; i >= 0; i-- {
		w, ok := sorted[i].Body.(*Withdrawn)
		if !ok || void[i] {
			continue
		}
		if place == nil {
			place = make(map[ID]int, len(sorted))
			for j, e := range sorted {
				place[e.ID] = j
			}
		}
		if j, found := place[w.Of]; found && j < i {
			void[j] = true
		}
	}
	return void
}
