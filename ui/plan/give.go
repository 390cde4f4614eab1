package plan

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// give asks for the day, the hand, and what the hand is given.
func (s *Screen) give() part.Msgs {
	if len(s.x.Summaries(s.x.Block)) == 0 {
		return part.Says("There is no stump in this block to give.")
	}
	today := s.pace.Today
	item := func(day unit.Date) part.Item {
		return part.Item{Word: s.dayName(day), Meaning: s.offWords(day), Take: func() part.Msgs { return s.giveTo(day) }}
	}
	items := []part.Item{item(today), item(today.Add(1))}
	if s.x.Time().In(s.x.Site().Zone).Hour() >= 12 { // the morrow is planned
		slices.Reverse(items)
	}
	items = append(items, part.Item{Word: "another day", Take: func() part.Msgs {
		return s.x.Asks("Which day (1 Jun, +3):", "", true, func(text string) (part.Msgs, error) {
			day, err := unit.ReadDate(text, today, s.x.Site().Units)
			if err != nil {
				return nil, err
			}
			if day < today || day > today.Add(farGiven) {
				return nil, fmt.Errorf("give a day from today to %s", today.Add(farGiven).Long())
			}
			return s.giveTo(day), nil
		})
	}})
	return s.x.Picks("Give work for which day?", "", items)
}

func (s *Screen) offWords(day unit.Date) string {
	if s.x.Site().Off.Off(day) {
		return "a day off"
	}
	return ""
}

// giveTo asks for the hand.
func (s *Screen) giveTo(day unit.Date) part.Msgs {
	shares := s.shares(day)
	var items []part.Item
	for _, hand := range s.crew(shares) {
		had := "nothing yet"
		if h, ok := shares.Of(hand); ok {
			had = shareWords(h)
		}
		items = append(items, part.Item{Word: hand, Meaning: had, Take: func() part.Msgs { return s.giveWhat(shares, hand) }})
	}
	items = append(items, part.Item{Word: "another hand", Take: func() part.Msgs {
		return s.x.Asks("Whose hand? Initials:", "", true, func(text string) (part.Msgs, error) {
			hand := strings.ToUpper(part.Typed(text))
			if err := part.CheckInitials(hand); err != nil {
				return nil, err
			}
			return s.giveWhat(shares, s.one(hand)), nil
		})
	}})
	return s.x.Picks("To whom, for "+s.dayName(day)+"?", shares.NobodyWords(), items)
}

// one is the name that a hand goes on as.
func (s *Screen) one(hand string) string { return s.x.Book.Folded().Canonical("hand", hand) }

// crew is the hands that may be given work: those set, those that have some, and the
// one that is asking.
func (s *Screen) crew(shares plan.Shares) []string {
	var out []string
	add := func(hand string) {
		if hand = s.one(hand); hand != "" && !slices.Contains(out, hand) {
			out = append(out, hand)
		}
	}
	for _, hand := range s.x.Site().Hands {
		add(hand)
	}
	for _, h := range shares.Hands {
		add(h.Given.To)
	}
	add(s.x.Hand)
	return out
}

// giveWhat asks for rows or a number of stumps.
func (s *Screen) giveWhat(shares plan.Shares, hand string) part.Msgs {
	free := len(shares.Next(record.MaxTree, hand))
	items := []part.Item{
		{Word: "rows", Meaning: "whole rows, such as 1 2 5-8", Take: func() part.Msgs {
			return s.x.Asks("Rows for "+hand+":", "", true, func(text string) (part.Msgs, error) { return s.giveRows(shares, hand, text) })
		}},
		{Word: "a number of stumps", Meaning: fmt.Sprintf("the next in walking order of the %d that no other hand has", free), Take: func() part.Msgs {
			return s.x.Asks("How many stumps for "+hand+":", "", false, func(text string) (part.Msgs, error) { return s.giveNumber(shares, hand, text) })
		}},
	}
	if _, has := shares.Of(hand); has {
		items = append(items, part.Item{Word: "nothing", Meaning: "take away what " + hand + " has", Take: func() part.Msgs {
			msgs, err := s.keep(record.WorkGiven{Day: shares.Day, To: hand})
			return msgs.And(part.Fails(err)...)
		}})
	}
	return s.x.Picks(fmt.Sprintf("What does %s have, %s?", hand, s.dayName(shares.Day)), "It takes the place of what "+hand+" has.", items)
}

