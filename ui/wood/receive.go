package wood

import (
	"fmt"
	"strconv"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

// questions are asked one after another of a lot that came in; Enter leaves
// out what is not known.
var questions = []struct {
	asks string
	take func(x *part.Session, text string, lot *record.LotReceived) error
}{
	{"Name of the lot:", func(_ *part.Session, text string, lot *record.LotReceived) error {
		if lot.Name = text; text == "" {
			return &unit.Error{Given: text, Accepted: "a name, such as L-27"}
		}
		return nil
	}},
	{"Variety on the label:", func(_ *part.Session, text string, lot *record.LotReceived) error {
		if lot.Variety = text; text == "" {
			return &unit.Error{Given: text, Accepted: "the variety on the label"}
		}
		return nil
	}},
	{"Day it was cut, such as 14 Feb (Enter if not known):", func(x *part.Session, text string, lot *record.LotReceived) (err error) {
		if text == "" {
			return nil
		}
		today := x.Site().Day(x.Time())
		lot.Cut, err = unit.ReadDate(text, today, x.Site().Units)
		if err == nil && lot.Cut > today {
			err = &unit.Error{Given: text, Accepted: "the day it was cut, no later than today"}
		}
		return err
	}},
	{"How many sticks (Enter if not counted):", func(_ *part.Session, text string, lot *record.LotReceived) error {
		if text == "" {
			return nil
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < 1 || n > mostSticks {
			return &unit.Error{Given: text, Accepted: fmt.Sprintf("a whole number from 1 to %d", mostSticks)}
		}
		lot.Sticks = n
		return nil
	}},
	{"How thick (Enter if they differ):", func(x *part.Session, text string, lot *record.LotReceived) (err error) {
		if text != "" {
			lot.Thickness, err = walk.ReadThickness(text, x.Site().Units)
		}
		return err
	}},
}

const mostSticks = 100_000

// receive asks for a new lot.
func (s *Screen) receive() part.Msgs {
	lot := &record.LotReceived{}
	if _, err := s.x.Random.Read(lot.Lot[:]); err != nil {
		return part.Fails(err)
	}
	return s.ask(lot, 0)
}

// ask asks a question of the lot, and after it the next.
func (s *Screen) ask(lot *record.LotReceived, at int) part.Msgs {
	q, likely := questions[at], ""
	if at == 1 {
		likely = s.x.Site().Variety
	}
	return s.x.Asks(q.asks, likely, true, func(text string) (part.Msgs, error) {
		if err := q.take(s.x, part.Typed(text), lot); err != nil {
			return nil, err
		}
		if at+1 < len(questions) {
			return s.ask(lot, at+1), nil
		}
		return s.keep(lot, "lot "+lot.Name+", "+lot.Variety)
	})
}
