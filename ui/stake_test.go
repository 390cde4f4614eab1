package ui

import (
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/ui/paper"
)

// TestDueWordsFitTheStake says of each open step when it is to be done.
func TestDueWordsFitTheStake(t *testing.T) {
	d := newDriver(t, "2027-05-04 13:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	d.press("enter")
	s := d.root.stump
	zone := s.x.site().Zone
	at := func(y int, m time.Month, day, hour int) time.Time { return time.Date(y, m, day, hour, 0, 0, 0, zone) }
	for want, due := range map[string]due.Due{
		"LATE":        {Kind: due.Stake, Opens: at(2027, 4, 1, 0), By: at(2027, 4, 9, 0)},
		"today":       {Kind: due.Stake, Opens: at(2027, 5, 1, 0), By: at(2027, 5, 4, 23)},
		"by 12 May":   {Kind: due.Stake, Opens: at(2027, 5, 1, 0), By: at(2027, 5, 12, 0)},
		"by Jan 2028": {Kind: due.TiesOff, Opens: at(2027, 5, 1, 0), By: at(2028, 1, 12, 0)},
		"by 14:00":    {Kind: due.White, Opens: at(2027, 5, 4, 13), By: at(2027, 5, 4, 14)},
		"from 15:00":  {Kind: due.White, Opens: at(2027, 5, 4, 15), By: at(2027, 5, 4, 16)},
		"from 28 Nov": {Kind: due.TiesOff, Opens: at(2027, 11, 28, 0), By: at(2027, 12, 31, 0)},
		"in Jan 2028": {Kind: due.HeadBack, Opens: at(2028, 1, 15, 0), By: at(2028, 3, 1, 0)},
	} {
		if got, _ := s.x.dueWords(due); got != want || paper.Width(got) > stakeWidth-18 {
			t.Errorf("%s, want %s, in at most %d characters", got, want, stakeWidth-18)
		}
	}
}

// TestBriefAnswers leaves out the day before a word is cut.
func TestBriefAnswers(t *testing.T) {
	for _, c := range []struct{ answer, want string }{
		{"whole", "whole"}, {"whole, 12 May 2023", "whole"}, {"graft 2, 12 Jun", "graft 2"}, {"a very long answer", "a very long…"}, {"48 in, W", "48 in, W"},
	} {
		if got := brief(c.answer, 12); got != c.want {
			t.Errorf("%q becomes %q, want %q", c.answer, got, c.want)
		}
	}
}
