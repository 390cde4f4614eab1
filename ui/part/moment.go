package part

import (
	"errors"
	"strings"
	"time"

	"barkslip/core/unit"
)

// AskTime sets an earlier time for the answers that follow, or goes back to
// now.
func (x *Session) AskTime() Msgs {
	if !x.Earlier.IsZero() {
		x.Earlier = time.Time{}
		return Msgs{Say{"Answers are for now again."}, Reload{}}
	}
	return x.Asks("Time (13:40, 4 May 13:40, -1 13:40, minutes ago):", "", true, func(text string) (Msgs, error) {
		at, err := readTime(text, x.Now().In(x.Site().Zone), x.Site().Units)
		if err != nil {
			return nil, err
		}
		x.Earlier = at
		return Msgs{Say{"Answers are for " + at.Format("2 Jan 15:04") + " until t is pressed again."}, Reload{}}, nil
	})
}

// readTime reads a time before now: a clock time of today, a date with a clock
// time or without one, which is noon, or minutes ago.
func readTime(text string, now time.Time, sys unit.System) (time.Time, error) {
	bad := &unit.Error{Given: text, Accepted: "a time before now: 13:40, 4 May 13:40, yesterday 13:40, -2 13:40 (two days ago), or minutes ago such as 20"}
	words, today := strings.Fields(text), unit.DateOf(now)
	if len(words) == 1 && strings.Trim(words[0], "0123456789") == "" {
		return minutesAgo(words[0], now, bad)
	}
	if d, err := unit.ReadDate(text, today, sys); err == nil || asksWhich(err) {
		at := d.At(12, 0, now.Location())
		if err == nil && d == today && at.After(now) {
			at = now
		}
		return beforeOr(at, now, bad, err)
	}
	if len(words) == 0 {
		return now, bad
	}
	c, err := unit.ParseClock(words[len(words)-1])
	if err != nil {
		return now, bad
	}
	day, said := today, strings.Join(words[:len(words)-1], " ")
	if said != "" {
		if day, err = unit.ReadDate(said, today, sys); err != nil && !asksWhich(err) {
			return now, bad
		}
	}
	return beforeOr(c.On(day, now.Location()), now, bad, err)
}

// asksWhich says whether a date may be meant in two ways.
func asksWhich(err error) bool {
	var either *unit.EitherDay
	return errors.As(err, &either)
}

// beforeOr is a time before now, unless its date has a fault.
func beforeOr(at, now time.Time, bad, fault error) (time.Time, error) {
	if fault != nil {
		return now, fault
	}
	return before(at, now, bad)
}

func before(at, now time.Time, bad error) (time.Time, error) {
	if at.After(now) || at.Before(now.AddDate(-10, 0, 0)) {
		return now, bad
	}
	return at, nil
}

func minutesAgo(text string, now time.Time, bad error) (time.Time, error) {
	n := 0
	for _, c := range text {
		if c < '0' || c > '9' || n > 100000 {
			return now, bad
		}
		n = n*10 + int(c-'0')
	}
	return before(now.Add(-time.Duration(n)*time.Minute), now, bad)
}
