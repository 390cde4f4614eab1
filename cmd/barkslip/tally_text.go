package main

import (
	"fmt"
	"math"
	"strings"

	"barkslip/core/results"
	"barkslip/core/unit"
)

// tallyBar is how many characters wide the scale from 0 to 100 is.
const tallyBar = 41

// printTally writes a tally for people: a line a group, its interval as a bar on
// one scale, and the losses beneath.
func (a *app) printTally(t *results.Tally, losses []results.Loss, sys unit.System) {
	of := "all seasons"
	if t.Season != 0 {
		of = fmt.Sprintf("season %d", t.Season)
	}
	fmt.Fprintf(a.out, "%s, %s: %s on %s.\n", of, t.By.Words(), count(t.Total.Grafts, "graft"), count(t.Total.Stumps, "stump"))
	if t.Total.Grafts == 0 {
		return
	}
	fmt.Fprintf(a.out, "%-22s %13s %10s %9s  %s\n", "", "took of known", "rate", "standing", "0        25        50        75       100")
	for i := range t.Groups {
		a.printGroup(t.By.Shown(t.Groups[i].Key, sys), &t.Groups[i])
	}
	a.printGroup("all", &t.Total)
	if words := t.DifferWords(); words != "" {
		fmt.Fprintln(a.out, words)
	}
	a.printLosses(losses)
}

func (a *app) printGroup(name string, g *results.Group) {
	r := []rune(name)
	if len(r) > 22 {
		r = append(r[:21], '…')
	}
	note := ""
	if g.TooFew() {
		note = "  too few to say"
	}
	fmt.Fprintf(a.out, "%-22s %5d of %5d %10s %9d  %s%s\n", string(r), g.Took, g.Known, g.RateWords(), g.Standing, rateBar(g), note)
}

// rateBar is the interval of a group on the scale from 0 to 100, its rate as an o.
func rateBar(g *results.Group) string {
	bar := []byte(strings.Repeat(".", tallyBar))
	for i := 0; i < tallyBar; i += (tallyBar - 1) / 4 {
		bar[i] = ':'
	}
	at := func(share float64) int { return int(math.Round(share * (tallyBar - 1))) }
	if g.Known == 0 {
		return string(bar)
	}
	i := g.Rate()
	for x := at(i.Low); x <= at(i.High); x++ {
		bar[x] = '='
	}
	bar[at(i.Low)], bar[at(i.High)] = '[', ']'
	bar[at(float64(g.Took)/float64(g.Known))] = 'o'
	return string(bar)
}

// printLosses writes what grafts died of, the most first.
func (a *app) printLosses(losses []results.Loss) {
	if len(losses) == 0 {
		fmt.Fprintln(a.out, "No graft was seen dead.")
		return
	}
	fmt.Fprintln(a.out, "Lost:")
	for _, l := range results.Worst(losses) {
		fmt.Fprintf(a.out, "  %-28s %5d on %s\n", l.Cause, l.Grafts, count(l.Stumps, "stump"))
	}
}
