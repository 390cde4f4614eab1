package ui

import (
	"strconv"

	"barkslip/core"
	"barkslip/core/scion"
	"barkslip/core/unit"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// inkOf maps the figures' inks to the screen's.
var inkOf = map[figure.Ink]paper.Ink{
	figure.Plain: paper.Plain, figure.Accent: paper.Accent, figure.Warn: paper.Warn, figure.Growth: paper.Growth, figure.Faint: paper.Faint,
}

// lines turns a figure into lines of the screen.
func lines(f figure.Figure) []paper.Line {
	w, h := f.Size()
	out := make([]paper.Line, h)
	for y := range h {
		var run []rune
		ink := figure.Plain
		flush := func() {
			if len(run) > 0 {
				out[y] = out[y].Add(inkOf[ink], string(run))
			}
			run = run[:0]
		}
		for x := range w {
			r, i := f.Cell(x, y)
			if i != ink {
				flush()
				ink = i
			}
			if r != 0 {
				run = append(run, r)
			}
		}
		flush()
	}
	return out
}

// figure is what the step is better seen as, to scale; nothing for steps that
// have none.
func (s *stumpScreen) figure(w, h int) []paper.Line {
	switch s.q.Step.ID {
	case core.StepTorn, core.StepMeasure, core.StepLongWay, core.StepSlots, core.StepNewFace:
		return s.topView(w, h)
	case core.StepThick, core.StepNodes:
		return s.scionView(w, h)
	case core.StepScion:
		if s.fig%2 == 1 {
			return s.scionView(w, h)
		}
		return s.topView(w, h)
	case core.StepSeal, core.StepWhite:
		return s.topView(w, h)
	}
	return nil
}

// topView is the stump from above with its slots.
func (s *stumpScreen) topView(w, h int) []paper.Line {
	b, a := s.x.site(), s.c.A
	shade := b.Shade()
	top := figure.Top{Across: s.c.Found.Across, Shade: &shade, Sys: b.Units}
	if m := a.Measured; m != nil {
		top.Across, top.Across2, top.LongWay = m.What.Across.Length, m.What.Across2.Length, m.What.LongWay
	}
	if bodies := s.typed(); len(bodies) == 1 {
		if m, ok := bodies[0].(*core.StumpMeasured); ok {
			top.Across, top.Across2, top.LongWay = m.Across.Length, m.Across2.Length, m.LongWay
		}
	}
	if top.Across <= 0 {
		return nil
	}
	top.Slots, top.Blocked = s.slots()
	return lines(top.Draw(w, h, s.x.mode()))
}

// typed is what the field would be taken as, so that figures move while a
// number is typed; nothing while it cannot be read.
func (s *stumpScreen) typed() []core.Body {
	e := s.entry()
	if e == nil || s.field.text == "" {
		return nil
	}
	bodies, err := e.Read(s.field.text)
	if err != nil {
		return nil
	}
	return bodies
}

// slots are those marked, or those the plan would mark.
func (s *stumpScreen) slots() ([]figure.Slot, []figure.Arc) {
	a := s.c.A
	var plan core.SlotsMarked
	if a.Slots != nil {
		plan = a.Slots.What
	} else if n := len(a.FreshCuts); n > 0 {
		plan.Blocked = a.FreshCuts[n-1].What.Torn
	}
	var blocked []figure.Arc
	for _, arc := range plan.Blocked {
		if arc.Width.Given() {
			blocked = append(blocked, figure.Arc{Bearing: arc.Bearing, Width: arc.Width.Length, Word: arc.Why})
		}
	}
	if s.q.Step.ID == core.StepSlots && len(plan.Slots) == 0 && a.Measured != nil {
		if l, err := s.c.Layout(plan); err == nil {
			for _, slot := range l.Slots {
				plan.Slots = append(plan.Slots, core.Slot{Bearing: slot.Bearing})
			}
		}
	}
	var slots []figure.Slot
	for i, slot := range plan.Slots {
		state := figure.Planned
		for _, g := range a.Grafts {
			if g.Slot == i+1 {
				state = figure.Set
			}
		}
		if s.q.Step.ID == core.StepScion && s.c.Slot() == i+1 {
			state = figure.InHand
		}
		slots = append(slots, figure.Slot{Bearing: slot.Bearing, Label: strconv.Itoa(i + 1), State: state})
	}
	return slots, blocked
}

// scionView is the scion from the side and its face, with cuts and nails.
func (s *stumpScreen) scionView(w, h int) []paper.Line {
	thick := unit.Length(0)
	if s.c.A.Wood != nil {
		thick = s.c.A.Wood.What.Thickness.Length
	}
	if bodies := s.typed(); len(bodies) == 1 {
		if wood, ok := bodies[0].(*core.WoodChosen); ok {
			thick = wood.Thickness.Length
		}
	}
	if thick == 0 {
		if fit, err := scion.Fit(scion.Wood{Across: s.c.Found.Across}); err == nil {
			thick = (fit.Least + fit.Most) / 2
		}
	}
	cut := scion.Defaults(thick)
	answer, err := scion.Cuts(cut)
	if err != nil {
		return nil
	}
	fig := figure.Scion{Thick: cut.Thick, Bark: cut.Bark, LongCut: cut.LongCut, Tip: cut.Tip, Back: cut.Back,
		Least: answer.Slot.Least, Most: answer.Slot.Most, Sys: s.x.site().Units}
	for _, n := range answer.Nails {
		fig.Nails = append(fig.Nails, n.FromTop)
	}
	return lines(fig.Draw(w, h, s.x.mode()))
}
