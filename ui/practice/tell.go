package practice

import (
	"fmt"

	"barkslip/ui/part"
)

// teller is a view that has more to tell in words than its frame has.
type teller interface{ tell() part.Telling }

// Tell is the view in words.
func (s *Screen) Tell() part.Telling {
	if v, ok := s.view.(teller); ok {
		t := v.tell()
		t.Head = "Practice, " + s.view.frame().Where
		return t
	}
	f := s.view.frame()
	t := part.Telling{Head: "Practice, " + f.Where}
	for _, l := range f.Body {
		t.Says = append(t.Says, l.Words())
	}
	for _, row := range s.view.rows() {
		key, word := row.Help().Key, row.Help().Desc
		switch {
		case row.Binding.Keys()[0] == "enter":
			t.Likely = word
		case len(key) == 1 && key[0] >= '0' && key[0] <= '9':
			t.Answers = append(t.Answers, part.Told{Key: key, Word: word, Meaning: row.Says})
		}
	}
	return t
}

// Number takes an answer told by its number: a key of the view, or on the skills a case of
// one of them.
func (s *Screen) Number(n int) part.Msgs {
	for _, row := range s.view.rows() {
		if row.Binding.Keys()[0] == fmt.Sprint(n) {
			return row.Do()
		}
	}
	if h, ok := s.view.(*home); ok && n >= firstSkill {
		h.at = min(n-firstSkill, len(h.of.Progress())-1)
		return h.practise()
	}
	return part.Msgs{part.NoUse{Why: fmt.Sprintf("%d is no answer here.", n)}}
}

// firstSkill is the number that takes the first of the skills, behind the keys.
const firstSkill = 5

// tell is how each skill stands, by the number that asks a case of it.
func (h *home) tell() part.Telling {
	if h.of == nil {
		return part.Telling{Question: "Whose practice is it?", Likely: "the question for initials",
			Says: []string{"Practice is apart from every book: its cases are made up, and what was right first time is kept by initials."}}
	}
	now, next := h.x.Now(), h.of.Next(h.x.Now())
	t := part.Telling{Question: fmt.Sprintf("Next: %s. %s", next.Skill, because(next, now)), Likely: "a case of " + h.of.Progress()[h.at].Skill.String(),
		Says: []string{h.of.Whose()}}
	if h.said != "" {
		t.Says = append([]string{h.said}, t.Says...)
	}
	for _, row := range h.rows() {
		if key := row.Help().Key; len(key) == 1 && key[0] >= '1' && key[0] <= '9' {
			t.Answers = append(t.Answers, part.Told{Key: key, Word: row.Help().Desc, Meaning: row.Says})
		}
	}
	for i, p := range h.of.Progress() {
		t.Answers = append(t.Answers, part.Told{Key: fmt.Sprint(firstSkill + i), Word: "a case of " + p.Skill.String(), Meaning: p.Words()})
	}
	return t
}

// tell is the case with its figure in words, or what is to be said of the answer.
func (a *asked) tell() part.Telling {
	t := part.Telling{Question: a.c.Question}
	if a.given >= 0 {
		return a.tellJudged(t)
	}
	t.Says = append(t.Says, a.c.InWords()...)
	for i, c := range a.c.Choices {
		t.Answers = append(t.Answers, part.Told{Key: fmt.Sprint(i + 1), Word: c.Words})
	}
	return t
}

func (a *asked) tellJudged(t part.Telling) part.Telling {
	best := a.c.Best()
	t.Question = fmt.Sprintf("Right: %d is the best.", best+1)
	if a.given != best {
		t.Question = fmt.Sprintf("Not right: you said %d, the best is %d.", a.given+1, best+1)
	}
	order := []int{best}
	for i := range a.c.Choices {
		if i != best {
			order = append(order, i)
		}
	}
	for _, i := range order {
		t.Says = append(t.Says, fmt.Sprintf("%d: %s %s", i+1, a.c.Choices[i].Words, a.c.Choices[i].Because))
	}
	t.Says, t.Likely = append(t.Says, "w says why, with its facts."), "the next case"
	return t
}
