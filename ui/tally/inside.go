package tally

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/results"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// inside is the stumps of a group, in the order of the list.
type inside struct {
	stumps []results.OnStump
	lots   string
	at     int
	top    int
}

// enter goes to the stumps of what is under the cursor.
func (s *Screen) enter() part.Msgs {
	s.inside = &inside{}
	s.lookInside()
	return part.Says("")
}

// lookInside lists the stumps and the lots anew.
func (s *Screen) lookInside() {
	in := s.inside
	in.stumps = s.cols.Stumps(&s.tally, s.group())
	in.at = max(0, min(in.at, len(in.stumps)-1))
	var lots []string
	for _, l := range s.cols.Lots(&s.tally, s.group()) {
		lots = append(lots, fmt.Sprintf("%s %d", l.Cause, l.Grafts))
	}
	in.lots = strings.Join(lots, ", ")
}

func (s *Screen) insideTable() []part.Row {
	step := func(n int) part.Msgs {
		s.inside.at = max(0, min(s.inside.at+n, len(s.inside.stumps)-1))
		return nil
	}
	return append([]part.Row{
		part.ToOpen.Row(s.openStump).Told("Open the stump under the cursor."),
		part.ToMap.Row(s.mark).Told("These stumps on the block, from above."),
		part.ToWhy.Row(s.why).Told("Why: how the figures come about, and by whose word."),
		part.ToNext.Row(part.Does(part.Next{})),
		part.ToNote.Row(s.note),
		part.ToFind.Row(func() part.Msgs { return s.x.AskPlace(0, "") }),
		part.ToBack.Row(func() part.Msgs {
			s.inside = nil
			return part.Says("")
		}).Named("groups").Told("Back to the groups."),
	}, part.Moves("Move the cursor.", step)...)
}

// note asks for a note on the stump under the cursor.
func (s *Screen) note() part.Msgs {
	in := s.inside
	if len(in.stumps) == 0 {
		return s.x.AskNote(record.NoStump)
	}
	return s.x.AskNote(in.stumps[in.at].ID)
}

func (s *Screen) openStump() part.Msgs {
	in := s.inside
	if len(in.stumps) == 0 {
		return nil
	}
	return part.Msgs{part.Open{Stump: in.stumps[in.at].ID}}
}

// insideFrame shows the stumps that are in sight, under the lots they were grafted
// from.
func (s *Screen) insideFrame() part.Frame {
	x, in, g := s.x, s.inside, s.here()
	f := part.Frame{Title: x.Site().Name, Where: fmt.Sprintf("%s, %s: %s on %s", s.name(g), s.of(), part.Counted(g.Grafts, "graft"), part.Counted(g.Stumps, "stump"))}
	f.Keys = x.KeyLine(nil, s.insideTable())
	if len(in.stumps) == 0 {
		f.Body = []paper.Line{nil, paper.Text(paper.Strong, "  No graft is in it.")}
		return f
	}
	lots := part.Indent(1, part.Wrapped(paper.Faint, "Of lot "+in.lots+".", x.Width-2))
	if most := max(2, x.BodyHeight()/4); len(lots) > most {
		lots = append(lots[:most-1:most-1], lots[most-1].Add(paper.Faint, " …"))
	}
	room := max(x.BodyHeight()-len(lots)-1, 1)
	in.top = max(min(in.top, in.at), in.at-room+1, 0)
	f.Body = append(lots, nil)
	for i := in.top; i < min(len(in.stumps), in.top+room); i++ {
		f.Body = append(f.Body, in.line(i))
	}
	return f
}

func (in *inside) line(i int) paper.Line {
	s, mark, ink := in.stumps[i], "  ", paper.Plain
	if i == in.at {
		mark, ink = " >", paper.Strong
	}
	l := paper.Line{{Text: mark + " ", Ink: paper.Accent}, {Text: s.ID.Place(), Ink: ink}}.Pad(14)
	switch {
	case s.Known == 0:
		l = l.Add(paper.Plain, part.Counted(s.Grafts, "graft")+", not known yet")
	case s.Known < s.Grafts:
		l = l.Add(paper.Plain, fmt.Sprintf("%d of %d took, %d not known yet", s.Took, s.Known, s.Grafts-s.Known))
	default:
		l = l.Add(paper.Plain, fmt.Sprintf("%d of %d took", s.Took, s.Known))
	}
	if s.Took > 0 {
		l = l.Add(paper.Growth, fmt.Sprintf(", %d standing", s.Stands))
	}
	if s.Dead > 0 {
		l = l.Add(paper.Warn, fmt.Sprintf(", %d died: %s", s.Dead, s.Cause))
	}
	return l
}
