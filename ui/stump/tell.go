package stump

import (
	"fmt"
	"strings"

	"barkslip/core/unit"
	"barkslip/ui/part"
)

// Tell is the question in words, with what the figure of its step would show.
func (s *Screen) Tell() part.Telling {
	t := part.Telling{Head: s.x.Site().Name + ", " + s.heading(), Question: s.asked.Step.Name + ": " + s.asked.Question}
	say := func(words string) {
		if words = strings.TrimSpace(words); words != "" {
			t.Says = append(t.Says, words)
		}
	}
	say(s.because())
	for _, l := range s.warnings(part.SpokenWidth) {
		say(l.Words())
	}
	for _, words := range s.figureWords() {
		say(words)
	}
	if s.x.Prefs.Coach {
		for _, words := range s.lessonWords() {
			say(words)
		}
	}
	s.tellAnswers(&t)
	return t
}

// tellAnswers is what is typed, or looked at one by one, or chosen.
func (s *Screen) tellAnswers(t *part.Telling) {
	if e := s.entry(); s.doubt == nil && e != nil {
		t.Asks, t.Likely = e.Asks, e.Likely
		return
	}
	if s.doubt == nil && s.asked.Checks != nil {
		t.Likely = "all good"
		for i, item := range s.asked.Checks.Items {
			word := "is good"
			if !s.good[i] {
				word, t.Likely = "is NOT good", "them as marked"
			}
			t.Answers = append(t.Answers, part.Told{Key: fmt.Sprint(i + 1), Word: word, Meaning: item.Word})
		}
	}
	for _, ch := range s.choices() {
		t.Answers = append(t.Answers, part.Told{Key: ch.Key, Word: ch.Word, Meaning: ch.Meaning})
		if ch.Key == s.likely() && t.Likely == "" {
			t.Likely = ch.Key + ", " + ch.Word
		}
	}
}

// lessonWords is the coach's lesson of the step.
func (s *Screen) lessonWords() (out []string) {
	st := s.asked.Step
	for _, p := range []struct{ label, text string }{{"Look for: ", st.LookFor}, {"If not: ", st.NotRight}, {"Why: ", st.Why}} {
		if p.text != "" {
			out = append(out, p.label+p.text)
		}
	}
	for _, c := range st.Cautions {
		if s.cautioned[c.Says] == st.ID {
			out = append(out, "Caution: "+c.Says)
		}
	}
	return out
}

// sentence joins clauses to one sentence.
func sentence(clauses ...string) string { return strings.Join(clauses, ", ") + "." }

// in prints a length in the block's units.
func (s *Screen) in(l unit.Length) string { return s.x.Site().Units.Length(l) }
