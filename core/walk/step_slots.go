package walk

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Plan is the slots asked for so far, on a stump that was measured. What was asked and blocked stands when the
// same face is measured anew.
func (c *Case) Plan() record.SlotsMarked {
	if s := c.A.Slots; s != nil && !record.Newer(record.Last(c.A.FreshCuts), *s) {
		p := s.What
		if record.Newer(*c.A.Measured, *s) {
			p.Slots = nil
		}
		return p
	}
	p := record.SlotsMarked{}
	if n := len(c.A.FreshCuts); n > 0 {
		p.Blocked = c.A.FreshCuts[n-1].What.Torn
	}
	return p
}

// Layout reckons where the slots go for a number asked and bark blocked.
func (c *Case) Layout(p record.SlotsMarked) (girth.Layout, error) {
	face, shade := c.face(), c.B.Shade()
	plan := girth.SlotPlan{Across: face.Across, Across2: face.Across2, LongWay: face.LongWay, Scions: p.Asked, Slot: c.slotWidth(), Toward: &shade}
	for _, b := range p.Blocked {
		plan.Blocked = append(plan.Blocked, girth.Arc{Bearing: b.Bearing, Width: b.Width.Length})
	}
	return girth.Slots(plan)
}

// slotWidth is how wide a slot is cut: close to the scion's width once the wood
// is known, else the usual width. Blocked bark is kept clear of half of it.
func (c *Case) slotWidth() unit.Length {
	if w := c.wood(); w.Thickness.Given() {
		if cut, err := scion.Cuts(w.Cut()); err == nil {
			return cut.Slot.Least
		}
	}
	return trade.SlotWidth
}

// face is the outline of the stump as measured.
func (c *Case) face() girth.Oval {
	m := c.A.Measured.What
	return girth.Oval{Across: m.Across.Length, Across2: m.Across2.Length, LongWay: m.LongWay}
}

func marked(l girth.Layout, p record.SlotsMarked) *record.SlotsMarked {
	p.Slots = nil
	for _, s := range l.Slots {
		p.Slots = append(p.Slots, record.Slot{Bearing: s.Bearing})
	}
	return &p
}

func askSlots(c *Case, a *Ask) {
	if c.A.Measured == nil {
		a.Question, a.Because = "Measure the stump first.", "The slots follow from its girth."
		a.choice(Choice{Key: "1", Word: "measure", Go: StepMeasure})
		return
	}
	if c.torn() {
		a.Question, a.Because = "Say where the bark is torn first.", "The slots keep clear of it."
		a.choice(Choice{Key: "1", Word: "torn bark", Go: StepTorn})
		return
	}
	p := c.Plan()
	l, err := c.Layout(p)
	if err != nil {
		c.noBark(a, p)
		return
	}
	a.Question = slotsAsked(l, c.length(l.Gap))
	more, fewer := p, p
	more.Asked, fewer.Asked = l.Scions+1, l.Scions-1
	more.Slots, fewer.Slots = nil, nil
	room := c.roomFor(more)
	chance, odds := c.chance(l.Scions, room)
	a.Because = c.slotsWhy(l, p) + " " + chance
	a.Work = []trade.Worked{l.Work, odds}
	a.choose("1", "mark them", "", marked(l, p))
	if room {
		a.choose("2", "one more", "", &more)
	}
	if fewer.Asked > 0 {
		a.choose("3", "one fewer", "", &fewer)
	}
	if len(p.Blocked) == 0 {
		a.choice(Choice{Key: "4", Word: "block bark", Meaning: "knot or tear", Entry: c.blockEntry(p)})
	} else {
		a.choice(Choice{Key: "4", Word: "block more", Meaning: "besides " + c.arcsSaid(p.Blocked), Entry: c.blockEntry(p)})
		a.choose("5", "unblock", "none of it after all", &record.SlotsMarked{Asked: p.Asked})
	}
	a.Likely = "1"
	a.Warn = c.slotsWarn(l, p)
}

// noBark is where the bark blocked leaves no room for a slot.
func (c *Case) noBark(a *Ask, p record.SlotsMarked) {
	a.Question = "No bark is free for a slot."
	a.Because = fmt.Sprintf("Blocked: %s. Of the %s of bark all round, no %s is free for a slot.",
		c.arcsSaid(p.Blocked), c.length(c.face().Girth()), c.length(c.slotWidth()))
	anew := p
	anew.Blocked = nil
	a.choice(Choice{Key: "1", Word: "type it again", Meaning: "in place of what is blocked", Entry: c.blockEntry(anew)})
	a.choose("2", "nothing blocked", "take the blocked bark back", &record.SlotsMarked{Asked: p.Asked})
}

// roomFor says whether all slots that a plan asks for can be placed.
func (c *Case) roomFor(p record.SlotsMarked) bool {
	l, err := c.Layout(p)
	return err == nil && !l.Fewer
}

