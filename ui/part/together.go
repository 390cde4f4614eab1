package part

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// AnswerTogether asks which one answer is given to many stumps, and when it was.
// Where kinds of work are named, by their steps, only answers to those are
// offered.
func (x *Session) AnswerTogether(who string, ids []record.StumpID, steps func(*walk.Case) []walk.StepID) Msgs {
	stumps, err := x.stumps(ids)
	if err != nil {
		return Fails(err)
	}
	var items []Item
	for _, t := range walk.Togethers() {
		given, _ := x.together(t, stumps, x.Time(), steps)
		if len(given) == 0 {
			continue
		}
		meaning := fmt.Sprintf("%d of %d", len(given), len(ids))
		if t.Meaning != "" {
			meaning += ", " + t.Meaning
		}
		items = append(items, Item{Word: t.Word, Meaning: meaning, Take: func() Msgs { return x.askWhen(who, t, stumps) }})
	}
	if len(items) == 0 {
		return Says("No one answer fits " + who + " now.")
	}
	return x.Picks("One answer for "+who+": which?", "Only stumps on which that work is due get it; one with another answer of today does not.", items)
}

func (x *Session) stumps(ids []record.StumpID) ([]*record.Stump, error) {
	out := make([]*record.Stump, 0, len(ids))
	for _, id := range ids {
		s, err := x.Book.Stump(id)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

// askWhen asks for the time of an answer. It says beforehand which stumps do not
// get it, and why.
func (x *Session) askWhen(who string, t walk.Together, stumps []*record.Stump) Msgs {
	now := x.Time().In(x.Site().Zone)
	likely := now.Format("15:04")
	given, out := x.together(t, stumps, x.Time(), nil)
	asks := fmt.Sprintf("%s, %s, %s. When?", who, t.Word, Counted(len(given), "stump"))
	return x.Asks(asks, likely, false, func(text string) (Msgs, error) {
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
		return x.answerTogether(who, t, stumps, at)
	}).And(Say{out.words()})
}

// leftOut is the stumps that do not get an answer, those that were told
// otherwise first, each with the reason.
type leftOut []string

// mostLeftOut is how many stumps left out are named.
const mostLeftOut = 3

func (l leftOut) words() string {
	switch {
	case len(l) == 0:
		return ""
	case len(l) > mostLeftOut:
		return fmt.Sprintf("Left out %d: %s, and %d more.", len(l), strings.Join(l[:mostLeftOut], "; "), len(l)-mostLeftOut)
	}
	return fmt.Sprintf("Left out %d: %s.", len(l), strings.Join(l, "; "))
}

// together is the events of an answer for many stumps, by stump, and which
// stumps do not get it.
func (x *Session) together(t walk.Together, stumps []*record.Stump, at time.Time, steps func(*walk.Case) []walk.StepID) (given [][]record.Event, out leftOut) {
	var seen, rest leftOut
	told := map[record.StumpID]record.StumpID{} // by tree: the limb that gets it for all
	for _, s := range stumps {
		c := walk.NewCase(s, x.Site(), x.Book.Folded(), at, x.Habit(s.ID))
		if steps != nil && !t.Answers(steps(c)...) {
			continue
		}
		so := t.On(c)
		tree := so.Left == "" && !slices.ContainsFunc(so.Bodies, func(b record.Body) bool { return !record.OfTree(b) })
		if first, has := told[s.ID.Trunk()]; tree && has {
			so = walk.Allowed{Left: "has it with " + first.Place()}
		}
		if so.Left == "" {
			events, err := s.Answer(record.Given{Bodies: so.Bodies, Refines: so.Refines, At: at, Earlier: !at.Equal(x.Now()), Zone: x.Site().Zone})
			if err == nil {
				given = append(given, events)
				if tree {
					told[s.ID.Trunk()] = s.ID
				}
				continue
			}
			so = walk.Allowed{Left: err.Error(), Seen: true}
		}
		words := s.ID.Place() + " " + strings.TrimSuffix(so.Left, ".")
		if so.Seen {
			seen = append(seen, words)
		} else {
			rest = append(rest, words)
		}
	}
	return given, append(seen, rest...)
}

// answerTogether writes the answer for all stumps that get it, as one act.
func (x *Session) answerTogether(who string, t walk.Together, stumps []*record.Stump, at time.Time) (Msgs, error) {
	given, left := x.together(t, stumps, at, nil)
	if len(given) == 0 {
		return nil, errors.New("it fits none of them at that time. " + left.words())
	}
	var events []record.Event
	for _, g := range given {
		events = append(events, g...)
	}
	if _, err := x.Write(events...); err != nil {
		return nil, err
	}
	for _, e := range events[max(len(events)-1, 0):] {
		x.NoteHabit(e.Stump, e.Body)
	}
	words := fmt.Sprintf("%s, %s, %s", who, t.Word, Counted(len(given), "stump"))
	x.nameAct(words)
	said := "Recorded: " + words + ", " + at.Format("15:04") + "."
	if len(left) > 0 {
		return Msgs{Reload{}, Warn{said + " " + left.words()}}, nil
	}
	return Msgs{Reload{}, Say{said + " u takes it back."}}, nil
}
