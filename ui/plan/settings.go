package plan

import (
	"fmt"
	"strings"

	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// setting is one that the plan goes by.
type setting struct {
	name, word, asks string
	show             func(b *record.Block, r plan.Rates) string
}

var settings = []setting{
	{"days-off", "days off", "such as sat sun, 9 May; none clears", func(b *record.Block, _ plan.Rates) string { return orNone(b.Off.Words()) }},
	{"hands", "the crew", "initials, such as MK RK; none clears", func(b *record.Block, _ plan.Rates) string { return orNone(strings.Join(b.Hands, " ")) }},
	{"a-day", "grafted a day", "stumps the crew grafts a day", func(b *record.Block, _ plan.Rates) string {
		if b.PerDay == 0 {
			return "counted"
		}
		return fmt.Sprint(b.PerDay)
	}},
	{"slip-from", "bark slips from", "day and month, 10 May", func(b *record.Block, _ plan.Rates) string { return slipDay(b.SlipFrom) }},
	{"slip-to", "bark slips until", "day and month, 10 Jun", func(b *record.Block, _ plan.Rates) string { return slipDay(b.SlipTo) }},
	{"load-sticks", "scions a stick", "that a stick of 12 in gives", func(_ *record.Block, r plan.Rates) string { return fmt.Sprint(r.PerStick) }},
	{"load-nails", "nails a scion", "how many", func(_ *record.Block, r plan.Rates) string { return fmt.Sprint(r.Nails) }},
	{"load-wrap", "wrap squares a scion", "how many", func(_ *record.Block, r plan.Rates) string { return fmt.Sprint(r.Wrap) }},
	{"load-sealer", "sealer lies", "both coats, such as 2mm", func(b *record.Block, r plan.Rates) string { return b.Units.Exact(r.Sealer) }},
	{"load-paint", "white lies", "such as 0.3mm", func(b *record.Block, r plan.Rates) string { return b.Units.Exact(r.Paint) }},
	{"load-stakes", "stakes a stump", "how many", func(_ *record.Block, r plan.Rates) string { return fmt.Sprint(r.Stakes) }},
	{"load-ties", "ties a stump", "in its first season", func(_ *record.Block, r plan.Rates) string { return fmt.Sprint(r.Ties) }},
	{"load-tape", "tape a tie", "such as 12in", func(b *record.Block, r plan.Rates) string { return b.Units.Exact(r.Tape) }},
	{"load-twine", "twine a knot", "such as 12in", func(b *record.Block, r plan.Rates) string { return b.Units.Exact(r.Knot) }},
}

func orNone(words string) string {
	if words == "" {
		return "none"
	}
	return words
}

func slipDay(m record.MonthDay) string {
	if m.Day == 0 {
		return "as usual at this latitude"
	}
	return m.In(2028).Short()
}

// settings lists what the plan goes by; picking one asks for its value.
func (s *Screen) settings() part.Msgs {
	b := s.x.Site()
	rates := plan.RatesOf(b)
	var items []part.Item
	for _, set := range settings {
		items = append(items, part.Item{Word: set.word, Meaning: set.show(b, rates), Take: func() part.Msgs { return s.ask(set) }})
	}
	return s.x.Picks("What the plan goes by", "Pick one to change it.", items)
}

func (s *Screen) ask(set setting) part.Msgs {
	title := strings.ToUpper(set.word[:1]) + set.word[1:]
	return s.x.Asks(title+" ("+set.asks+"):", "", true, func(text string) (part.Msgs, error) {
		b := s.x.Site()
		value := part.Typed(text)
		switch set.name {
		case "days-off":
			off, err := part.DaysOff(value, b.Day(s.x.Now()), b.Units)
			if err != nil {
				return nil, err
			}
			value = off
		case "slip-from", "slip-to":
			day, err := unit.ReadDate(value, b.Day(s.x.Now()), b.Units)
			if err != nil {
				return nil, err
			}
			value = day.String()[len("2027-"):]
		}
		body := &record.BlockSet{Block: s.x.Block, Setting: set.name, Value: value}
		return s.x.AnswerLater(body, s.x.Now(), func() part.Msgs { return part.Msgs{part.Reload{}}.And(s.settings()...) })
	})
}
