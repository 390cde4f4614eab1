package practice

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"barkslip/core/trade"
)

// Learner is what one person has done in practice, by initials.
type Learner struct {
	Initials string
	Answers  []Answered // in the order in which they were given
	SignOffs []SignOff
	more     kept
}

// Answered is one case with the first answer to it; a case is asked once.
type Answered struct {
	Skill Skill     `json:"skill"`
	Seed  uint64    `json:"seed"`
	Kind  string    `json:"kind"`
	At    time.Time `json:"at"`
	Right bool      `json:"right"`
	more  kept
}

// Take takes the first answer to a case, a choice from 0, and says whether it was
// the best.
func (l *Learner) Take(c Case, choice int, at time.Time) (right bool) {
	right = choice == c.Best()
	l.Answers = append(l.Answers, Answered{Skill: c.Skill, Seed: c.Seed, Kind: c.Kind, At: at.Truncate(time.Second), Right: right})
	return right
}

// All is every answer, those of sign-offs too, in order of time.
func (l *Learner) All() []Answered {
	all := slices.Clone(l.Answers)
	for _, s := range l.SignOffs {
		for _, c := range s.Cases {
			if c.Given > 0 {
				all = append(all, Answered{Skill: c.Skill, Seed: c.Seed, Kind: c.Kind, At: c.At, Right: c.Right})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Answered) int { return a.At.Compare(b.At) })
	return all
}

// Days are the times of the first and of the last answer; ok is false where there is
// none.
func (l *Learner) Days() (first, last time.Time, ok bool) {
	all := l.All()
	if len(all) == 0 {
		return first, last, false
	}
	return all[0].At, all[len(all)-1].At, true
}

// Progress is how one skill stands with a learner.
type Progress struct {
	Skill Skill
	Asked int
	Right int       // right at the first answer
	Rung  int       // of trade.PimsleurIntervals, that after which it is asked again
	Last  time.Time // when it was asked last; zero if it never was
}

// Missed says whether the last case of the skill was missed.
func (p Progress) Missed() bool { return p.Asked > 0 && p.Rung == 0 }

// Due is when the skill is asked again; zero where it was not asked yet.
func (p Progress) Due() time.Time {
	if p.Asked == 0 {
		return time.Time{}
	}
	return p.Last.Add(trade.PimsleurIntervals[p.Rung])
}

// Progress is how each skill that has cases stands, in the order of the work. A case
// missed goes back to the first interval, a right one on to the next.
func (l *Learner) Progress() []Progress {
	at := map[Skill]*Progress{}
	var out []Progress
	for _, s := range Skills() {
		if len(makers[s]) > 0 {
			out = append(out, Progress{Skill: s})
		}
	}
	for i := range out {
		at[out[i].Skill] = &out[i]
	}
	for _, a := range l.All() {
		p := at[a.Skill]
		if p == nil {
			continue
		}
		p.Asked, p.Last = p.Asked+1, a.At
		if !a.Right {
			p.Rung = 0
			continue
		}
		p.Right++
		p.Rung = min(p.Rung+1, len(trade.PimsleurIntervals)-1)
	}
	return out
}

// Next is the skill that is asked next: of those that are due again the one with the
// shortest interval, so that what was missed comes first; else one that was not asked
// yet, in the order of the work; else the one that is due soonest.
func (l *Learner) Next(now time.Time) Progress {
	all := l.Progress()
	return slices.MinFunc(all, func(a, b Progress) int {
		if d := a.class(now) - b.class(now); d != 0 {
			return d
		}
		if a.class(now) == again && a.Rung != b.Rung {
			return a.Rung - b.Rung
		}
		return a.Due().Compare(b.Due())
	})
}

const (
	again = iota // due again
	unasked
	toCome
)

func (p Progress) class(now time.Time) int {
	switch {
	case p.Asked == 0:
		return unasked
	case p.Due().After(now):
		return toCome
	}
	return again
}

// seen are the seeds of a skill of which the learner has seen the case.
func (l *Learner) seen(s Skill) map[uint64]bool {
	seen := map[uint64]bool{}
	for _, a := range l.Answers {
		if a.Skill == s {
			seen[a.Seed] = true
		}
	}
	for _, off := range l.SignOffs {
		for _, c := range off.Cases {
			if c.Skill == s {
				seen[c.Seed] = true
			}
		}
	}
	return seen
}

// candidates is how many cases are drawn from which the one to ask is chosen.
const candidates = 24

// Unseen is a case of a skill that the learner has not seen, drawn from a seed: of some
// the first of the kind that was right the fewest times.
func (l *Learner) Unseen(s Skill, seed uint64) Case {
	right, seen := map[string]int{}, l.seen(s)
	for _, a := range l.Answers {
		if a.Skill == s && a.Right {
			right[a.Kind]++
		}
	}
	return draw(s, seed, seen, right)
}

// draw is a case of a skill drawn from a seed, none of those seen, of the kind that
// was had the fewest times.
func draw(s Skill, seed uint64, seen map[uint64]bool, had map[string]int) (best Case) {
	d, found := dice(seed), 0
	for found < candidates {
		at := d.next() % seeds
		if seen[at] {
			continue
		}
		if c := Make(at, s); found == 0 || had[c.Kind] < had[best.Kind] {
			best = c
		}
		found++
	}
	return best
}

// seeds is how many seeds cases are drawn of: short enough to be typed.
const seeds = 1_000_000_000

// ReadInitials reads initials: one to four letters, and where two people have the same a
// number of one or two digits behind them.
func ReadInitials(text string) (string, error) {
	text = strings.ToUpper(strings.TrimSpace(text))
	letters := strings.TrimRight(text, "0123456789")
	n, digits := len([]rune(letters)), len(text)-len(letters)
	if n < 1 || n > 4 || digits > 2 || strings.ContainsFunc(letters, func(c rune) bool { return !unicode.IsLetter(c) }) {
		return "", errors.New("give one to four letters, such as MK, and a number behind them where two people have the same, such as MK2")
	}
	return text, nil
}

// Other is another spelling of initials that are somebody else's.
func Other(initials string, taken func(string) bool) string {
	letters := strings.TrimRight(initials, "0123456789")
	for n := 2; n < 100; n++ {
		if other := fmt.Sprint(letters, n); !taken(other) {
			return other
		}
	}
	return letters
}

// Seen says whether the learner has seen a case.
func (l *Learner) Seen(s Skill, seed uint64) bool { return l.seen(s)[seed] }
