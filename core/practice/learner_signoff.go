package practice

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"barkslip/core/trade"
)

// SignOff is a fixed number of unseen cases, judged without coach or why.
type SignOff struct {
	Seed  uint64        `json:"seed"`
	Begun time.Time     `json:"begun"`
	Cases []SignOffCase `json:"cases"`
	more  kept
}

// SignOffCase is one case of a sign-off and what was answered. Of one missed the words
// are kept, so that they can be read when the program makes other cases.
type SignOffCase struct {
	Skill Skill     `json:"skill"`
	Seed  uint64    `json:"seed"`
	Kind  string    `json:"kind"`
	Given int       `json:"given"` // the choice, from 1; 0 while it is open
	Right bool      `json:"right"`
	At    time.Time `json:"at,omitzero"`
	Asked string    `json:"asked,omitempty"` // the question, of one missed
	Gave  string    `json:"gave,omitempty"`  // what was chosen
	Best  string    `json:"best,omitempty"`  // and what is best
	more  kept
}

// Begin begins a sign-off on cases that the learner has not seen, spread evenly over
// the skills and as far as there are enough over their kinds.
func (l *Learner) Begin(seed uint64, now time.Time) *SignOff {
	d := dice(seed)
	of := []Skill{}
	for _, p := range l.Progress() {
		of = append(of, p.Skill)
	}
	skills := []Skill{}
	for len(skills) < trade.SignOffCases {
		shuffle(&d, of) // which skills have one case more is left to chance
		skills = append(skills, of[:min(len(of), trade.SignOffCases-len(skills))]...)
	}
	shuffle(&d, skills)
	out := SignOff{Seed: seed, Begun: now.Truncate(time.Second)}
	seen, had := map[Skill]map[uint64]bool{}, map[Skill]map[string]int{}
	for _, s := range skills {
		if seen[s] == nil {
			seen[s], had[s] = l.seen(s), map[string]int{}
		}
		c := draw(s, d.next(), seen[s], had[s])
		seen[s][c.Seed] = true
		had[s][c.Kind]++
		out.Cases = append(out.Cases, SignOffCase{Skill: s, Seed: c.Seed, Kind: c.Kind})
	}
	l.SignOffs = append(l.SignOffs, out)
	return &l.SignOffs[len(l.SignOffs)-1]
}

// Open is the sign-off that was begun and not ended, nil if there is none.
func (l *Learner) Open() *SignOff {
	for i := range l.SignOffs {
		if !l.SignOffs[i].Ended() {
			return &l.SignOffs[i]
		}
	}
	return nil
}

// Last is the newest sign-off that was ended, nil if there is none.
func (l *Learner) Last() *SignOff {
	for i := len(l.SignOffs) - 1; i >= 0; i-- {
		if l.SignOffs[i].Ended() {
			return &l.SignOffs[i]
		}
	}
	return nil
}

// At is the place of the case that is asked now, from 0; the number of cases when all
// are answered.
func (s *SignOff) At() int {
	if i := slices.IndexFunc(s.Cases, func(c SignOffCase) bool { return c.Given == 0 }); i >= 0 {
		return i
	}
	return len(s.Cases)
}

// Ended says whether every case was answered.
func (s *SignOff) Ended() bool { return s.At() == len(s.Cases) }

// Case is the case that is asked now.
func (s *SignOff) Case() Case {
	c := s.Cases[s.At()]
	return Make(c.Seed, c.Skill)
}

// Take takes the answer to the case that is asked now, a choice from 0.
func (s *SignOff) Take(choice int, at time.Time) {
	of, c := &s.Cases[s.At()], s.Case()
	of.Given, of.Right, of.At = choice+1, choice == c.Best(), at.Truncate(time.Second)
	if !of.Right {
		of.Asked = strings.Join(append(slices.Clone(c.Told), c.Question), " ")
		of.Gave, of.Best = c.Choices[choice].Words, c.Choices[c.Best()].Words
	}
}

// Day is when the last answer was given.
func (s *SignOff) Day() (last time.Time) {
	for _, c := range s.Cases {
		if c.At.After(last) {
			last = c.At
		}
	}
	return last
}

// Right is how many were right.
func (s *SignOff) Right() (n int) {
	for _, c := range s.Cases {
		if c.Right {
			n++
		}
	}
	return n
}

// Missed are the cases missed, in the order of the work.
func (s *SignOff) Missed() (out []SignOffCase) {
	for _, c := range s.Cases {
		if c.Given > 0 && !c.Right {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b SignOffCase) int { return int(a.Skill - b.Skill) })
	return out
}

// Tally is how many cases of each skill there were and how many were right, in the
// order of the work.
func (s *SignOff) Tally() (out []Progress) {
	for _, skill := range Skills() {
		p := Progress{Skill: skill}
		for _, c := range s.Cases {
			if c.Skill == skill && c.Given > 0 {
				p.Asked++
				if c.Right {
					p.Right++
				}
			}
		}
		if p.Asked > 0 {
			out = append(out, p)
		}
	}
	return out
}

// Weak are the skills with more missed than may be.
func (s *SignOff) Weak() (out []Skill) {
	for _, p := range s.Tally() {
		if p.Asked-p.Right > trade.SignOffMissed {
			out = append(out, p.Skill)
		}
	}
	return out
}

// Passed says whether it was ended and is up to the mark.
func (s *SignOff) Passed() bool {
	return s.Ended() && s.Right() >= trade.SignOffRight && len(s.Weak()) == 0
}

// Verdict says in a sentence or two whether it is passed, and where not why.
func (s *SignOff) Verdict() string {
	right := fmt.Sprintf("%d of %d right", s.Right(), len(s.Cases))
	switch {
	case !s.Ended():
		return fmt.Sprintf("Not ended: %d of %d answered.", s.At(), len(s.Cases))
	case s.Passed():
		return "Signed off: " + right + "."
	}
	says := "Not signed off: " + right
	if s.Right() < trade.SignOffRight {
		says += fmt.Sprintf("; at least %d are needed", trade.SignOffRight)
	}
	says += "."
	if weak := s.Weak(); len(weak) > 0 {
		names := make([]string, len(weak))
		for i, skill := range weak {
			names[i] = skill.String()
		}
		says += " More than one missed: " + strings.Join(names, ", ") + "."
	}
	return says
}
