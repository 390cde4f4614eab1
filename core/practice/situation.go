package practice

import (
	"fmt"

	"barkslip/core/due"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// situation is a kind of case that asks what a stump needs now: what falls due on it
// tells.
type situation struct {
	kind    string
	tell    func(t *tale)
	right   string // what is to be said of the best one besides
	replies []reply
}

// reply is work that is offered: the name of its due, or rest, and what goes wrong with
// it where another is best.
type reply struct{ is, wrong string }

const rest = "rest"

// words are the reply as an answer.
func (r reply) words() string {
	k, ok := due.ParseKind(r.is)
	switch {
	case ok && k == due.Regraft: // its step tells only that the graft before has ended
		return "Cut it back again, below the old graft."
	case ok:
		return deeds[walk.StepID(k.Step())]
	}
	return deeds[walk.StepRest]
}

func (s situation) maker() maker {
	return maker{s.kind, func(seed uint64) Case {
		t := newTale(seed)
		s.tell(t)
		var options []option
		for _, r := range s.replies {
			options = append(options, option{r.is, r.words(), r.wrong})
		}
		return t.due(s.right, options...)
	}}
}

// whenDue is a kind of case that asks from which day on some work falls due.
type whenDue struct {
	kind     string
	of       due.Kind
	question string
	tell     func(t *tale) (from unit.Date) // the day that the days offered count from
	right    string
	days     []dayReply
}

// dayReply is a day that is offered, and what goes wrong with it where another is best.
type dayReply struct {
	days  int
	wrong string
}

func (s whenDue) maker() maker {
	return maker{s.kind, func(seed uint64) Case {
		t := newTale(seed)
		from := s.tell(t)
		var options []option
		for _, d := range s.days {
			options = append(options, fromDay(from.Add(d.days), d.wrong))
		}
		return t.opens(s.of, s.question, s.right, options...)
	}}
}

// fromDay is a day from which on something is done, as an answer.
func fromDay(day unit.Date, wrong string) option {
	return option{day.Long(), fmt.Sprintf("From %s on.", day.Long()), wrong}
}

// opens asks from which day on some work falls due.
func (t *tale) opens(of due.Kind, question, right string, options ...option) Case {
	best, work := "", trade.Worked{Question: question}
	for _, d := range t.walk().Dues() {
		if d.Kind == of {
			best, work.Facts = t.b.Day(d.Opens).Long(), d.Facts()
			right = d.Why(t.b) + " " + t.here(right)
			break
		}
	}
	work.Answer = []trade.Input{{Value: "from " + best}}
	c := t.ask(question, best, right, work, options...)
	c.Rule = Rule{Due: of, IsDue: true, Step: walk.StepID(of.Step())}
	return c
}

// kinds are the makers of situations and days, with those that are made otherwise.
func kinds(sits []situation, days []whenDue, others ...maker) (out []maker) {
	for _, s := range sits {
		out = append(out, s.maker())
	}
	for _, d := range days {
		out = append(out, d.maker())
	}
	return append(out, others...)
}

// offers are the words of the answers that the walk offers at a step.
func (t *tale) offers(step walk.StepID) map[string]bool {
	words := map[string]bool{}
	for _, ch := range t.walk().Ask(step, false).Choices {
		words[ch.Word] = true
	}
	return words
}

// likely asks what the walk asks at a step, where it takes one answer for the likely
// one: options are named by the word of the walk's answer.
func (t *tale) likely(step walk.StepID, question, right string, options ...option) Case {
	ask := t.walk().Ask(step, false)
	best := ""
	for _, ch := range ask.Choices {
		if ch.Key == ask.Likely && ask.Likely != "" {
			best = ch.Word
		}
	}
	work := trade.Worked{Question: question, Answer: []trade.Input{{Value: best}}}
	if len(ask.Work) > 0 {
		work = ask.Work[0]
	}
	work.Facts = append(work.Facts[:len(work.Facts):len(work.Facts)], ask.Step.Facts...)
	c := t.ask(question, best, ask.Because+" "+t.here(right), work, options...)
	c.Rule.Step = step
	return c
}
