package stump

import (
	"errors"
	"fmt"
	"strings"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

func (s *Screen) note() part.Msgs {
	return s.x.Asks("Note on "+s.id.Place()+":", "", true, func(text string) (part.Msgs, error) {
		text = part.Typed(text)
		if text == "" {
			return nil, errors.New("type the note first, or Esc")
		}
		return s.keep(nil, &record.Noted{Text: text})
	})
}

// pick opens the list of causes or of reasons; what is picked becomes the
// answer.
func (s *Screen) pick(ch walk.Choice) part.Msgs {
	if ch.Pick == walk.PickReason {
		return s.pickReason()
	}
	picked := ch.Picked
	if picked == nil {
		picked = func(cause string) []record.Body { return []record.Body{&record.Failed{Cause: cause}} }
	}
	var items []part.Item
	for _, cause := range trade.Causes {
		items = append(items, part.Item{Word: cause, Take: func() part.Msgs { return s.write(ch.Refines, picked(cause)...) }})
	}
	return s.x.Picks("What was the cause?", "It is kept with the stump; say unknown rather than guess.", items)
}

// end asks whether the stump failed or is given up.
func (s *Screen) end() part.Msgs {
	giveUp := func(g *record.GivenUp) func() part.Msgs {
		return func() part.Msgs {
			return s.x.Picks("Give it up?", "It is then in no round any more"+seasonOnly(g)+".", []part.Item{
				{Word: "no", Meaning: "back to the stump", Take: part.Does()},
				{Word: "yes", Meaning: g.Why, Take: func() part.Msgs { return s.write(nil, g) }},
			})
		}
	}
	var items []part.Item
	if len(s.walk.A.Grafts) > 0 {
		failed := func() part.Msgs { return s.pick(walk.Choice{}) }
		items = append(items, part.Item{Word: "failed", Meaning: "no graft lives: pick the cause", Take: failed})
	}
	if s.isAgainst() {
		items = append(items, part.Item{Word: "graft it all the same", Meaning: "today, against the advice: pick the reason", Take: s.pickReason})
	}
	items = append(items,
		part.Item{Word: "given up", Meaning: "it will not be grafted, or not again", Take: giveUp(&record.GivenUp{Why: "given up"})},
		part.Item{Word: "given up this season", Meaning: "graft it next year", Take: giveUp(&record.GivenUp{Why: "given up this season", Season: true})})
	return s.x.Picks("What becomes of it?", "Anything can be taken back with u.", items)
}

// seasonOnly says how long giving up holds, where that is one season.
func seasonOnly(g *record.GivenUp) string {
	if g.Season {
		return " until next year"
	}
	return ""
}

// reasons for going against advice.
var reasons = []string{"the season is ending", "the wood will not keep", "it looks right to me", "a trial"}

// isAgainst says whether grafting it now would be against the advice.
func (s *Screen) isAgainst() bool {
	return s.walk.Advice.Verdict != ready.Graft && len(s.walk.A.Grafts) == 0
}

// pickReason asks why the work goes on against advice.
func (s *Screen) pickReason() part.Msgs {
	verdict := s.walk.Advice.Verdict
	against := func(why string) record.Body { return &record.AgainstAdvice{Verdict: verdict, Why: why} }
	var items []part.Item
	for _, why := range reasons {
		items = append(items, part.Item{Word: why, Take: func() part.Msgs { return s.write(nil, against(why)) }})
	}
	items = append(items, part.Item{Word: "another reason", Meaning: "type it", Take: func() part.Msgs {
		return s.x.Asks("Why:", "", true, func(text string) (part.Msgs, error) {
			if text = part.Typed(text); text == "" {
				return nil, errors.New("type the reason first, or Esc")
			}
			return s.keep(nil, against(text))
		})
	}})
	why := fmt.Sprintf("The advice is: %s. %s The reason is kept with the graft.", part.Spaced(string(verdict)), strings.Join(s.walk.Advice.Reasons, " "))
	return part.Msgs{part.PickList{List: part.NewList(s.x, "Graft it all the same? Why?", why, items).Unpicked()}}
}

// settleWord names what settling does here, nothing where nothing disagrees.
func (s *Screen) settleWord() string {
	if len(s.record.Clashes) == 0 {
		return ""
	}
	return "settle"
}

// settle asks which of the answers that disagree holds; it is said anew, for the
// time it was given for, in place of those that say otherwise. Where none disagree
// it goes to the next stump where they do.
func (s *Screen) settle() part.Msgs {
	next := part.NextClash{After: s.id}
	if len(s.record.Clashes) == 0 {
		return part.Msgs{next}
	}
	b, clash := s.x.Site(), s.record.Clashes[0]
	var items []part.Item
	for _, e := range clash.Events {
		words, meaning := record.Say(e.Body, b.Units), e.Hand+", "+unit.When(e.At, s.x.Time(), b.Zone)
		items = append(items, part.Item{Word: words, Meaning: meaning, Take: func() part.Msgs {
			out, err := s.x.Write(s.record.Settle(clash, e)...)
			if err == nil {
				err = s.anew(out)
			}
			if err != nil {
				return part.Fails(err)
			}
			return part.Says("Settled: " + words + "." + s.disagreeing())
		}})
	}
	if s.disagreeing() != "" {
		items = append(items, part.Item{Word: "leave it", Meaning: "go to the next stump where answers disagree", Take: part.Does(next)})
	}
	return s.x.Picks("Which of these holds?", "The other stays in the story.", items)
}

// disagreeing says on how many other stumps answers disagree, nothing where on
// none.
func (s *Screen) disagreeing() string {
	n := 0
	for _, sum := range s.x.Summaries(s.id.Block) {
		if sum.Clash && sum.ID != s.id {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" e goes to the next of %s.", unit.Count(n, "disagreement"))
}
