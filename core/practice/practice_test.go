package practice

import (
	"testing"
)

func TestCases(t *testing.T) {
	bad := map[string]int{}
	for seed := range uint64(10000) {
		s := Skills()[seed%uint64(len(Skills()))]
		c := Make(seed/12, s)
		why := fault(c)
		if why != "" {
			k := s.Code() + " " + c.Kind + ": " + why
			if bad[k]++; bad[k] == 1 {
				t.Errorf("seed %d %s: %v", seed/12, k, c.Choices)
			}
		}
	}
}

// fault says what is wrong with a case, "" where nothing is.
func fault(c Case) string {
	best, words, because := 0, map[string]bool{}, map[string]bool{}
	for _, ch := range c.Choices {
		if ch.Best {
			best++
		}
		switch {
		case ch.Words == "" || ch.Because == "":
			return "a choice without words: " + ch.Words
		case words[ch.Words]:
			return "two choices read alike: " + ch.Words
		case because[ch.Because]:
			return "two explained alike: " + ch.Because
		}
		words[ch.Words], because[ch.Because] = true, true
	}
	switch {
	case len(c.Choices) < 3 || len(c.Choices) > 5:
		return "choices"
	case best != 1:
		return "best"
	case len(c.Told) == 0 || c.Question == "":
		return "told"
	case len(c.Work) == 0 || len(c.Work[0].Facts) == 0:
		return "facts"
	}
	return ""
}
