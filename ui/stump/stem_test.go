package stump

import "testing"

// TestBriefAnswers leaves out the year, then the day, then words, before a word is
// cut.
func TestBriefAnswers(t *testing.T) {
	for _, c := range []struct{ answer, want string }{
		{"whole", "whole"}, {"whole, 12 May 2023", "whole"}, {"10 cm, 2 May 2026", "10 cm, 2 May"}, {"graft 2, 12 Jun", "graft 2"},
		{"a very long answer", "a very long"}, {"48 in, W", "48 in, W"}, {"wrapped 06:34", "wrapped"}, {"unbelievably", "unbelievably"},
		{"from 14 June 2031", "14 June 2031"}, {"in Mar 2027", "in Mar 2027"}, {"by 12 Oct 2027", "12 Oct"}, {"in Sept, 2027", "Sept, 2027"},
		{"unbelievability", "unbelievabi…"},
	} {
		if got := brief(c.answer, 12); got != c.want {
			t.Errorf("%q becomes %q, want %q", c.answer, got, c.want)
		}
	}
}
