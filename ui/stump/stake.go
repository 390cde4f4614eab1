package stump

import (
	"strings"

	"barkslip/core/walk"
	"barkslip/ui/paper"
)

const stakeWidth = 30

// marks of the knots up the stake.
func (s *Screen) knot(done, present bool) string {
	i := 0
	switch {
	case present:
		i = 2
	case done:
		i = 1
	}
	if s.x.Plain {
		return []string{"o", "@", ">"}[i]
	}
	return []string{"○", "●", "◆"}[i]
}

// stake is the walk down the left edge: a knot for each step. The part in hand
// is open, the others are one line each.
func (s *Screen) stake(height int) []paper.Line {
	knots := s.walk.Knots()
	part := s.asked.Step.Part
	lines, here := []paper.Line{nil}, 0
	bar := "│"
	if s.x.Plain {
		bar = "|"
	}
	for p := walk.PartCutBack; p <= walk.PartAfter; p++ {
		steps := ofPart(knots, p)
		if p != part {
			lines = append(lines, s.folded(p, steps))
			continue
		}
		lines = append(lines, paper.Line{{Text: " " + bar + " ", Ink: paper.Faint}, {Text: p.String(), Ink: paper.Strong}})
		for _, k := range steps {
			if k.Step == s.asked.Step {
				here = len(lines)
			}
			lines = append(lines, s.knotLine(k))
		}
	}
	lines = append(lines, paper.Text(paper.Faint, " "+bar))
	if len(lines) > height { // the part in hand is long: keep the present step in sight
		from := max(1, min(here-height/2, len(lines)-height+1))
		lines = append(lines[:1], lines[from:min(len(lines), from+height-1)]...)
	}
	return lines
}

func ofPart(knots []walk.Knot, p walk.Part) []walk.Knot {
	var out []walk.Knot
	for _, k := range knots {
		if k.Step.Part == p {
			out = append(out, k)
		}
	}
	return out
}

// answered says whether a step has an answer that stands.
func answered(k walk.Knot) bool { return k.Done }

// tells is the step whose answer stands for its part.
var tells = map[walk.Part]walk.StepID{walk.PartCutBack: walk.StepHeight, walk.PartLook: walk.StepBleeding, walk.PartGraft: walk.StepScion,
	walk.PartSeal: walk.StepWhite, walk.PartAfter: walk.StepVisit}

// folded is a part in one line: tied when all its steps are.
func (s *Screen) folded(p walk.Part, steps []walk.Knot) paper.Line {
	done, answer := len(steps) > 0, ""
	for _, k := range steps {
		if !answered(k) {
			done = false
		}
		if k.Step.ID == tells[p] {
			answer = k.Answer
		}
	}
	ink := paper.Faint
	if done {
		ink = paper.Plain
	}
	l := paper.Line{{Text: " " + s.knot(done, false) + " ", Ink: ink}, {Text: p.String(), Ink: ink}}
	if answer != "" {
		l = l.Add(paper.Plain, "  ").Add(paper.Faint, paper.Shorten(answer, max(stakeWidth-l.Width()-3, 0)))
	}
	return l
}

func (s *Screen) knotLine(k walk.Knot) paper.Line {
	here := k.Step == s.asked.Step
	ink := paper.Faint
	switch {
	case here:
		ink = paper.Accent
	case answered(k):
		ink = paper.Plain
	}
	l := paper.Line{{Text: " " + s.knot(answered(k), here) + " ", Ink: ink}, {Text: " " + k.Step.Name, Ink: ink}}
	l = l.Pad(17)
	room := stakeWidth - l.Width() - 1
	if !answered(k) && k.Due != nil {
		words, ink := s.x.DueWords(*k.Due)
		return l.Add(ink, paper.Shorten(words, room))
	}
	return l.Add(paper.Plain, brief(k.Answer, room))
}

// brief is an answer in the room there is: without what was said last, mostly
// the day, before it is cut.
func brief(answer string, room int) string {
	if before, _, more := cutLast(answer, ", "); more && paper.Width(answer) > room {
		answer = before
	}
	return paper.Shorten(answer, room)
}

func cutLast(s, sep string) (before, after string, found bool) {
	if i := strings.LastIndex(s, sep); i >= 0 {
		return s[:i], s[i+len(sep):], true
	}
	return s, "", false
}
