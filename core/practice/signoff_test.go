package practice

import (
	"slices"
	"testing"
	"time"
)

// signedOff is a sign-off in which every case is answered by a way.
func signedOff(seed uint64, answer func(Case) int) *SignOff {
	now := time.Date(2027, 5, 1, 9, 0, 0, 0, time.UTC)
	l := &Learner{}
	s := l.Begin(seed, now)
	for !s.Ended() {
		s.Take(answer(s.Case()), now)
	}
	return s
}

// Who answers by the rules is signed off, who always takes the first answer is not,
// and who misses one skill alone is told which.
func TestSignOff(t *testing.T) {
	for seed := range uint64(1) {
		if s := signedOff(seed, Case.Best); !s.Passed() || len(s.Missed()) > 0 {
			t.Errorf("seed %d: by the rules: %s", seed, s.Verdict())
		}
		if s := signedOff(seed, func(Case) int { return 0 }); s.Passed() {
			t.Errorf("seed %d: the first answer each time: %s", seed, s.Verdict())
		}
		for _, weak := range Skills() {
			s := signedOff(seed, func(c Case) int {
				if c.Skill == weak {
					return (c.Best() + 1) % len(c.Choices)
				}
				return c.Best()
			})
			if s.Passed() || !slices.Equal(s.Weak(), []Skill{weak}) {
				t.Errorf("seed %d: all but %s: passed %v, weak %v", seed, weak, s.Passed(), s.Weak())
			}
		}
	}
}

// The place of the best answer is even over the keys.
func TestTheBestAnswerHasNoPlaceOfItsOwn(t *testing.T) {
	first, n := 0, 0
	for seed := range uint64(2400) {
		c := Make(seed/12, Skills()[seed%12])
		n++
		if c.Best() == 0 {
			first++
		}
	}
	if share := float64(first) / float64(n); share < 0.18 || share > 0.36 {
		t.Errorf("the first answer is the best in %.0f %% of the cases", 100*share)
	}
}
