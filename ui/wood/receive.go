package wood

import (
	"cmp"
	"fmt"
	"strconv"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

// label is the label of a lot as it is being told.
type label struct {
	x    *part.Session
	lot  *record.LotReceived
	at   time.Time // when it came in
	anew bool      // the lot stands already, and its label is put right
}

// question is one thing asked of a lot that came in.
type question struct {
	asks string
	was  func(l *label) string // what stands, offered when the label is put right
	take func(l *label, text string) error
}

// questions are asked one after another; Enter leaves out what is not known.
var questions = []question{
	{"Name of the lot:", func(l *label) string { return l.lot.Name }, (*label).name},
	{"Variety on the label:", func(l *label) string { return cmp.Or(l.lot.Variety, l.x.Site().Variety) }, (*label).variety},
	{"Day it was cut, such as 14 Feb (Enter if not known):", (*label).wasCut, (*label).cut},
	{"How many sticks (Enter if not counted):", (*label).wasSticks, (*label).sticks},
	{"How thick (Enter if they differ):", func(l *label) string { return l.lot.Thickness.Typed }, (*label).thickness},
	words("Cut from which tree or place (Enter if not known):", func(lot *record.LotReceived) *string { return &lot.Source }),
	words("Kept where and how, such as cellar, bagged (Enter if not said):", func(lot *record.LotReceived) *string { return &lot.Kept }),
	words("Health of the trees it came from (Enter if not known):", func(lot *record.LotReceived) *string { return &lot.Health }),
	words("Permit or paper it was moved under (Enter for none):", func(lot *record.LotReceived) *string { return &lot.Permit }),
}

// words is a question about a text that may be left out.
func words(asks string, field func(*record.LotReceived) *string) question {
	return question{asks, func(l *label) string { return *field(l.lot) }, func(l *label, text string) error {
		*field(l.lot) = text
		return nil
	}}
}

const mostSticks = 100_000

func (l *label) name(text string) error {
	if text == "" {
		return &unit.Error{Given: text, Accepted: "a name, such as L-27"}
	}
	for _, other := range l.x.Book.Folded().Named(text) {
		if other.ID != l.lot.Lot {
			return fmt.Errorf("there is a lot %s already, received %s; give this one another name, such as %s b", other.Name(),
				l.x.Site().Day(other.Received.At).Long(), text)
		}
	}
	l.lot.Name = text
	return nil
}

func (l *label) variety(text string) error {
	if text == "" {
		return &unit.Error{Given: text, Accepted: "the variety on the label"}
	}
	l.lot.Variety = text
	return nil
}

func (l *label) wasCut() string {
	if l.lot.Cut == 0 {
		return ""
	}
	return l.lot.Cut.String()
}

func (l *label) cut(text string) (err error) {
	if l.lot.Cut = 0; text == "" {
		return nil
	}
	today := l.x.Site().Day(l.x.Time())
	day, err := unit.ReadDate(text, today, l.x.Site().Units)
	if err == nil && day > today {
		err = &unit.Error{Given: text, Accepted: "the day it was cut, no later than today"}
	}
	if err == nil {
		l.lot.Cut = day
	}
	return err
}

func (l *label) wasSticks() string {
	if l.lot.Sticks == 0 {
		return ""
	}
	return strconv.Itoa(l.lot.Sticks)
}

func (l *label) sticks(text string) error {
	if l.lot.Sticks = 0; text == "" {
		return nil
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > mostSticks {
		return &unit.Error{Given: text, Accepted: fmt.Sprintf("a whole number from 1 to %d", mostSticks)}
	}
	l.lot.Sticks = n
	return nil
}

func (l *label) thickness(text string) (err error) {
	if l.lot.Thickness = (record.Measure{}); text == "" {
		return nil
	}
	l.lot.Thickness, err = walk.ReadThickness(text, l.x.Site().Units)
	return err
}

// receive asks for a new lot.
func (s *Screen) receive() part.Msgs {
	l := &label{x: s.x, lot: &record.LotReceived{}, at: s.x.Time()}
	if _, err := s.x.Random.Read(l.lot.Lot[:]); err != nil {
		return part.Fails(err)
	}
	return l.ask(0)
}

// correct asks for the label of the lot anew; Enter takes what stands.
func (s *Lot) correct() part.Msgs {
	was := s.lot.Received.What
	l := &label{x: s.x, lot: &was, at: s.lot.Received.At, anew: true}
	return l.ask(0)
}

// ask asks a question of the lot, and after it the next.
func (l *label) ask(at int) part.Msgs {
	q := questions[at]
	was := q.was(l)
	msgs := l.x.Asks(q.asks, was, true, func(text string) (part.Msgs, error) {
		text = part.Typed(text)
		if text == nothing {
			text = ""
		}
		if err := q.take(l, text); err != nil {
			return nil, err
		}
		if at+1 < len(questions) {
			return l.ask(at + 1), nil
		}
		return l.keep()
	})
	if l.anew && was != "" {
		return msgs.And(part.Say{Text: "Enter keeps what stands; " + nothing + " leaves it out."})
	}
	return msgs
}

// nothing is typed for leaving out what stands.
const nothing = "-"

// keep puts the label on disk, with the time at which the lot came in.
func (l *label) keep() (part.Msgs, error) {
	body := *l.lot
	if err := l.x.Answer(&body, l.at); err != nil {
		return nil, err
	}
	return part.Msgs{part.Reload{}, part.Say{Text: "Recorded: lot " + l.lot.Name + ", " + l.lot.Variety + "."}}, nil
}