// slotsAsked is the question, with the bearings to mark.
func slotsAsked(l girth.Layout, gap string) string {
	var at []string
	for _, s := range l.Slots {
		at = append(at, s.Bearing.Words())
	}
	if len(at) == 1 {
		return fmt.Sprintf("Mark 1 slot, at %s.", at[0])
	}
	return fmt.Sprintf("Mark %d slots %s apart, at %s.", len(at), gap, strings.Join(at, "; "))
}

// slotsWarn is what to mind of a layout.
func (c *Case) slotsWarn(l girth.Layout, p record.SlotsMarked) string {
	most := trade.ScionsMost
	if c.face().Longest() > trade.WideStump {
		most = trade.ScionsMostWide
	}
	fewer := ""
	if l.Fewer {
		fewer = fmt.Sprintf("%s, %d marked: ", c.slotsWanted(p), l.Scions)
	}
	switch {
	case l.Fewer && l.Scions == 1:
		return fewer + "the free bark has no room for a second."
	case l.Tight:
		return fewer + fmt.Sprintf("%s apart is tight; nearer than %s scions crowd each other.", c.length(l.Gap), c.B.Units.Figure(trade.ClosestScions))
	case l.Fewer:
		return fewer + fmt.Sprintf("one more would stand nearer than %s.", c.B.Units.Figure(trade.ClosestScions))
	case l.Scions > most:
		return fmt.Sprintf("%d scions are more than the %d usual on this size.", l.Scions, most)
	}
	return ""
}

// slotsWanted is how many slots were wanted, by whom.
func (c *Case) slotsWanted(p record.SlotsMarked) string {
	if p.Asked > 0 {
		return fmt.Sprintf("%d asked for", p.Asked)
	}
	count, err := girth.Scions(c.face().Across, c.face().Across2)
	if err != nil {
		return "More by its size"
	}
	return fmt.Sprintf("%d by its size", count.Scions)
}

func (c *Case) slotsWhy(l girth.Layout, p record.SlotsMarked) string {
	why := fmt.Sprintf("Girth %s, one scion every %s", c.length(l.Girth), c.B.Units.Figure(trade.GirthPerScion))
	if p.Asked > 0 {
		why = fmt.Sprintf("Girth %s, %d scions asked for", c.length(l.Girth), p.Asked)
	}
	if len(p.Blocked) > 0 {
		why += ", blocked " + c.arcsSaid(p.Blocked)
	}
	return why + "; " + c.shadeWords(l, p) + "."
}

// facesShade is how far off the shade side a slot still faces it, in degrees.
const facesShade = 45

// shadeWords says which slot faces the shade side, or why none does.
func (c *Case) shadeWords(l girth.Layout, p record.SlotsMarked) string {
	shade := c.B.Shade()
	near := slices.MinFunc(l.Slots, func(x, y girth.Slot) int { return cmp.Compare(x.Bearing.From(shade), y.Bearing.From(shade)) })
	switch {
	case near.Bearing.From(shade) <= facesShade:
		return "the slot at " + near.Bearing.Words() + ", faces the shade"
	case c.allBlocked(p, shade):
		return "no slot faces the shade: the bark there is blocked"
	}
	return "no slot faces the shade: the widest spacing puts none there"
}

// allBlocked says whether no slot can stand anywhere on a side.
func (c *Case) allBlocked(p record.SlotsMarked, side unit.Bearing) bool {
	face := c.face()
	for off := unit.Bearing(-facesShade); off <= facesShade; off++ {
		if !slices.ContainsFunc(p.Blocked, func(b record.Arc) bool {
			apart := face.Along(side+off) - face.Along(b.Bearing)
			apart = max(apart, -apart)
			return min(apart, face.Girth()-apart) < (b.Width.Length+c.slotWidth())/2
		}) {
			return false
		}
	}
	return true
}

// blockEntry reads bark to be blocked besides what the plan has.
func (c *Case) blockEntry(p record.SlotsMarked) *Entry {
	return &Entry{Text: true, Asks: c.arcExample(), Read: func(text string) ([]record.Body, error) {
		blocked, err := c.readArcs(text, "blocked", c.face().Girth())
		if err != nil {
			return nil, err
		}
		b := p
		b.Slots, b.Blocked = nil, append(append([]record.Arc(nil), p.Blocked...), blocked...)
		return []record.Body{&b}, nil
	}}
}

func doneSlots(c *Case) answer {
	if c.A.Marked() == 0 {
		return open
	}
	if m := c.A.Measured; m != nil && record.Newer(*m, *c.A.Slots) && len(c.A.Grafts) == 0 {
		return open
	}
	var words []string
	for _, s := range c.A.Slots.What.Slots {
		words = append(words, s.Bearing.Point())
	}
	return told(strings.Join(words, " "))
}
