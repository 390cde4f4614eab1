package rounds

import (
	"fmt"

	"barkslip/ui/part"
)

// mostTold is how many stumps of a kind of work are told.
const mostTold = 12

// Tell is the round in words: each kind of work with its stumps, and what is at
// hand.
func (s *Screen) Tell() part.Telling {
	t := part.Telling{Head: s.x.Site().Name + ", rounds", Question: s.question()}
	say := func(words string) {
		if words != "" {
			t.Says = append(t.Says, words)
		}
	}
	say(s.onlyWords())
	say(s.because())
	for _, g := range s.groups {
		if !s.inWalk {
			words := fmt.Sprintf("%s: %s", capital(g.Kind.Verb()), part.Counted(len(g.Jobs), "stump"))
			if g.Late > 0 {
				words += fmt.Sprintf(", %d late", g.Late)
			}
			say(words + ".")
		}
		for _, j := range g.Jobs[:min(len(g.Jobs), mostTold)] {
			when, date, _ := s.when(*j.Due)
			words := j.Call.Stump.Place() + " " + when
			if s.inWalk {
				words += ", " + s.kinds(j.Call).Words()
			} else if date != "" {
				words += ", " + date
			}
			say(words + ".")
		}
		if more := len(g.Jobs) - mostTold; more > 0 {
			say(fmt.Sprintf("And %d more.", more))
		}
	}
	if j, ok := s.job(); ok {
		say("At hand: " + s.Reason())
		t.Likely = "what is at hand, on " + j.Call.Stump.Place()
	}
	for _, row := range s.Table() {
		if key := row.Help().Key; len(key) == 1 && key[0] >= '1' && key[0] <= '9' {
			t.Answers = append(t.Answers, part.Told{Key: key, Word: row.Help().Desc})
		}
	}
	return t
}
