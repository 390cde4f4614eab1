package part

import (
	"barkslip/core/due"
	"barkslip/core/record"
)

// Only is which stumps of a block the screens keep to: the block shows no others,
// and the rounds and the next stump to do are of these.
type Only struct {
	Block record.ID
	Words string // "sealed, lot A3"
	Keep  func(due.Summary) bool
}

// OnlyHere is what the screens keep to on the block they are on; nil for all.
func (x *Session) OnlyHere() *Only {
	if x.Only == nil || x.Only.Block != x.Block {
		return nil
	}
	return x.Only
}

// OnlyWords is what the screens keep to in words, "" for all.
func (x *Session) OnlyWords() string {
	if only := x.OnlyHere(); only != nil {
		return only.Words
	}
	return ""
}

// Kept is the summaries of the block the screens are on that they keep to.
func (x *Session) Kept() []due.Summary {
	sums, only := x.Summaries(x.Block), x.OnlyHere()
	if only == nil {
		return sums
	}
	var out []due.Summary
	for _, s := range sums {
		if only.Keep(s) {
			out = append(out, s)
		}
	}
	return out
}
