package block

import (
	"errors"
	"fmt"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

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
func (b *Screen) answersTogether() []together {
	cut, ok := walk.UsualCut(b.x.Site())
	if !ok {
		return answersTogether
	}
	standing := func(s *record.Stump) bool { return s.Stage() == record.StageStanding }
	first := together{"cut back", "at " + b.x.Site().Units.Length(cut.Height.Length), one(cut), standing}
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

func (b *Screen) answerRow() part.Msgs {
	if len(b.rows) == 0 {
		return nil
	}
	r := b.rows[b.at]
	var ids []record.StumpID
	for _, s := range r.sums {
		ids = append(ids, s.ID)
	}
	return b.answerAll(fmt.Sprintf("row %d", r.number), ids)
}

func (b *Screen) answerPicked() part.Msgs {
	var ids []record.StumpID
	for _, s := range b.sums {
		if b.picked[s.ID] {
			ids = append(ids, s.ID)
		}
	}
	if len(ids) == 0 {
		return part.Says("Pick stumps with Space first, or r answers for the whole row.")
	}
	return b.answerAll("the picked", ids)
}

// answerAll asks what is true of all of them, and when.
func (b *Screen) answerAll(who string, ids []record.StumpID) part.Msgs {
	stumps := make([]*record.Stump, 0, len(ids))
	for _, id := range ids {
		s, err := b.x.Book.Stump(id)
		if err != nil {
			return part.Fails(err)
		}
		stumps = append(stumps, s)
	}
	var items []part.Item
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
		items = append(items, part.Item{Word: t.word, Meaning: meaning, Take: func() part.Msgs { return b.askWhen(who, t, stumps) }})
	}
	if len(items) == 0 {
		return part.Says("No one answer fits " + who + " now.")
	}
	return b.x.Picks("One answer for "+who+": which?", "It is given to those it fits; the others are left as they are.", items)
}

func (b *Screen) askWhen(who string, t together, stumps []*record.Stump) part.Msgs {
	now := b.x.Time().In(b.x.Site().Zone)
	likely := now.Format("15:04")
	return b.x.Asks(fmt.Sprintf("%s, %s. When?", who, t.word), likely, false, func(text string) (part.Msgs, error) {
		c, err := unit.ParseClock(text)
		if err != nil {
			return nil, err
		}
		at := c.On(unit.DateOf(now), now.Location())
		switch {
		case at.After(now):
			return nil, errors.New("that is still to come; give a time up to " + likely)
		case now.Sub(at) < time.Minute: // this very minute is now
			at = now
		}
		return b.answer(who, t, stumps, at)
	})
}

// answer writes one event a stump in one transaction.
func (b *Screen) answer(who string, t together, stumps []*record.Stump, at time.Time) (part.Msgs, error) {
	var events []record.Event
	var wrong error
	left, given := 0, 0
	for _, s := range stumps {
		if !t.fits(s) {
			continue
		}
		answer, err := s.Answer(record.Given{Bodies: []record.Body{t.body(s)}, At: at, Earlier: !at.Equal(b.x.Time()), Zone: b.x.Site().Zone})
		if err != nil {
			wrong, left = fmt.Errorf("%s: %w", s.ID.Place(), err), left+1
			continue
		}
		events, given = append(events, answer...), given+1
	}
	if len(events) == 0 && wrong != nil {
		return nil, wrong
	}
	out, err := b.x.Write(events...)
	if err != nil {
		return nil, err
	}
	words := fmt.Sprintf("%s, %s, %s", who, t.word, part.Counted(given, "stump"))
	b.undo = append(b.undo, batch{words, out.Events})
	if err := b.Load(); err != nil {
		return nil, err
	}
	if left > 0 {
		return part.Msgs{part.Warn{Text: fmt.Sprintf("Recorded: %s. Left out: %d, as %s", words, left, wrong)}}, nil
	}
	return part.Says("Recorded: " + words + ", " + at.Format("15:04") + ". u takes it back."), nil
}

// takeBack takes back the last answer given from this screen, for all of its
// stumps.
func (b *Screen) takeBack() part.Msgs {
	if len(b.undo) == 0 {
		return part.Says("Nothing was answered from this screen; open a stump to take back its answers.")
	}
	last := b.undo[len(b.undo)-1]
	if _, err := b.x.Withdraw(last.events); err != nil {
		return part.Fails(err)
	}
	b.undo = b.undo[:len(b.undo)-1]
	return part.Fails(b.Load()).And(part.Say{Text: "Took back: " + last.words + "."})
}
