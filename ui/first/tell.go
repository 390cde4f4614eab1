package first

import (
	"fmt"

	"barkslip/ui/part"
)

// Tell is the question asked, or the ways to begin.
func (f *Screen) Tell() part.Telling {
	t := part.Telling{Head: "Barkslip, a new block"}
	if !f.begun {
		t.Question, t.Says = "How do you want to begin?", []string{whatItIs}
		for _, w := range f.ways() {
			t.Answers = append(t.Answers, part.Told{Key: w[0], Word: w[1], Meaning: w[2]})
		}
		t.Likely = "1, " + t.Answers[0].Word
		return t
	}
	q := questions[f.at]
	t.Question, t.Asks, t.Likely = q.words, q.asks, q.likely(f)
	if because := f.because(); because != "" {
		t.Says = []string{because}
	}
	if q.name == "zone" {
		for i, name := range f.zones() {
			t.Says = append(t.Says, fmt.Sprintf("%d %s", i+1, name))
		}
	}
	return t
}
