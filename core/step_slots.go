package core

import (
	"fmt"
	"strings"

	"barkslip/core/girth"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Shade is the bearing of the stump's shade side: north-north-east in the
// north, mirrored in the south.
func (b *Block) Shade() unit.Bearing {
	if b.South() {
		return 180 - 22.5
	}
	return 22.5
}

// plan is the slots asked for so far.
func (c *Case) plan() SlotsMarked {
	if c.A.Slots != nil && !newer(*c.A.Measured, *c.A.Slots) {
		return c.A.Slots.What
	}
	p := SlotsMarked{}
	if n := len(c.A.FreshCuts); n > 0 {
		p.Blocked = c.A.FreshCuts[n-1].What.Torn
	}
	return p
}

// Layout reckons where the slots go for a number asked and bark blocked.
func (c *Case) Layout(p SlotsMarked) (girth.Layout, error) {
	m := c.A.Measured.What
	shade := c.B.Shade()
	plan := girth.SlotPlan{Across: m.Across.Length, Across2: m.Across2.Length, LongWay: m.LongWay, Scions: p.Asked, Toward: &shade}
	for _, b := range p.Blocked {
		plan.Blocked = append(plan.Blocked, girth.Arc{Bearing: b.Bearing, Width: b.Width.Length})
	}
	return girth.Slots(plan)
}

func marked(l girth.Layout, p SlotsMarked) *SlotsMarked {
	p.Slots = nil
	for _, s := range l.Slots {
		p.Slots = append(p.Slots, Slot{s.Bearing})
	}
	return &p
}

func askSlots(c *Case, a *Ask) {
	if c.A.Measured == nil {
		a.Question, a.Because = "Measure the stump first.", "The slots are reckoned from its girth."
		a.choice(Choice{Key: "1", Word: "measure", Go: StepMeasure})
		return
	}
	p := c.plan()
	l, err := c.Layout(p)
	if err != nil {
		a.Question = "No bark is free for a slot."
		a.Because = err.Error()
		a.choice(Choice{Key: "3", Word: "block other bark", Meaning: "type it anew", Entry: c.blockEntry(p)})
		a.choose("4", "nothing blocked", "take the blocked bark back", &SlotsMarked{Asked: p.Asked})
		return
	}
	a.Question = fmt.Sprintf("%s, %s apart. Mark them so?", slotsWord(l.Scions), c.length(l.Gap))
	chance, odds := c.chance(l.Scions)
	a.Because = c.slotsWhy(l, p) + " " + chance
	a.Work = []trade.Worked{l.Work, odds}
	a.choose("1", "mark them", "", marked(l, p))
	more, fewer := p, p
	more.Asked, fewer.Asked = l.Scions+1, max(l.Scions-1, 1)
	more.Slots, fewer.Slots = nil, nil
	a.choose("2", "one more", "", &more)
	a.choose("3", "one fewer", "", &fewer)
	a.choice(Choice{Key: "4", Word: "block bark", Meaning: "knot or tear", Entry: c.blockEntry(p)})
	if len(p.Blocked) > 0 {
		a.choose("5", "unblock", "none after all", &SlotsMarked{Asked: p.Asked})
	}
	a.Likely = "1"
	most := trade.ScionsMost
	if c.A.Measured.What.Across.Length > trade.WideStump {
		most = trade.ScionsMostWide
	}
	switch {
	case l.Tight:
		a.Warn = fmt.Sprintf("%s apart is tight; under %s they crowd.", c.length(l.Gap), c.length(trade.ClosestScions))
	case l.Fewer:
		a.Warn = "One fewer than asked: the free bark holds no more at 2 in apart."
	case l.Scions > most:
		a.Warn = fmt.Sprintf("%d scions are more than the usual %d on this size.", l.Scions, most)
	}
}

func slotsWord(n int) string {
	if n == 1 {
		return "1 slot"
	}
	return fmt.Sprintf("%d slots", n)
}

func (c *Case) slotsWhy(l girth.Layout, p SlotsMarked) string {
	why := fmt.Sprintf("Girth %s, one scion to %s of it", c.length(l.Girth), c.length(trade.GirthPerScion))
	if p.Asked > 0 {
		why = fmt.Sprintf("Girth %s, %d asked for", c.length(l.Girth), p.Asked)
	}
	if len(p.Blocked) > 0 {
		why += map[bool]string{true: ", one stretch of bark blocked", false: fmt.Sprintf(", %d stretches of bark blocked", len(p.Blocked))}[len(p.Blocked) == 1]
	}
	return why + "; one faces the shade side."
}

func (c *Case) blockEntry(p SlotsMarked) *Entry {
	return &Entry{Asks: "bearing:length, such as 120:2in", Read: func(text string) ([]Body, error) {
		blocked, err := c.readArcs(text, "blocked")
		if err != nil {
			return nil, err
		}
		p.Slots = nil
		p.Blocked = append(append([]Arc(nil), p.Blocked...), blocked...)
		return []Body{&p}, nil
	}}
}

func doneSlots(c *Case) string {
	if c.A.Marked() == 0 || c.A.Measured != nil && newer(*c.A.Measured, *c.A.Slots) {
		return ""
	}
	var words []string
	for _, s := range c.A.Slots.What.Slots {
		words = append(words, fmt.Sprintf("%03.0f", s.Bearing.Deg()))
	}
	return strings.Join(words, " ")
}
