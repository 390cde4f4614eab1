package plan

import (
	"fmt"
	"slices"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Shares is who has which work of a day.
type Shares struct {
	Day    unit.Date
	Hands  []Share    // by initials
	Idle   []string   // hands of the crew that have nothing
	Nobody []due.Call // work that nobody has
	Twice  []string   // what two hands have, each in words
}

// Share is what one hand has on a day.
type Share struct {
	Given record.WorkGiven
	Calls []due.Call // of its stumps, in the order of the round
}

// SharesOf parts the calls of a day among the hands that are given work on it.
func SharesOf(b *record.Block, day unit.Date, calls []due.Call) Shares {
	s := Shares{Day: day}
	rows := map[int][]string{}
	for _, g := range b.GivenOn(day) {
		s.Hands = append(s.Hands, Share{Given: g.What})
		for _, r := range g.What.Rows {
			rows[r.Row] = append(rows[r.Row], g.What.To)
		}
	}
	for row, hands := range rows {
		if len(hands) > 1 {
			s.Twice = append(s.Twice, fmt.Sprintf("row %d is given to %s", row, strings.Join(hands, " and ")))
		}
	}
	slices.Sort(s.Twice)
	for _, hand := range b.Hands {
		if !slices.ContainsFunc(s.Hands, func(h Share) bool { return h.Given.To == hand }) {
			s.Idle = append(s.Idle, hand)
		}
	}
	takes := make([]func(record.StumpID) bool, len(s.Hands))
	for i := range s.Hands {
		takes[i] = s.Hands[i].Given.Set()
	}
	for _, c := range calls {
		had := false
		for i, take := range takes {
			if take(c.Stump) {
				s.Hands[i].Calls, had = append(s.Hands[i].Calls, c), true
			}
		}
		if !had {
			s.Nobody = append(s.Nobody, c)
		}
	}
	return s
}

// Of is the share of a hand; ok is false where it has none.
func (s Shares) Of(hand string) (Share, bool) {
	for _, h := range s.Hands {
		if h.Given.To == hand {
			return h, true
		}
	}
	return Share{}, false
}

// Has says whether a hand has a row already that day; "" where none has.
func (s Shares) Has(row int, but string) string {
	for _, h := range s.Hands {
		if h.Given.To != but && slices.Contains(h.Given.Rows, record.GivenRow{Row: row}) {
			return h.Given.To
		}
	}
	return ""
}

// Next is so many stumps of the day that nobody has but the hand itself, in walking
// order; fewer where there are no more.
func (s Shares) Next(n int, hand string) (out []record.GivenStump) {
	free := slices.Clone(s.Nobody)
	if own, ok := s.Of(hand); ok {
		free = append(free, own.Calls...)
	}
	slices.SortFunc(free, func(a, b due.Call) int { return a.Stump.WalkCompare(b.Stump) })
	for _, c := range free[:min(n, len(free))] {
		out = append(out, record.GivenStump{Row: int(c.Stump.Row), Tree: int(c.Stump.Tree), Limb: int(c.Stump.Limb)})
	}
	return out
}

// NobodyWords says which rows the work lies in that nobody has, "" where all is
// given.
func (s Shares) NobodyWords() string {
	if len(s.Nobody) == 0 {
		return ""
	}
	var rows []int
	for _, c := range s.Nobody {
		if row := int(c.Stump.Row); !slices.Contains(rows, row) {
			rows = append(rows, row)
		}
	}
	slices.Sort(rows)
	const most = 8
	var words []string
	for _, r := range rows[:min(len(rows), most)] {
		words = append(words, fmt.Sprint(r))
	}
	where := strings.Join(words, ", ")
	if more := len(rows) - most; more > 0 {
		where += fmt.Sprintf(" and %d more", more)
	}
	noun := "rows"
	if len(rows) == 1 {
		noun = "row"
	}
	return fmt.Sprintf("Nobody has %s in %s %s.", unit.Count(len(s.Nobody), "stump"), noun, where)
}