func (s *Screen) giveRows(shares plan.Shares, hand, text string) (part.Msgs, error) {
	rows, err := readRows(text)
	if err != nil {
		return nil, err
	}
	given := record.WorkGiven{Day: shares.Day, To: hand}
	for _, row := range rows {
		if !slices.ContainsFunc(s.x.Summaries(s.x.Block), func(sum due.Summary) bool { return int(sum.ID.Row) == row }) {
			return nil, fmt.Errorf("there is no row %d in this block", row)
		}
		if other := shares.Has(row, hand); other != "" {
			return nil, fmt.Errorf("row %d is given to %s that day; give %s something else first", row, other, other)
		}
		given.Rows = append(given.Rows, record.GivenRow{Row: row})
	}
	return s.keep(given)
}

// mostRows is how many rows are read at the most: more is a slip of the hand.
const mostRows = 500

// readRows reads rows such as 1 2 5-8; a row that stands twice is refused.
func readRows(text string) (rows []int, err error) {
	accepted := func(given string) error {
		return &unit.Error{Given: given, Accepted: "rows such as 1 2 5-8"}
	}
	for _, word := range strings.FieldsFunc(part.Typed(text), func(c rune) bool { return c == ' ' || c == ',' }) {
		from, to, ranged := strings.Cut(word, "-")
		first, err := strconv.Atoi(from)
		last := first
		if ranged && err == nil {
			last, err = strconv.Atoi(to)
		}
		if err != nil || first < 1 || last < first || last > record.MaxRow || last-first >= mostRows {
			return nil, accepted(word)
		}
		for row := first; row <= last; row++ {
			if slices.Contains(rows, row) {
				return nil, fmt.Errorf("row %d is named twice", row)
			}
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		return nil, accepted(text)
	}
	return rows, nil
}

// mostStumps is how many single stumps a hand is given at the most; more are given by
// their rows.
const mostStumps = 500

func (s *Screen) giveNumber(shares plan.Shares, hand, text string) (part.Msgs, error) {
	n, err := strconv.Atoi(part.Typed(text))
	if err != nil || n < 1 || n > mostStumps {
		return nil, &unit.Error{Given: text, Accepted: fmt.Sprintf("a number of stumps from 1 to %d", mostStumps)}
	}
	stumps := shares.Next(n, hand)
	switch {
	case len(stumps) == 0:
		return nil, errors.New("all the work of that day is given to other hands")
	case len(stumps) < n:
		return nil, fmt.Errorf("only %s have work that day that no other hand has", unit.Count(len(stumps), "stump"))
	}
	return s.keep(record.WorkGiven{Day: shares.Day, To: hand, Stumps: stumps})
}

// keep puts down what a hand is given.
func (s *Screen) keep(given record.WorkGiven) (part.Msgs, error) {
	given.Block = s.x.Block
	if err := s.x.Answer(&given, s.x.Now()); err != nil {
		return nil, err
	}
	s.taken = nil
	return part.Msgs{part.Reload{}, part.Say{Text: "Given: " + given.Say(s.x.Site().Units) + "."}}, nil
}

// takeBack takes back what was given last for today or a day to come.
func (s *Screen) takeBack() part.Msgs {
	last, ok := s.x.Site().LastGiven(s.pace.Today)
	if !ok {
		return part.Says("Nothing is given for today or later that could be taken back.")
	}
	out, err := s.x.Write(record.Undo([]record.Event{{ID: last.ID}}, s.x.Now(), s.x.Hand)...)
	if err != nil {
		return part.Fails(err)
	}
	s.taken = append(s.taken, out.Events...)
	return part.Msgs{part.Reload{}, part.Say{Text: "Took back: " + last.What.Say(s.x.Site().Units) + "."}}
}

// putBack puts back what was taken back here last.
func (s *Screen) putBack() part.Msgs {
	n := len(s.taken)
	if n == 0 {
		return part.Says("Nothing was taken back here that could be put back.")
	}
	if _, err := s.x.Write(record.Undo(s.taken[n-1:], s.x.Now(), s.x.Hand)...); err != nil {
		return part.Fails(err)
	}
	s.taken = s.taken[:n-1]
	return part.Msgs{part.Reload{}, part.Say{Text: "Put back."}}
}
