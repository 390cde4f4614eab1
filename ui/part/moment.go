package part

import (
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
	return x.Asks("Time (13:40, 2027-05-03 13:40, or minutes ago):", "", false, func(text string) (Msgs, error) {
		at, err := readTime(text, x.Now().In(x.Site().Zone))
		if err != nil {
			return nil, err
		}
		x.Earlier = at
		return Msgs{Say{"Answers are for " + at.Format("2 Jan 15:04") + " until t is pressed again."}, Reload{}}, nil
	})
}

// readTime reads a time before now: a clock time of today, a date and time, or
// minutes ago.
func readTime(text string, now time.Time) (time.Time, error) {
	bad := &unit.Error{Given: text, Accepted: "a time before now: 13:40, 2027-05-03 13:40, or minutes ago such as 20"}
	words := strings.Fields(text)
	day := unit.DateOf(now)
	switch len(words) {
	case 1:
		if d, err := unit.ParseDate(words[0]); err == nil {
			at := d.At(12, 0, now.Location())
			return before(at, now, bad)
		}
		if !strings.Contains(words[0], ":") {
			return minutesAgo(words[0], now, bad)
		}
	case 2:
		d, err := unit.ParseDate(words[0])
		if err != nil {
			return now, bad
		}
		day = d
	default:
		return now, bad
	}
	c, err := unit.ParseClock(words[len(words)-1])
	if err != nil {
		return now, bad
	}
	return before(c.On(day, now.Location()), now, bad)
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
