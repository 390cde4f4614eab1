package lines

import (
	"encoding/binary"
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/practice"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// made is practice line by line: made-up cases of one skill, or of all in turn.
// It reads and writes no book.
type made struct {
	part.Still
	x      *part.Session
	skills []practice.Skill // to take cases from, in turn; none while it is asked
	next   int
	of     practice.Case
	chosen int // from 0; -1 while the case is asked
	asked  int
	right  int
}

func newPractice(x *part.Session) *made { return &made{x: x} }

// offered are the skills that have cases.
func offered() (out []practice.Skill) {
	for _, s := range practice.Skills() {
		if len(practice.Kinds(s)) > 0 {
			out = append(out, s)
		}
	}
	return out
}

// Tell is what is to be picked, the case, or what is to be said of the answer.
func (m *made) Tell() part.Telling {
	if len(m.skills) == 0 {
		t := part.Telling{Head: "Practice", Question: "What do you want to practise?", Says: []string{"The cases are made up; nothing goes into a book."}}
		t.Answers = []part.Told{{Key: "0", Word: "everything", Meaning: "the skills in turn"}}
		for i, s := range offered() {
			t.Answers = append(t.Answers, part.Told{Key: fmt.Sprint(i + 1), Word: s.String()})
		}
		return t
	}
	t := part.Telling{Head: "Practice: " + m.of.Skill.String()}
	if m.chosen < 0 {
		t.Question, t.Says = m.of.Question, append(t.Says, m.of.Told...)
		if f := m.of.Figure; f != nil {
			t.Says = append(t.Says, f.Says...)
		}
		for i, c := range m.of.Choices {
			t.Answers = append(t.Answers, part.Told{Key: fmt.Sprint(i + 1), Word: c.Words})
		}
		return t
	}
	t.Question = fmt.Sprintf("%d of %d right so far. w says why.", m.right, m.asked)
	t.Answers = []part.Told{{Key: "1", Word: "the next case"}, {Key: "2", Word: "another skill"}}
	t.Likely = "1, the next case"
	return t
}

// Number answers what is asked.
func (m *made) Number(n int) part.Msgs {
	switch {
	case len(m.skills) == 0 && n == 0:
		m.skills = offered()
		m.another()
	case len(m.skills) == 0:
		m.skills = offered()[n-1 : n]
		m.another()
	case m.chosen < 0:
		return m.judge(n - 1)
	case n == 1:
		m.another()
	default:
		m.skills = nil
	}
	return nil
}

// judge says what is to be said of a choice.
func (m *made) judge(chosen int) part.Msgs {
	m.chosen, m.asked = chosen, m.asked+1
	best := m.of.Choices[m.of.Best()]
	if chosen == m.of.Best() {
		m.right++
		return part.Says("Right. " + best.Because)
	}
	return part.Says(fmt.Sprintf("Not the best one. %s The best is %d, %s. %s", m.of.Choices[chosen].Because, m.of.Best()+1, best.Words, best.Because))
}

// another makes another case, of the next skill.
func (m *made) another() {
	var seed [8]byte
	if _, err := m.x.Random.Read(seed[:]); err != nil {
		seed = [8]byte{byte(m.asked)}
	}
	s := m.skills[m.next%len(m.skills)]
	m.next++
	m.of, m.chosen = practice.Make(binary.BigEndian.Uint64(seed[:]), s), -1
}

// Key takes the word for why, an empty line or the way back.
func (m *made) Key(k tea.KeyMsg) part.Msgs { return part.Press(m.Table(), k, part.Useless) }

// Table is its words.
func (m *made) Table() []part.Row {
	return []part.Row{
		part.ToOpen.Row(m.onward).Told("The next case, once one was answered."),
		part.ToWhy.Row(m.why).Told("Why: the sums and facts of the case, once it was answered."),
		part.ToBack.Row(m.back).Told("Back to the skills, then out of practice."),
		part.ToLeave.Row(part.Does(part.Quit{})),
	}
}

func (m *made) onward() part.Msgs {
	if m.chosen >= 0 {
		m.another()
	}
	return nil
}

func (m *made) back() part.Msgs {
	if len(m.skills) == 0 {
		return part.Msgs{part.Back{}}
	}
	m.skills, m.chosen = nil, -1
	return nil
}

func (m *made) why() part.Msgs {
	if len(m.skills) == 0 || m.chosen < 0 {
		return part.Msgs{part.NoUse{Why: "Answer the case first; then w says why."}}
	}
	return part.Msgs{part.Read{Page: part.NewPage(m.x, "Why", m.of.Question, func(width int) (out []paper.Line) {
		for _, w := range m.of.Work {
			out = append(out, part.WorkLines(w, m.of.Units, m.x.Measure(width-4))...)
		}
		return out
	})}}
}

// Frame is the same as text.
func (m *made) Frame() part.Frame {
	f := part.Frame{Title: "Practice"}
	for _, words := range m.Tell().Says {
		f.Body = append(f.Body, paper.Text(paper.Plain, words))
	}
	return f
}
