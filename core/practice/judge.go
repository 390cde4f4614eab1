package practice

import (
	"fmt"
	"strings"

	"barkslip/core/due"
	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/walk"
)

// Rule is what of the rules a case turns on.
type Rule struct {
	Verdict record.Verdict // "" where none was asked for
	Due     due.Kind       // where IsDue
	IsDue   bool
	Step    walk.StepID // "" where it turns on none
}

// option is an answer offered: what the rules would have to say for it to be the
// best, its words, and what goes wrong with it where they say otherwise.
type option struct{ is, words, wrong string }

// ask makes the case: the option that the rules hold for best is right for the
// reason given, the others are wrong for their own. Chance settles their places.
// Months in the words of the options are those of the north and are told as they hold here.
func (t *tale) ask(question, best, right string, work trade.Worked, options ...option) Case {
	here := make([]option, len(options))
	for i, o := range options {
		here[i] = option{o.is, t.here(o.words), t.here(o.wrong)}
	}
	return t.asked(question, best, right, work, here)
}

// asked makes the case of options whose words are right as they are.
func (t *tale) asked(question, best, right string, work trade.Worked, options []option) Case {
	c := Case{Told: t.told, Question: question, Units: t.b.Units, Work: []trade.Worked{work}}
	for _, o := range options {
		ch := Choice{Words: o.words, Because: o.wrong}
		if o.is == best {
			ch.Best, ch.Because = true, right
		}
		c.Choices = append(c.Choices, ch)
	}
	shuffle(&t.dice, c.Choices)
	return c
}

// verdict asks what now of a stump that is made ready: the readiness table tells.
// A wait is told with its days, as "wait/3", to gash or drill meanwhile as
// "wait/3/gash".
func (t *tale) verdict(right string, options ...option) Case {
	w := t.walk()
	c := t.ask(whatNow, verdictIs(w), strings.Join(w.Advice.Reasons, " ")+" "+right, w.Advice.Work, options...)
	c.Rule.Verdict, c.Rule.Step = w.Advice.Verdict, w.Present()
	return c
}

const whatNow = "What now, and why?"

func verdictIs(w *walk.Case) string {
	a := w.Advice
	if a.Verdict != ready.Wait {
		return string(a.Verdict)
	}
	is := fmt.Sprintf("wait/%d", w.B.Day(*a.Until)-w.B.Day(w.Now))
	for _, m := range a.Meanwhile {
		switch {
		case strings.Contains(m, "gash it"):
			is += "/gash"
		case strings.Contains(m, "drill a drain hole"):
			is += "/drill"
		default:
			is += "/dry"
		}
	}
	return is
}

// due asks what now of a stump: the first due that is open tells, or "rest" where
// none is.
func (t *tale) due(right string, options ...option) Case {
	w := t.walk()
	d, open := due.First(w.Dues(), t.now)
	best, why, work := "rest", "", trade.Worked{Question: "What does the stump need now?"}
	if open {
		best, why, work.Facts = d.Kind.String(), d.Sentence(t.b, t.now), d.Facts()
	} else if next, some := due.Next(w.Dues(), t.now); some {
		why, work.Facts = fmt.Sprintf("Nothing is due before %s. %s", t.when(next), next.Why(t.b)), next.Facts()
	}
	work.Answer = []trade.Input{{Value: why}}
	c := t.ask(whatNow, best, strings.TrimSpace(why+" "+t.here(right)), work, options...)
	c.Rule = Rule{Due: d.Kind, IsDue: open, Step: w.Present()}
	return c
}

// when is when a due opens: by the clock where it runs by the clock and is near.
func (t *tale) when(d due.Due) string {
	if d.Kind.Timed() && t.b.Day(d.Opens) == t.b.Day(t.now) {
		return t.clock(d.Opens)
	}
	return t.b.Day(d.Opens).Long()
}

// facts is a worked answer that rests on facts alone.
func facts(question string, of ...trade.Fact) trade.Worked {
	return trade.Worked{Question: question, Facts: of}
}

func digits(n int) string { return fmt.Sprint(n) }

// dayCount is a number of days in words.
func dayCount(n int) string {
	if n == 1 {
		return "one day"
	}
	return fmt.Sprintf("%d days", n)
}
