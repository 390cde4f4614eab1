package practice

import (
	"time"

	"barkslip/core/practice"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// home is the skills: how each stands, and which is asked next.
type home struct {
	*Screen
	at int // the skill under the cursor
}

// home goes to the skills, with the cursor on the one that is asked next.
func (s *Screen) home() {
	h := &home{Screen: s}
	if s.of != nil {
		next := s.of.Next(s.x.Now())
		for i, p := range s.of.Progress() {
			if p.Skill == next.Skill {
				h.at = i
			}
		}
	}
	s.view = h
}

func (h *home) name() string { return "practice" }

func (h *home) rows() []part.Row {
	if h.of == nil {
		return []part.Row{
			part.ToOpen.Row(h.askInitials).Named("say whose it is").Told("Type your initials: what was right is kept under them."),
			h.leave(),
		}
	}
	digit := func(key, word, says string, do func() part.Msgs) part.Row {
		return part.Row{Binding: part.On(key, word), Says: says, Do: do}
	}
	rows := []part.Row{
		part.ToOpen.Row(h.practise).Named("a case").Told("A case of the skill under the cursor. On the skill that is asked next, each case is of the one that is next then."),
		digit("1", "sign-off", "40 unseen cases without coach or why.", func() part.Msgs { h.view = &begin{h.Screen}; return part.Says("") }),
		digit("2", "a life", "One made-up stump from standing to untied, the clock moved on by a key.", h.life),
		digit("3", "results", "How this learner stands, with the cases missed; to be printed.", func() part.Msgs { return h.read(h.of) }),
		digit("4", "all", "All learners whose practice is kept here.", h.everybody),
		part.ToWhy.Row(h.why).Named("").Told("Why: how the next skill is chosen, and by whose word."),
		h.leave(),
	}
	return append(rows, part.Moves("Move the cursor.", func(by int) part.Msgs {
		h.at = max(0, min(h.at+by, len(h.of.Progress())-1))
		return nil
	})...)
}

// leave is the key that leaves practice, where something lies beneath.
func (h *home) leave() part.Row {
	if h.x.Practice != nil {
		return part.ToBack.Row(part.Does(part.NoUse{Why: "Nothing lies beneath practice here. q leaves the program."})).Named("").Told("Nothing lies beneath practice here.")
	}
	return part.ToBack.Row(part.Does(part.Back{})).Told("Back to where practice was opened.")
}

// practise asks a case of the skill under the cursor.
func (h *home) practise() part.Msgs {
	h.only = 0
	if skill := h.of.Progress()[h.at].Skill; skill != h.of.Next(h.x.Now()).Skill {
		h.only = skill
	}
	h.ask()
	return part.Says("")
}

func (h *home) frame() part.Frame {
	width := min(h.x.Width-4, 96)
	if h.of == nil {
		body := []paper.Line{nil, paper.Text(paper.Strong, "Whose practice is it?"), nil}
		body = append(body, part.Wrapped(paper.Plain, "Practice is apart from every book: its cases are made up, and what was right first time is kept by initials.", width)...)
		return part.Frame{Where: "made-up cases", Body: part.Indent(2, body)}
	}
	now, next := h.x.Now(), h.of.Next(h.x.Now())
	head := part.Wrapped(paper.Faint, h.of.Whose()+" Somebody else? h takes another spelling.", width)
	if h.said != "" {
		head = append(part.Wrapped(paper.Warn, h.said, width), head...)
	}
	foot := []paper.Line{}
	if last := h.of.Last(); last != nil {
		foot = part.Wrapped(paper.Plain, practice.DayWords(last.Day())+": "+last.Verdict(), width)
	}
	asks := append(paper.Text(paper.Plain, "Next: "), paper.Text(paper.Strong, next.Skill.String()+".")...).Add(paper.Plain, " "+because(next, now))
	body := append(head, asks.Cut(width))
	all := h.of.Progress()
	room := h.x.BodyHeight() - len(body) - len(foot)
	if room >= len(all)+2 {
		body, room = append(body, nil, paper.Text(paper.Faint, "  skill").Pad(19).Add(paper.Faint, "right first time").Pad(33+h.barWide()+2).Add(paper.Faint, "comes back")), room-2
	}
	from := max(0, min(h.at-room/2, len(all)-room))
	for i := from; i < min(from+room, len(all)); i++ {
		body = append(body, h.skill(all[i], i == h.at, now))
	}
	if len(foot) > 0 && h.x.BodyHeight() > len(body)+len(foot) {
		foot = append([]paper.Line{nil}, foot...)
	}
	return part.Frame{Where: h.of.Initials + ", made-up cases", Body: part.Indent(1, append(body, foot...))}
}

// because says why a skill is the one that is asked next.
func because(p practice.Progress, now time.Time) string {
	switch {
	case p.Asked == 0:
		return "It was not asked yet."
	case p.Missed():
		return "It was missed " + ago(now.Sub(p.Last)) + "."
	case p.Due().After(now):
		return "Nothing is due again yet; it comes soonest."
	}
	return "It was asked " + ago(now.Sub(p.Last)) + " and is due again."
}

func ago(d time.Duration) string {
	if d < time.Minute {
		return "just now"
	}
	return span(d) + " ago"
}

// span is a time in its largest unit.
func span(d time.Duration) string {
	for _, u := range []struct {
		of   time.Duration
		name string
	}{{365 * 24 * time.Hour, "year"}, {30 * 24 * time.Hour, "month"}, {24 * time.Hour, "day"}, {time.Hour, "hour"}, {time.Minute, "minute"}} {
		if n := int(d / u.of); n > 0 {
			return part.Counted(n, u.name)
		}
	}
	return part.Counted(max(int(d/time.Second), 0), "second")
}

func (h *home) barWide() int { return min(max(h.x.Width-58, 8), 40) }

// skill is the line of a skill: how many were right first time, as a bar too, and when
// it is asked again.
func (h *home) skill(p practice.Progress, cursor bool, now time.Time) paper.Line {
	mark, ink := "  ", paper.Plain
	if cursor {
		mark, ink = "> ", paper.Strong
	}
	line := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: p.Skill.String(), Ink: ink}}.Pad(19)
	line = line.Add(paper.Plain, p.Words()).Pad(33)
	line = append(line, bar(h.x, h.barWide(), p)...)
	again, warn := "", paper.Faint
	switch due := p.Due(); {
	case p.Asked == 0:
	case p.Missed():
		again, warn = "missed: now", paper.Warn
		if due.After(now) {
			again = "missed: in " + span(due.Sub(now))
		}
	case due.After(now):
		again = "in " + span(due.Sub(now))
	default:
		again, warn = "now", paper.Plain
	}
	return line.Pad(33+h.barWide()+2).Add(warn, again)
}

// bar is how many were right first time of how many.
func bar(x *part.Session, wide int, p practice.Progress) paper.Line {
	if p.Asked == 0 {
		return part.Bar(wide, 1, x.Shaded(1, figure.Track, figure.Faint))
	}
	return part.Bar(wide, float64(p.Asked), x.Shaded(p.Right, figure.Full, figure.Growth), x.Shaded(p.Asked-p.Right, figure.Light, figure.Warn))
}
