package walk

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// lostBefore is what a second graft starts from: how high the stump stands, where
// the nails of the graft before stand in it, of what that was lost, and what to do
// differently, by whose word. "" on a stump that lost none.
func (c *Case) lostBefore() string {
	a := c.lostAttempt()
	if a == nil {
		return ""
	}
	var words []string
	if top := c.standsAt(); top > 0 {
		words = append(words, "Last cut at "+c.length(top)+".")
	}
	switch from, to, ok := nailsOf(a); {
	case ok:
		words = append(words, fmt.Sprintf("Nails stand in the stem from %s to %s: mind the saw.", c.length(from), c.length(to)))
	case len(a.Grafts) > 0:
		words = append(words, "Nails stand in the stem, at a height not recorded: mind the saw.")
	}
	year := c.B.Day(a.SetAt()).Year()
	cause := causeOf(a)
	lesson, ok := trade.LessonOf(cause)
	switch {
	case ok:
		words = append(words, fmt.Sprintf("The graft of %d was lost: %s. This time %s (%s).", year, lesson.Lost, lesson.Better, lesson.Fact.Standing))
	default:
		words = append(words, fmt.Sprintf("The graft of %d was lost; the cause is not known.", year))
	}
	return strings.Join(words, " ")
}

// lostAttempt is the last attempt before the one in hand that set scions and lost
// them, nil if there is none.
func (c *Case) lostAttempt() (lost *record.Attempt) {
	for _, a := range c.earlier() {
		if len(a.Grafts) > 0 && !a.LostAt().IsZero() {
			lost = a
		}
	}
	return lost
}

// causeOf is of what an attempt was lost: as it was said to have failed, else the
// cause found on most of its grafts, of those on the list; "" if none was said.
func causeOf(a *record.Attempt) (cause string) {
	if a.Failed != nil {
		return a.Failed.What.Cause
	}
	count := map[string]int{}
	for _, g := range a.Grafts {
		count[g.Cause]++
	}
	for _, known := range trade.Causes {
		if count[known] > count[cause] || cause == "" && count[known] > 0 {
			cause = known
		}
	}
	return cause
}
