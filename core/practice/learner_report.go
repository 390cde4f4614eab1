package practice

import (
	"fmt"
	"time"

	"barkslip/core/trade"
)

// DayWords is a day as reports have it.
func DayWords(t time.Time) string { return t.Format("2 January 2006") }

// Whose says whose practice it is, with its first and last day.
func (l *Learner) Whose() string {
	first, last, ok := l.Days()
	if !ok {
		return l.Initials + ": no case answered yet."
	}
	days := DayWords(first) + " to " + DayWords(last)
	if DayWords(first) == DayWords(last) {
		days = DayWords(first)
	}
	n := len(l.All())
	if n == 1 {
		return fmt.Sprintf("%s: %s, 1 case.", l.Initials, days)
	}
	return fmt.Sprintf("%s: %s, %d cases.", l.Initials, days, n)
}

// Report is a learner on paper, a line each: whose it is, right first time by skill,
// and the newest sign-off with the cases missed.
func (l *Learner) Report() []string {
	lines := []string{"Barkslip, practice", l.Whose(), "", "Right first time, all cases"}
	for _, p := range l.Progress() {
		lines = append(lines, fmt.Sprintf("  %-16s %s", p.Skill, p.Words()))
	}
	s := l.Last()
	if s == nil {
		return append(lines, "", "No sign-off yet.")
	}
	lines = append(lines, "", fmt.Sprintf("Sign-off of %s, seed %d", DayWords(s.Day()), s.Seed), s.Verdict())
	for _, p := range s.Tally() {
		lines = append(lines, fmt.Sprintf("  %-16s %s", p.Skill, p.Words()))
	}
	if missed := s.Missed(); len(missed) > 0 {
		lines = append(lines, "", "Cases missed")
		for _, c := range missed {
			lines = append(lines, "", fmt.Sprintf("  %s, case %d: %s", c.Skill, c.Seed, c.Asked), "    Answered: "+c.Gave, "    Best:     "+c.Best)
		}
	}
	return append(lines, "", trade.SignOffMark.Says)
}

// Words are how many of how many.
func (p Progress) Words() string {
	if p.Asked == 0 {
		return "not asked yet"
	}
	return fmt.Sprintf("%d of %d", p.Right, p.Asked)
}
