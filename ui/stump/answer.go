package stump

import (
	"errors"
	"fmt"
	"strings"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

// answer takes a digit or Enter.
func (s *Screen) answer(key string) part.Msgs {
	switch {
	case s.doubt != nil:
		return s.choose(key)
	case s.entry() != nil:
		return s.take(s.entry(), key)
	case s.asked.Checks != nil:
		return s.check(key)
	}
	return s.choose(key)
}

// take reads what was typed.
func (s *Screen) take(e *walk.Entry, key string) part.Msgs {
	if key != "enter" {
		return nil
	}
	text := strings.TrimSpace(s.field.Text())
	if text == "" {
		text = e.Likely
	}
	if text == "" {
		return part.Fails(errors.New("type the answer first: " + e.Asks))
	}
	bodies, err := e.Read(text)
	if errors.As(err, &s.doubt) {
		return part.Says(s.doubt.Says + " Esc types it again.")
	}
	if err != nil {
		return part.Fails(err)
	}
	return s.write(e.Refines, bodies...)
}

// check marks one thing as not good, or takes the list as it stands.
func (s *Screen) check(key string) part.Msgs {
	if key == "enter" {
		return s.write(nil, s.asked.Checks.Record(s.good)...)
	}
	i := int(key[0] - '1')
	if key == "0" || i >= len(s.good) { // what else can be said of the scion
		return s.choose(key)
	}
	s.good[i] = !s.good[i]
	if s.good[i] {
		return part.Says("")
	}
	return part.Says(s.asked.Checks.Items[i].If)
}

// choose takes a choice by its key; Enter takes the likely one.
func (s *Screen) choose(key string) part.Msgs {
	if key == "enter" {
		if key = s.asked.Likely; s.doubt != nil {
			key = ""
		}
		if key == "" {
			return part.Says(s.pressWords())
		}
	}
	for _, ch := range s.choices() {
		if ch.Key == key {
			return s.chosen(ch)
		}
	}
	return part.Says(key + " is no answer here.")
}

// pressWords says which keys answer where there is no likely answer.
func (s *Screen) pressWords() string {
	all := s.choices()
	if len(all) == 0 {
		return "There is nothing to answer here. n goes to the next stump."
	}
	return fmt.Sprintf("Look at the stump, then press %s to %s.", all[0].Key, all[len(all)-1].Key)
}

// choices are the answers offered: the ways on where what was typed is in
// doubt.
func (s *Screen) choices() []walk.Choice {
	if s.doubt != nil {
		return s.doubt.Ways
	}
	return s.asked.Choices
}

func (s *Screen) chosen(ch walk.Choice) part.Msgs {
	switch {
	case ch.Doubt != nil && s.doubt == nil:
		s.doubt = ch.Doubt
		return part.Says(s.doubt.Says + " Esc goes back.")
	case ch.Leave:
		return part.Msgs{part.Leave{Stump: s.id}}
	case ch.Lots:
		return part.Msgs{part.Say{}, part.Wood{}}
	case ch.Pick != walk.PickNone:
		return s.pick(ch)
	case ch.Entry != nil:
		s.sub, s.fig = &ch, 0
		s.field = part.NewField(ch.Entry.Text, "")
		return part.Says("")
	case ch.Go != "":
		s.goTo(ch.Go, false)
		return part.Says("")
	}
	return s.write(ch.Refines, ch.Bodies...)
}

// write puts the answer on disk and says what is wrong if it cannot.
func (s *Screen) write(refines []record.ID, bodies ...record.Body) part.Msgs {
	msgs, err := s.keep(refines, bodies...)
	return msgs.And(part.Fails(err)...)
}

// keep puts the answer on disk in one transaction, then shows the record as the
// book gives it back. refines names observations that are said more exactly.
func (s *Screen) keep(refines []record.ID, bodies ...record.Body) (part.Msgs, error) {
	given := s.x.Given(bodies...)
	given.Again, given.Refines = s.again, refines
	events, err := s.record.Answer(given)
	if err != nil {
		return nil, err
	}
	if len(events) == 0 { // nothing was changed
		s.clear()
		s.goTo("", false)
		return part.Says(""), nil
	}
	out, err := s.x.Write(events...)
	if err != nil {
		return nil, err
	}
	s.wrote = true
	for _, b := range bodies {
		s.x.NoteHabit(s.id, b)
	}
	if err := s.anew(out); err != nil {
		return nil, err
	}
	word := "Recorded"
	if s.inRound {
		word += " on " + s.id.Place()
	}
	said := word + ": " + s.x.Words(events) + ", " + unit.When(events[0].At, s.x.Time(), s.x.Site().Zone) + "."
	return part.Msgs{part.Say{Text: said}, part.Wrote{}}, nil
}

// anew shows the record as it is after an answer, at the step asked now.
func (s *Screen) anew(out due.Appended) error {
	s.focus, s.again = "", false
	s.clear()
	if s.record = out.Of(s.id); s.record == nil {
		return s.Load()
	}
	s.ask()
	return nil
}
