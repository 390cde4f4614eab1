package ui

import (
	"errors"
	"fmt"
	"time"

	"barkslip/core"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func (b *blockScreen) pickFilter() {
	set := func(what string, keep func(core.Summary) bool) func() error {
		return func() error {
			b.filter, b.what = keep, what
			n := 0
			for _, s := range b.sums {
				if keep(s) {
					n++
				}
			}
			b.x.say(fmt.Sprintf("%d of %d are %s. Esc shows all.", n, len(b.sums), what))
			return nil
		}
	}
	items := []listItem{
		{"all", "no filter", func() error { b.letGo(); return nil }},
		{"need a hand", "something can be done now", set("those that need a hand", func(s core.Summary) bool { return isOpen(s, b.x) })},
		{"late", "something should have been done", set("late", func(s core.Summary) bool { return isLate(s, b.x) })},
		{"disagree", "two answers to one question stand", set("in disagreement", func(s core.Summary) bool { return s.Clash })},
		{"with notes", "", set("with notes", func(s core.Summary) bool { return s.Noted })},
	}
	for _, st := range core.Stages() {
		items = append(items, listItem{st.String(), st.Mark(), set(st.String(), func(s core.Summary) bool { return s.Stage == st })})
	}
	b.r.pick("Show which stumps?", "The others stay in their place as dots.", items)
}

// together is an answer that can be given to many stumps at once, and which of
// them it fits.
type together struct {
	word, meaning string
	body          func(s *core.Stump) core.Body
	fits          func(s *core.Stump) bool
}

var answersTogether = []together{
	{"painted white", "all that are sealed", one(&core.PaintedWhite{}), func(s *core.Stump) bool { return s.Now().Sealed != nil && s.Now().White == nil }},
	{"still wet", "look again in 30 min", one(&core.StillWet{}), func(s *core.Stump) bool { return s.Now().Sealed != nil && s.Now().White == nil }},
	{"rained on", "look again in 30 min", one(&core.StillWet{Rain: true}), func(s *core.Stump) bool { return s.Now().Sealed != nil && s.Now().White == nil }},
	{"gashed", "two gashes each", one(&core.Gashed{Number: trade.GashesAtATime, Depth: core.Measure{Length: trade.GashDepth, Typed: "1/2in"}}), beforeGraft},
	{"dry", "seen dry, each face", one(&core.Looked{Bleeding: core.Dry}), beforeGraft},
	{"bark slips", "tried on each", one(&core.Looked{Slip: core.SlipsClean}), beforeGraft},
	{"earwig ring set", "", one(&core.RingSet{}), func(s *core.Stump) bool { return s.Now().Sealed != nil && alive(s) }},
	{"seal sound", "after-look", one(&core.SealChecked{}), func(s *core.Stump) bool { return s.Now().Sealed != nil && alive(s) }},
	{"resealed", "", one(&core.Resealed{}), func(s *core.Stump) bool { return s.Now().Sealed != nil && alive(s) }},
	{"sprouts rubbed", "near and below", one(&core.SproutsRubbed{}), func(s *core.Stump) bool { return s.Now().CutBack != nil && alive(s) }},
	{"tied", "not measured", one(&core.Tied{}), func(s *core.Stump) bool { return s.Now().Leader != nil && alive(s) }},
	{"headed back", "each above its stake", headBack, func(s *core.Stump) bool { return s.Now().PastStake() && alive(s) }},
	{"pinched", "rivals' tips", one(&core.Pinched{}), func(s *core.Stump) bool { return s.Now().Leader != nil && alive(s) }},
	{"tapes loosened", "for the winter", one(&core.TapesLoosened{}), func(s *core.Stump) bool { return len(s.Now().Ties) > 0 && alive(s) }},
}

// answersTogether is the answers that many stumps may be given here: first the
// cut-back at the block's own height, if it has one.
func (b *blockScreen) answersTogether() []together {
	cut, ok := b.x.site().UsualCut()
	if !ok {
		return answersTogether
	}
	standing := func(s *core.Stump) bool { return s.Stage() == core.Standing }
	first := together{"cut back", "at " + b.x.site().Units.Length(cut.Height.Length), one(cut), standing}
	return append([]together{first}, answersTogether...)
}

func one(b core.Body) func(*core.Stump) core.Body { return func(*core.Stump) core.Body { return b } }

func headBack(s *core.Stump) core.Body { return &core.HeadedBack{Height: s.Now().Stake.What.Height} }

func beforeGraft(s *core.Stump) bool { return s.Stage() == core.Draining && len(s.Now().Grafts) == 0 }

func alive(s *core.Stump) bool {
	st := s.Stage()
	return st != core.FailedOut && st != core.GivenUpOn && st != core.UntiedFree
}

func (b *blockScreen) answerRow() {
	if len(b.rows) == 0 {
		return
	}
	r := b.rows[b.at]
	var ids []core.StumpID
	for _, s := range r.sums {
		ids = append(ids, s.ID)
	}
	b.answerAll(fmt.Sprintf("row %d", r.number), ids)
}

func (b *blockScreen) answerPicked() {
	var ids []core.StumpID
	for _, s := range b.sums {
		if b.picked[s.ID] {
			ids = append(ids, s.ID)
		}
	}
	if len(ids) == 0 {
		b.x.say("Pick stumps with Space first, or r answers for the whole row.")
		return
	}
	b.answerAll("the picked", ids)
}

// answerAll asks what is true of all of them, and when.
func (b *blockScreen) answerAll(who string, ids []core.StumpID) {
	stumps := make([]*core.Stump, 0, len(ids))
	for _, id := range ids {
		s, err := b.x.Book.Stump(id)
		if err != nil {
			b.x.fail(err)
			return
		}
		stumps = append(stumps, s)
	}
	var items []listItem
	for _, t := range b.answersTogether() {
		n := 0
		for _, s := range stumps {
			if t.fits(s) {
				n++
			}
		}
		if n == 0 {
			continue
		}
		meaning := fmt.Sprintf("%d of %d", n, len(ids))
		if t.meaning != "" {
			meaning += ", " + t.meaning
		}
		items = append(items, listItem{t.word, meaning, func() error { return b.askWhen(who, t, stumps) }})
	}
	if len(items) == 0 {
		b.x.say("No one answer fits " + who + " now.")
		return
	}
	b.r.pick("One answer for "+who+": which?", "It is given to those it fits; the others are left as they are.", items)
}

func (b *blockScreen) askWhen(who string, t together, stumps []*core.Stump) error {
	now := b.x.now().In(b.x.site().Zone)
	b.r.ask(fmt.Sprintf("%s, %s. When?", who, t.word), now.Format("15:04"), false, func(text string) error {
		at := now
		if text != now.Format("15:04") {
			c, err := unit.ParseClock(text)
			if err != nil {
				return err
			}
			at = c.On(unit.DateOf(now), now.Location())
			if at.After(now) {
				return errors.New("that is still to come; give a time up to " + now.Format("15:04"))
			}
		}
		return b.answerTogether(who, t, stumps, at)
	})
	return nil
}

// answerTogether writes one event a stump in one transaction.
func (b *blockScreen) answerTogether(who string, t together, stumps []*core.Stump, at time.Time) error {
	var events []core.Event
	var wrong error
	left := 0
	for _, s := range stumps {
		if !t.fits(s) {
			continue
		}
		body := t.body(s)
		if err := core.BeforeCause(s, body, at, b.x.site().Zone); err != nil {
			wrong, left = fmt.Errorf("%s: %w", s.ID.Place(), err), left+1
			continue
		}
		e := core.Event{At: at.Truncate(time.Second), Hand: b.x.hand, Stump: s.ID, Body: body}
		if q := e.Question(); q != "" {
			e.Replaces = s.Answers(q)
		}
		events = append(events, e)
	}
	if len(events) == 0 && wrong != nil {
		return wrong
	}
	out, err := b.x.Book.Append(events...)
	if err != nil {
		return err
	}
	words := fmt.Sprintf("%s, %s, %s", who, t.word, counted(len(out), "stump"))
	b.undo = append(b.undo, batch{words, out})
	b.x.answered(out)
	b.load()
	b.x.say("Taken: " + words + ", " + at.Format("15:04") + ". u takes it back.")
	if left > 0 {
		b.x.said, b.x.wrong = fmt.Sprintf("Taken: %s. Left out: %d, as %s", words, left, wrong), true
	}
	return nil
}

// takeBack takes back the last answer given from this screen, for all of its
// stumps.
func (b *blockScreen) takeBack() {
	if len(b.undo) == 0 {
		b.x.say("Nothing was answered from this screen; open a stump to take back its answers.")
		return
	}
	last := b.undo[len(b.undo)-1]
	var events []core.Event
	for _, e := range last.events {
		events = append(events, core.Event{At: b.x.Now().Truncate(time.Second), Hand: b.x.hand, Stump: e.Stump, Body: &core.Withdrawn{Of: e.ID}})
	}
	out, err := b.x.Book.Append(events...)
	if err != nil {
		b.x.fail(err)
		return
	}
	b.undo = b.undo[:len(b.undo)-1]
	b.x.answered(out)
	b.load()
	b.x.say("Took back: " + last.words + ".")
}
