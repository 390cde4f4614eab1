package stump

import (
	"strconv"
	"strings"

	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// figures are what the step is better seen as, to scale: the one shown beside
// the answers first.
func (s *Screen) figures() []func(w, h int) []paper.Line {
	type view = func(w, h int) []paper.Line
	switch s.asked.Step.ID {
	case walk.StepTorn, walk.StepMeasure, walk.StepLongWay, walk.StepSlots, walk.StepNewFace:
		return []view{s.topView}
	case walk.StepThick:
		return []view{s.scionView, s.topView}
	case walk.StepNodes:
		if s.sub != nil {
			return []view{s.stickView}
		}
		return []view{s.scionView, s.topView}
	case walk.StepScion:
		return []view{s.topView, s.scionView}
	case walk.StepSeal, walk.StepWhite:
		if _, ok := s.heat(); ok {
			return []view{s.heatView, s.topView}
		}
		return []view{s.topView}
	case walk.StepStake, walk.StepLeader, walk.StepLeaderShoot, walk.StepTie, walk.StepPinch, walk.StepHeadBack, walk.StepSeason:
		if s.growthView(40, 12) != nil {
			return []view{s.growthView, s.topView}
		}
		return []view{s.topView}
	case walk.StepVisit, walk.StepDeath, walk.StepScratch, walk.StepShoots, walk.StepBroken, walk.StepRest:
		return []view{s.topView}
	}
	return nil
}

// figure is the one chosen; nothing for steps that have none.
func (s *Screen) figure(w, h int) []paper.Line {
	all := s.figures()
	if len(all) == 0 {
		return nil
	}
	return all[max(s.fig-1, 0)%len(all)](w, h)
}

// leastFigure is how many lines the figure beside the answers needs to be worth
// its place: a top view fewer than the others.
func (s *Screen) leastFigure() int {
	switch s.asked.Step.ID {
	case walk.StepNodes:
		if s.sub != nil {
			return stickLines
		}
	}
	if s.needsFigure() {
		return 6
	}
	return 8
}

// needsFigure says whether the step is about what its figure shows: where on the
// stump from above.
func (s *Screen) needsFigure() bool {
	switch s.asked.Step.ID {
	case walk.StepTorn, walk.StepMeasure, walk.StepLongWay, walk.StepSlots, walk.StepNewFace, walk.StepScion:
		return len(s.figure(20, 8)) > 0
	}
	return false
}

// nextFigure makes the figure large, then goes on to the next, then back to the
// answers.
func (s *Screen) nextFigure() part.Msgs {
	n := len(s.figures())
	if n == 0 {
		return part.Says("This step has no figure.")
	}
	s.fig = (s.fig + 1) % (n + 1)
	if s.fig == 0 {
		return part.Says("")
	}
	return part.Says("The figure large; the answers still take their keys. z goes on, Esc goes back.")
}

// stickView is the stick as far as it is typed, with its cuts; before its first
// node it is how a stick is typed.
func (s *Screen) stickView(w, h int) []paper.Line {
	stick, ok := s.stickTyped()
	if !ok {
		return s.stickHint(w, h)
	}
	fig := figure.Stick{Length: stick.Length, TrimButt: stick.TrimButt, TrimTip: stick.TrimTip, ThickButt: stick.ThickButt, ThickTip: stick.ThickTip,
		Sys: s.x.Site().Units}
	for _, n := range stick.Nodes {
		fig.Nodes = append(fig.Nodes, figure.Node{At: n.At, Buds: map[scion.Buds]int{scion.BothBuds: 2, scion.FirstBud: 1}[n.Buds]})
	}
	var said []paper.Line
	if cut, err := scion.CutStick(stick); err != nil {
		said = part.Wrapped(paper.Warn, err.Error(), w)
	} else {
		for _, p := range cut.Scions {
			fig.Pieces = append(fig.Pieces, figure.Piece{From: p.From, To: p.To, Paired: p.Paired})
		}
		said = part.Wrapped(paper.Plain, s.walk.StickWords(cut), w)
	}
	said = said[:min(len(said), max(h-stickLines, 0))]
	return append(said, s.x.Inked(fig.Draw(w, min(h-len(said), stickMost), s.x.Mode()))...)
}

// Lines of the figure of a stick: without them its scale is lost, and with more
// of them it only drifts away from what is said of it.
const (
	stickLines = 5
	stickMost  = 12
)

// stickTyped reads as much of what is typed as is whole; ok is false where that
// has no node yet.
func (s *Screen) stickTyped() (stick scion.Stick, ok bool) {
	words := strings.Fields(s.field.Text())
	for n := len(words); n > 1; n-- {
		if stick, err := s.walk.ReadStick(strings.Join(words[:n], " ")); err == nil && len(stick.Nodes) > 0 {
			return stick, true
		}
	}
	return scion.Stick{}, false
}

func (s *Screen) stickHint(w, h int) []paper.Line {
	var out []paper.Line
	for i, l := range s.walk.StickHint() {
		ink := paper.Faint
		if i == 0 {
			ink = paper.Plain
		}
		out = append(out, paper.Text(ink, paper.Shorten(l, w)))
	}
	return out[:min(len(out), h)]
}

// assumedStump is drawn where bark is torn before the stump is measured.
const assumedStump = 4 * unit.Inch

// topView is the stump from above with its slots.
func (s *Screen) topView(w, h int) []paper.Line {
	top, ok := s.top()
	if !ok {
		return nil
	}
	return s.x.Inked(top.Draw(w, h, s.x.Mode()))
}

// top is the stump from above as it was measured or is typed; ok is false where
// nothing is known of it.
func (s *Screen) top() (top figure.Top, ok bool) {
	b, a := s.x.Site(), s.walk.A
	shade := b.Shade()
	top = figure.Top{Across: s.walk.Found.Across, Shade: &shade, Sys: b.Units}
	if m := a.Measured; m != nil {
		top.Across, top.Across2, top.LongWay = m.What.Across.Length, m.What.Across2.Length, m.What.LongWay
	}
	if bodies := s.typed(); len(bodies) == 1 {
		if m, ok := bodies[0].(*record.StumpMeasured); ok {
			top.Across, top.Across2, top.LongWay = m.Across.Length, m.Across2.Length, m.LongWay
		}
	}
	top.Slots, top.Blocked = s.slots()
	if top.Across <= 0 {
		if s.asked.Step.ID != walk.StepTorn && len(top.Blocked) == 0 {
			return top, false
		}
		top.Across, top.Assumed = assumedStump, true
	}
	return top, true
}

// typed is what the field would be taken as, so that figures move while a
// number is typed; nothing while it cannot be read.
func (s *Screen) typed() []record.Body {
	e := s.entry()
	if e == nil || s.field.Text() == "" {
		return nil
	}
	bodies, err := e.Read(s.field.Text())
	if err != nil {
		return nil
	}
	return bodies
}

// slots are those marked, or those the plan would mark.
func (s *Screen) slots() ([]figure.Slot, []figure.Arc) {
	a := s.walk.A
	var plan record.SlotsMarked
	switch n := len(a.FreshCuts); {
	case s.asked.Step.ID == walk.StepSlots && a.Measured != nil:
		plan = s.walk.Plan()
	case a.Slots != nil:
		plan = a.Slots.What
	case n > 0:
		plan.Blocked = a.FreshCuts[n-1].What.Torn
	}
	if bodies := s.typed(); len(bodies) == 1 {
		switch typed := bodies[0].(type) {
		case *record.SlotsMarked:
			plan = *typed
		case *record.FreshCut:
			plan.Blocked = typed.Torn
		}
	}
	var blocked []figure.Arc
	for _, arc := range plan.Blocked {
		if arc.Width.Given() {
			blocked = append(blocked, figure.Arc{Bearing: arc.Bearing, Width: arc.Width.Length, Word: arc.Why})
		}
	}
	if s.asked.Step.ID == walk.StepSlots && len(plan.Slots) == 0 && a.Measured != nil {
		if l, err := s.walk.Layout(plan); err == nil {
			for _, slot := range l.Slots {
				plan.Slots = append(plan.Slots, record.Slot{Bearing: slot.Bearing})
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
		if s.asked.Step.ID == walk.StepScion && s.walk.Slot() == i+1 {
			state = figure.InHand
		}
		slots = append(slots, figure.Slot{Bearing: slot.Bearing, Label: strconv.Itoa(i + 1), State: state})
	}
	return slots, blocked
}

// scionView is the scion from the side and its face, with cuts and nails.
func (s *Screen) scionView(w, h int) []paper.Line {
	cut, answer, ok := s.scionCuts()
	if !ok {
		return nil
	}
	fig := figure.Scion{Thick: cut.Thick, Bark: cut.Bark, LongCut: cut.LongCut, Tip: cut.Tip, Back: cut.Back,
		Least: answer.Slot.Least, Most: answer.Slot.Most, Sys: s.x.Site().Units}
	for _, n := range answer.Nails {
		fig.Nails = append(fig.Nails, n.FromTop)
	}
	return s.x.Inked(fig.Draw(w, h, s.x.Mode()))
}

// scionCuts is the scion as it is to be cut: of the wood chosen, or typed, or where
// its thickness is not known of wood that suits the stump.
func (s *Screen) scionCuts() (cut scion.Cut, answer scion.Answer, ok bool) {
	var wood record.WoodChosen
	if s.walk.A.Wood != nil {
		wood = s.walk.A.Wood.What
	}
	if bodies := s.typed(); len(bodies) == 1 {
		if typed, ok := bodies[0].(*record.WoodChosen); ok {
			wood = *typed
		}
	}
	if !wood.Thickness.Given() {
		if fit, err := scion.Fit(scion.Wood{Across: s.walk.Found.Across}); err == nil {
			wood.Thickness.Length = (fit.Least + fit.Most) / 2
		}
	}
	cut = wood.Cut()
	answer, err := scion.Cuts(cut)
	return cut, answer, err == nil
}
