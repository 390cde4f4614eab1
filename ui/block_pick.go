package ui

import (
	"errors"
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

func (b *blockScreen) pickFilter() {
	set := func(what string, keep func(due.Summary) bool) func() error {
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
		{"need a hand", "something can be done now", set("those that need a hand", func(s due.Summary) bool { return isOpen(s, b.x) })},
		{"late", "something should have been done", set("late", func(s due.Summary) bool { return isLate(s, b.x) })},
		{"disagree", "two answers to one question stand", set("in disagreement", func(s due.Summary) bool { return s.Clash })},
		{"with notes", "", set("with notes", func(s due.Summary) bool { return s.Noted })},
	}
	for _, st := range record.Stages() {
		items = append(items, listItem{st.String(), st.Mark(), set(st.String(), func(s due.Summary) bool { return s.Stage == st })})
	}
	b.r.pick("Show which stumps?", "The others stay in their place as dots.", items)
}

// together is an answer that can be given to many stumps at once, and which of
// them it fits.
type together struct {
	word, meaning string
	body          func(s *record.Stump) record.Body
	fits          func(s *record.Stump) bool
}

var answersTogether = []together{
	{"painted white", "all that are sealed", one(&record.PaintedWhite{}), func(s *record.Stump) bool { return s.Now().Sealed != nil && s.Now().White == nil }},
	{"still wet", "look again in 30 min", one(&record.StillWet{}), func(s *record.Stump) bool { return s.Now().Sealed != nil && s.Now().White == nil }},
	{"rained on", "look again in 30 min", one(&record.StillWet{Rain: true}), func(s *record.Stump) bool { return s.Now().Sealed != nil && s.Now().White == nil }},
	{"gashed", "two gashes each", one(&record.Gashed{Number: trade.GashesAtATime, Depth: record.Measure{Length: trade.GashDepth, Typed: "1/2in"}}), beforeGraft},
	{"dry", "seen dry, each face", one(&record.Looked{Bleeding: record.Dry}), beforeGraft},
	{"bark slips", "tried on each", one(&record.Looked{Slip: record.SlipsClean}), beforeGraft},
	{"earwig ring set", "", one(&record.RingSet{}), func(s *record.Stump) bool { return s.Now().Sealed != nil && alive(s) }},
	{"seal sound", "after-look", one(&record.SealChecked{}), func(s *record.Stump) bool { return s.Now().Sealed != nil && alive(s) }},
	{"resealed", "", one(&record.Resealed{}), func(s *record.Stump) bool { return s.Now().Sealed != nil && alive(s) }},
	{"sprouts rubbed", "near and below", one(&record.SproutsRubbed{}), func(s *record.Stump) bool { return s.Now().CutBack != nil && alive(s) }},
	{"tied", "not measured", one(&record.Tied{}), func(s *record.Stump) bool { return s.Now().Leader != nil && alive(s) }},
	{"headed back", "each above its stake", headBack, func(s *record.Stump) bool { return s.Now().PastStake() && alive(s) }},
	{"pinched", "rivals' tips", one(&record.Pinched{}), func(s *record.Stump) bool { return s.Now().Leader != nil && alive(s) }},
	{"tapes loosened", "for the winter", one(&record.TapesLoosened{}), func(s *record.Stump) bool { return len(s.Now().Ties) > 0 && alive(s) }},
}

// answersTogether is the answers that many stumps may be given here: first the
// cut-back at the block's own height, if it has one.
func (b *blockScreen) answersTogether() []together {
	cut, ok := walk.UsualCut(b.x.site())
	if !ok {
		return answersTogether
	}
	standing := func(s *record.Stump) bool { return s.Stage() == record.StageStanding }
	first := together{"cut back", "at " + b.x.site().Units.Length(cut.Height.Length), one(cut), standing}
	return append([]together{first}, answersTogether...)
}

func one(b record.Body) func(*record.Stump) record.Body {
	return func(*record.Stump) record.Body { return b }
}

func headBack(s *record.Stump) record.Body {
	return &record.HeadedBack{Height: s.Now().Stake.What.Height}
}

func beforeGraft(s *record.Stump) bool {
	return s.Stage() == record.StageDraining && len(s.Now().Grafts) == 0
}

func alive(s *record.Stump) bool {
	st := s.Stage()
	return st != record.StageFailed && st != record.StageGivenUp && st != record.StageUntied
}

func (b *blockScreen) answerRow() {
	if len(b.rows) == 0 {
		return
	}
	r := b.rows[b.at]
	var ids []record.StumpID
	for _, s := range r.sums {
		ids = append(ids, s.ID)
	}
	b.answerAll(fmt.Sprintf("row %d", r.number), ids)
}

func (b *blockScreen) answerPicked() {
	var ids []record.StumpID
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
func (b *blockScreen) answerAll(who string, ids []record.StumpID) {
	stumps := make([]*record.Stump, 0, len(ids))
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

func (b *blockScreen) askWhen(who string, t together, stumps []*record.Stump) error {
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
func (b *blockScreen) answerTogether(who string, t together, stumps []*record.Stump, at time.Time) error {
	var events []record.Event
	var wrong error
	left := 0
	for _, s := range stumps {
		if !t.fits(s) {
			continue
		}
		given, err := s.Answer(record.Given{Bodies: []record.Body{t.body(s)}, At: at, Hand: b.x.hand, Zone: b.x.site().Zone})
		if err != nil {
			wrong, left = fmt.Errorf("%s: %w", s.ID.Place(), err), left+1
			continue
		}
		events = append(events, given...)
	}
	if len(events) == 0 && wrong != nil {
		return wrong
	}
	out, err := b.x.Book.Append(events...)
	if err != nil {
		return err
	}
	words := fmt.Sprintf("%s, %s, %s", who, t.word, counted(len(out.Events), "stump"))
	b.undo = append(b.undo, batch{words, out.Events})
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
	var stumps []*record.Stump
	for _, e := range last.events {
		s, err := b.x.Book.Stump(e.Stump)
		if err != nil {
			b.x.fail(err)
			return
		}
		stumps = append(stumps, s)
	}
	out, err := b.x.Book.Append(record.Undo(record.ActOn(stumps, last.events[0].Act), b.x.Now(), b.x.hand)...)
	if err != nil {
		b.x.fail(err)
		return
	}
	b.undo = b.undo[:len(b.undo)-1]
	b.x.answered(out)
	b.load()
	b.x.say("Took back: " + last.words + ".")
}
