package rounds

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// askDay asks for the day at whose end the round is judged.
func (s *Screen) askDay() part.Msgs {
	return s.x.Asks("Which day (1 Jun, 2027-06-01, +3, tomorrow):", "tomorrow", true, func(text string) (part.Msgs, error) {
		d, err := unit.ReadDate(text, s.x.Site().Day(s.x.Time()), s.x.Site().Units)
		if err != nil {
			return nil, err
		}
		s.named = d
		return s.over(aDay), nil
	})
}

func (s *Screen) askRow() part.Msgs {
	return s.x.Asks("Only row:", "all", false, func(text string) (part.Msgs, error) {
		s.row = 0
		if text != "all" {
			n, err := strconv.Atoi(text)
			if err != nil || n < 1 || n > record.MaxRow {
				return nil, errors.New("give the number of a row, or nothing for all")
			}
			if !slices.ContainsFunc(s.x.Summaries(s.x.Block), func(sum due.Summary) bool { return int(sum.ID.Row) == n }) {
				return nil, fmt.Errorf("there is no row %d in this block", n)
			}
			s.row = n
		}
		return s.fromTop(), nil
	})
}

// showOnly asks what the round is to keep to.
func (s *Screen) showOnly() part.Msgs {
	meaning := func(set bool, is, not string) string {
		if set {
			return is
		}
		return not
	}
	var kinds []string
	for _, k := range s.only {
		kinds = append(kinds, k.Verb())
	}
	return s.x.Picks("Show only what?", "The round keeps to it until all is shown again.", []part.Item{
		{Word: "one kind of work", Meaning: meaning(len(kinds) > 0, "now only: "+strings.Join(kinds, ", "), "all kinds are shown"), Take: s.pickKind},
		{Word: "one row", Meaning: meaning(s.row > 0, fmt.Sprintf("now only row %d", s.row), "all rows are shown"), Take: s.askRow},
		{Word: "what " + s.x.Hand + " is given", Meaning: meaning(s.mine, "now only that; pick it to show all", "the work of all hands is shown"), Take: s.onlyMine},
		{Word: "show all again", Take: s.showAll},
	})
}

// showAll shows every stump with work due again.
func (s *Screen) showAll() part.Msgs {
	s.only, s.row, s.mine, s.late, s.at = nil, 0, false, false, 0
	return s.anew().And(part.Say{Text: "All work is shown."})
}

// pickKind asks for one kind of work among those that are due.
func (s *Screen) pickKind() part.Msgs {
	count := map[due.Kind]int{}
	all := *s
	all.only = nil
	for _, c := range s.round(all.keep) {
		for _, d := range c.Dues {
			count[d.Kind]++
		}
	}
	take := func(only ...due.Kind) func() part.Msgs {
		return func() part.Msgs {
			s.only = only
			return s.fromTop()
		}
	}
	items := []part.Item{{Word: "all", Meaning: "every kind of work", Take: take()}}
	for _, k := range due.Kinds() {
		if count[k] > 0 {
			items = append(items, part.Item{Word: k.Verb(), Meaning: strconv.Itoa(count[k]), Take: take(k)})
		}
	}
	return s.x.Picks("Only which work?", "", items)
}
