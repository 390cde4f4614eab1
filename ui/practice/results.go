package practice

import (
	"fmt"
	"strings"

	"barkslip/core/practice"
	"barkslip/core/trade"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// result is how one learner stands, with the newest sign-off.
type result struct {
	*Screen
	who  *practice.Learner
	from int
}

// read goes to how a learner stands.
func (s *Screen) read(who *practice.Learner) part.Msgs {
	s.view = &result{Screen: s, who: who}
	return part.Says("")
}

func (r *result) name() string { return "results of a learner" }

func (r *result) rows() []part.Row {
	rows := []part.Row{part.ToPaper.Row(r.print).Named("print").Told("Write it as a text page, to be printed.")}
	if last := r.last(); last > 0 {
		rows = append(rows, part.ToMore.Row(func() part.Msgs {
			if r.from += r.x.BodyHeight() - 1; r.from > last {
				r.from = 0
			}
			return nil
		}).Told("Read on, and from the end back to the beginning."))
	}
	return append(rows,
		part.Row{Binding: part.On("4", "all"), Says: "All learners whose practice is kept here.", Do: r.everybody}, r.back())
}

// last is the last line from which a whole screen can be read.
func (r *result) last() int { return max(len(r.lines())-r.x.BodyHeight(), 0) }

// print writes the report for the user.
func (r *result) print() part.Msgs {
	if r.x.SaveText == nil {
		return part.Says("No file can be written here.")
	}
	path, err := r.x.SaveText("practice-"+r.who.Initials+".txt", strings.Join(r.who.Report(), "\n")+"\n")
	if err != nil {
		return part.Fails(err)
	}
	return part.Says("Written: " + path)
}

// lines are the whole of it: the newest sign-off with its skills and the cases missed, or
// where there is none what was right in practice.
func (r *result) lines() []paper.Line {
	wide := min(r.x.Width-4, 96)
	tally := func(list []practice.Progress) (out []paper.Line) {
		for _, p := range list {
			line := paper.Text(paper.Plain, "  "+p.Skill.String()).Pad(19).Add(paper.Plain, p.Words()).Pad(33)
			out = append(out, append(line, bar(r.x, min(max(wide-34, 8), 40), p)...))
		}
		return out
	}
	lines := part.Wrapped(paper.Plain, r.who.Whose(), wide)
	if off := r.who.Last(); off != nil {
		ink := paper.Strong
		if !off.Passed() {
			ink = paper.Warn
		}
		lines = append(lines, nil, paper.Text(paper.Strong, fmt.Sprintf("Sign-off of %s, seed %d", practice.DayWords(off.Day()), off.Seed)))
		lines = append(append(lines, part.Wrapped(ink, off.Verdict(), wide)...), tally(off.Tally())...)
		for i, c := range off.Missed() {
			if i == 0 {
				lines = append(lines, nil, paper.Text(paper.Strong, "Cases missed"))
			}
			lines = append(lines, part.Under(fmt.Sprintf("  %s:", c.Skill), paper.Accent, paper.Plain, c.Asked, wide)...)
			lines = append(lines, part.Indent(4, append(part.Under("said", paper.Faint, paper.Plain, c.Gave, wide-4), part.Under("best", paper.Faint, paper.Plain, c.Best, wide-4)...))...)
		}
	} else {
		lines = append(lines, nil, paper.Text(paper.Plain, "No sign-off yet."))
	}
	lines = append(lines, nil, paper.Text(paper.Strong, "Right first time, all cases"))
	return part.Indent(2, append(lines, tally(r.who.Progress())...))
}

func (r *result) frame() part.Frame {
	lines := r.lines()
	f := part.Frame{Where: "results of " + r.who.Initials, Short: []string{r.who.Initials}, Body: lines[min(r.from, len(lines)-1):]}
	if len(lines) > r.x.BodyHeight() {
		f.Hint = fmt.Sprintf("Lines %d to %d of %d; PgDn or = reads on.", r.from+1, min(r.from+r.x.BodyHeight(), len(lines)), len(lines))
	}
	return f
}

// people are all learners whose practice is kept here.
type people struct {
	*Screen
	all  []*practice.Learner
	said []string // of files that cannot be read
	at   int
}

// everybody goes to all learners.
func (s *Screen) everybody() part.Msgs {
	p := &people{Screen: s}
	if s.x.Learners == nil {
		p.all = []*practice.Learner{s.of}
	} else {
		var err error
		if p.all, p.said, err = s.x.Learners.All(); err != nil {
			return part.Fails(err)
		}
	}
	s.view = p
	return part.Says("")
}

func (p *people) name() string { return "all learners" }

func (p *people) rows() []part.Row {
	rows := []part.Row{
		part.ToOpen.Row(func() part.Msgs {
			if len(p.all) == 0 {
				return part.Says("There is nobody yet.")
			}
			return p.read(p.all[p.at])
		}).Named("results").Told("How the one under the cursor stands: the skills, the newest sign-off, the cases missed."),
		p.back(),
	}
	return append(rows, part.Moves("Move the cursor.", func(by int) part.Msgs {
		p.at = max(0, min(p.at+by, len(p.all)-1))
		return nil
	})...)
}

func (p *people) frame() part.Frame {
	wide := min(p.x.Width-4, 116)
	var lines []paper.Line
	for _, said := range p.said {
		lines = append(lines, part.Indent(2, part.Wrapped(paper.Warn, said, wide))...)
	}
	if len(p.all) == 0 {
		lines = append(lines, nil, paper.Text(paper.Plain, "  Nobody has practised here yet."))
	}
	room := max((p.x.BodyHeight()-len(lines))/2, 1)
	from := max(0, min(p.at-room/2, len(p.all)-room))
	for i := from; i < min(from+room, len(p.all)); i++ {
		l := p.all[i]
		mark, ink := "   ", paper.Plain
		if i == p.at {
			mark, ink = " > ", paper.Strong
		}
		off := "no sign-off yet"
		if last := l.Last(); last != nil {
			off = practice.DayWords(last.Day()) + ": " + last.Verdict()
		}
		lines = append(lines, paper.Line{{Text: mark, Ink: paper.Accent}, {Text: l.Whose(), Ink: ink}}, paper.Text(paper.Faint, "   "+off).Cut(p.x.Width-1))
	}
	return part.Frame{Where: "all learners", Body: lines}
}

// works lays how something came about over the view.
func (s *Screen) works(where string, works ...trade.Worked) part.Msgs {
	lines := func(width int) (out []paper.Line) {
		for _, w := range works {
			out = append(append(out, nil), part.WorkLines(w, s.units(), s.x.Measure(width-4))...)
		}
		return out
	}
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Why", where, lines)}}
}
