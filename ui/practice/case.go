package practice

import (
	"fmt"
	"strings"

	"barkslip/core/practice"
	"barkslip/core/trade"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// asked is a case that is asked; in a sign-off it is left as soon as it is answered.
type asked struct {
	*Screen
	c       practice.Case
	off     *practice.SignOff // nil outside of one
	seen    bool              // it was seen before, and is not counted
	given   int               // the choice from 0, -1 while it is open
	from    int               // line from which it is read
	lines   int               // how many lines are read on: all of it, or above answers that stay what is found
	room    int               // how many of them are seen at a time
	enlarge bool              // the figure alone
}

// ask asks a case of the skill that is next, or of the only one asked.
func (s *Screen) ask() {
	skill := s.only
	if skill == 0 {
		skill = s.of.Next(s.x.Now()).Skill
	}
	exact, seed := s.seed != nil, s.chance()
	if !exact {
		s.view = &asked{Screen: s, c: s.of.Unseen(skill, seed), given: -1}
		return
	}
	s.view = &asked{Screen: s, c: practice.Make(seed, skill), seen: s.of.Seen(skill, seed), given: -1}
}

func (a *asked) name() string {
	if a.off != nil {
		return "sign-off"
	}
	return "a case"
}

func (a *asked) rows() []part.Row {
	var rows []part.Row
	switch {
	case a.given >= 0:
		rows = append(rows,
			part.ToOpen.Row(a.next).Named("next case").Told("The next case."),
			part.ToWhy.Row(a.why).Told("Why: the facts of it and their standing, by whose word."))
	default:
		for i := range a.c.Choices {
			rows = append(rows, part.Row{Binding: part.On(fmt.Sprint(i+1), ""), Says: "Answer: " + a.c.Choices[i].Words, Do: func() part.Msgs { return a.answer(i) }})
		}
	}
	if f := a.c.Figure; f != nil {
		rows = append(rows, part.ToEnlarge.Row(func() part.Msgs { a.enlarge = !a.enlarge; return nil }).Told("The figure large, and back."))
	}
	if a.lines > a.room && !a.enlarge {
		rows = append(rows, part.ToMore.Row(a.readOn).Told("Read on, and from the end back to the beginning."))
	}
	return append(rows, a.back())
}

func (a *asked) readOn() part.Msgs {
	if a.from >= a.lines-a.room {
		a.from = 0
	} else {
		a.from = min(a.from+max(a.room-1, 1), a.lines-a.room)
	}
	return nil
}

// answer takes a choice: in practice it is judged and explained, in a sign-off the next
// case comes.
func (a *asked) answer(i int) part.Msgs {
	if a.off == nil {
		a.given, a.from, a.enlarge = i, 0, false
		if a.seen {
			return part.Says("This case was seen before; it is not counted.")
		}
		a.of.Take(a.c, i, a.x.Now())
		return part.Says("").And(a.keep()...)
	}
	n := a.off.At() + 1
	a.off.Take(i, a.x.Now())
	msgs := part.Says(fmt.Sprintf("Case %d recorded: %d.", n, i+1)).And(a.keep()...)
	if !a.off.Ended() {
		a.view = &asked{Screen: a.Screen, c: a.off.Case(), off: a.off, given: -1}
		return msgs
	}
	return a.read(a.of).And(msgs[1:]...)
}

func (a *asked) next() part.Msgs {
	a.ask()
	return part.Says("")
}

// why is the facts of the case, or where it has none what the rules say.
func (a *asked) why() part.Msgs { return a.works(a.c.Skill.String(), a.c.Work...) }

func (a *asked) frame() part.Frame {
	f := part.Frame{Where: a.c.Skill.String(), Short: []string{a.c.Skill.String()}}
	switch {
	case a.off != nil:
		f.Where = fmt.Sprintf("%s, sign-off, case %d of %d", a.of.Initials, a.off.At()+1, len(a.off.Cases))
		f.Short = []string{fmt.Sprintf("sign-off %d of %d", a.off.At()+1, len(a.off.Cases))}
	case a.only != 0:
		f.Where = a.of.Initials + ", only " + f.Where
	default:
		f.Where = a.of.Initials + ", " + f.Where
	}
	if a.enlarge {
		f.Body = part.Indent(2, a.figure(a.x.Width-4, a.x.BodyHeight()))
		return f
	}
	a.lines, a.room = 0, a.x.BodyHeight()
	if a.given < 0 {
		f.Body = a.open()
		f.Hint = fmt.Sprintf("1 to %d answers.", len(a.c.Choices))
	} else {
		f.Body = a.judged()
	}
	if a.lines == 0 {
		a.lines = len(f.Body)
		f.Body = a.seenOf(f.Body)
	}
	if a.lines > a.room {
		f.Hint = fmt.Sprintf("Lines %d to %d of %d; PgDn or = reads on.", a.from+1, min(a.from+a.room, a.lines), a.lines)
	}
	return f
}

// seenOf is the lines that are seen now of those that are read on.
func (a *asked) seenOf(lines []paper.Line) []paper.Line {
	if a.from = min(a.from, max(len(lines)-a.room, 0)); len(lines) > a.room {
		return lines[a.from:][:a.room]
	}
	return lines
}

// open is the case before it is answered: what is found with its figure beside it, the
// question, the choices. Where there is no room for the figure its words stand there.
func (a *asked) open() []paper.Line {
	wide := min(a.x.Width-4, 116)
	choices := a.choices(wide)
	question := part.Wrapped(paper.Strong, a.c.Question, wide)
	room := a.x.BodyHeight() - len(choices) - len(question) - 2
	if a.c.Figure != nil && room >= leastFigure && a.x.Width >= besideFrom {
		figWide := min(wide/2, 44)
		told := part.Wrapped(paper.Plain, strings.Join(a.c.Told, " "), wide-figWide-figureGap)
		if len(told) <= room-1 {
			fig := a.figure(figWide, min(room, 14))
			top := make([]paper.Line, max(len(told)+1, len(fig)))
			copy(top[1:], told)
			for i := range fig {
				top[i] = append(top[i].Pad(wide-figWide), fig[i]...)
			}
			return part.Indent(2, append(append(append(append(top, nil), question...), nil), choices...))
		}
	}
	told := part.Wrapped(paper.Plain, strings.Join(a.c.InWords(), " "), wide)
	if len(told)+len(question)+len(choices)+3 <= a.x.BodyHeight() {
		return part.Indent(2, append(append(append(append(append([]paper.Line{nil}, told...), nil), question...), nil), choices...))
	}
	if room := a.x.BodyHeight() - len(question) - len(choices); room >= leastTold && room < len(told) {
		a.lines, a.room = len(told), room // what is found is read on; the answers stay
		told = a.seenOf(told)
	}
	return part.Indent(2, append(append(told, question...), choices...))
}

// leastTold is how many lines of what is found are seen at the least above answers that
// stay where they are.
const leastTold = 2

// Figures stand beside the words from these columns and lines on.
const besideFrom, leastFigure = 76, 7

// choices are the answers, a digit before each.
func (a *asked) choices(wide int) (out []paper.Line) {
	for i, ch := range a.c.Choices {
		out = append(out, part.Under(fmt.Sprintf(" %d ", i+1), paper.Accent, paper.Plain, ch.Words, wide)...)
	}
	return out
}

// judged is the case once it is answered: whether it was right, what the rules say of the
// best, and of each other why it is not.
func (a *asked) judged() []paper.Line {
	wide := min(a.x.Width-4, 96)
	if fig := a.beside(&wide); fig != nil {
		lines := a.judgedIn(wide)
		for len(lines) < len(fig) {
			lines = append(lines, nil)
		}
		for i := range fig {
			lines[i] = append(lines[i].Pad(wide+figureGap), fig[i]...)
		}
		return part.Indent(2, lines)
	}
	return part.Indent(2, a.judgedIn(wide))
}

// figureGap is how far a figure stands from the words beside it.
const figureGap = 2

// beside is the figure that stands beside the words of what was judged, which have less
// room then; nil where there is none, or no room.
func (a *asked) beside(wide *int) []paper.Line {
	if a.c.Figure == nil || a.x.Width < besideFrom {
		return nil
	}
	w := min(*wide*2/5, 40)
	fig := a.figure(w, min(a.x.BodyHeight(), 12))
	if fig != nil {
		*wide -= w + figureGap
	}
	return fig
}

// judgedIn is what is to be said of the case, in some width.
func (a *asked) judgedIn(wide int) []paper.Line {
	best := a.c.Best()
	verdict := paper.Text(paper.Strong, fmt.Sprintf("Right: %d is the best.", best+1))
	if a.given != best {
		verdict = paper.Text(paper.Warn, fmt.Sprintf("Not right: you said %d, the best is %d.", a.given+1, best+1))
	}
	lines := []paper.Line{verdict, nil}
	lines = append(append(lines, part.Wrapped(paper.Plain, a.c.Question, wide)...), nil)
	order := []int{best}
	if a.given != best {
		order = append(order, a.given)
	}
	for i := range a.c.Choices {
		if i != best && i != a.given {
			order = append(order, i)
		}
	}
	for _, i := range order {
		ch, ink, is := a.c.Choices[i], paper.Plain, ""
		switch i {
		case best:
			ink, is = paper.Strong, "  (best)"
		case a.given:
			is = "  (yours)"
		}
		if i == best && i == a.given {
			is = "  (best, yours)"
		}
		lines = append(lines, part.Under(fmt.Sprintf(" %d ", i+1), paper.Accent, ink, ch.Words+is, wide)...)
		lines = append(lines, part.Indent(4, part.Wrapped(paper.Plain, ch.Because, wide-4))...)
	}
	lines = append(lines, nil)
	lines = append(lines, part.Under("Found:", paper.Faint, paper.Faint, strings.Join(a.c.Told, " "), wide)...)
	return lines
}

// why says how the next skill is chosen.
func (h *home) why() part.Msgs {
	next := h.of.Next(h.x.Now())
	return h.works("the next skill", trade.Worked{Question: "Which skill is asked next",
		Answer: []trade.Input{{Name: next.Skill.String(), Value: because(next, h.x.Now())}},
		Formula: "What is due again comes first, the shortest interval before the others, so that a skill that was missed comes soonest; then skills not asked yet, " +
			"in the order of the work. A right answer goes on to the next interval, a missed case back to the first.",
		Facts: []trade.Fact{trade.GradedRecall, trade.RecallOfSkills, trade.SignOffMark}})
}
