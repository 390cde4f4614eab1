package practice

import "testing"

// Each kind of case is made in many ways, and none of them is void.
func TestEachKind(t *testing.T) {
	for _, s := range Skills() {
		if n := len(makers[s]); n < 6 {
			t.Errorf("%s has %d kinds", s, n)
		}
		for _, m := range makers[s] {
			told := map[string]bool{}
			for seed := range uint64(40) {
				c := m.make(seed)
				if why := fault(c); why != "" {
					t.Errorf("%s %s, seed %d: %s\n%v\n%v\nrule %+v", s, m.kind, seed, why, c.Told, c.Choices, c.Rule)
					break
				}
				text := ""
				for _, l := range c.Told {
					text += l
				}
				told[text] = true
			}
			if len(told) < 4 {
				t.Errorf("%s %s: only %d different ones of 40", s, m.kind, len(told))
			}
		}
	}
}
