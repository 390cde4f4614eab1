package walk

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
)

func sealSteps() []*Step {
	return []*Step{
		{ID: StepSeal, Part: PartSeal, Name: "seal",
			LookFor:  "Sealer over every slot and below the lowest end of any split, the top and the scion tips.",
			Why:      "A scion dries out within days; bare sealer cracks, wrap squares between the coats hold it.",
			NotRight: "A split that ran on: follow it down and seal below its end.",
			Cautions: []trade.Caution{trade.LabelIsLaw},
			Facts:    []trade.Fact{trade.SealBelow, trade.WrapSquares, trade.BareCracks}, done: doneSeal, ask: askSeal},
		{ID: StepWhite, Part: PartSeal, Name: "paint white",
			LookFor:  "Sealer dry to the touch; then white water-based paint over everything, buds too.",
			Why:      "Dark sealer in hot sun injures the graft within hours.",
			NotRight: "Still wet: shade it and look again in half an hour. Never oil paint on buds.",
			Cautions: []trade.Caution{trade.LabelIsLaw, trade.CrewHeat},
			Facts:    []trade.Fact{trade.WhiteIn, trade.DarkSealer, trade.WhiteThinning, trade.NoOilPaint, trade.StillWet, trade.InjuryHour}, done: doneWhite, ask: askWhite},
		{ID: StepRing, Part: PartSeal, Name: "earwig ring",
			LookFor:  "A tape ring with bait below the graft.",
			Why:      "Earwigs eat opening buds two to three weeks on.",
			Cautions: []trade.Caution{trade.LabelIsLaw}, Facts: []trade.Fact{trade.Earwigs},
			applies: func(c *Case) bool { return c.B.Earwigs }, done: doneRing, ask: askRing},
	}
}

func askSeal(c *Case, a *Ask) {
	a.Question = "Seal it. Wrapped or bare?"
	a.Because = "Sealer, wrap squares, sealer again; then the top and the scion tips."
	a.Warn = c.beforeSealing()
	if !c.sunWords(a, c.Now) {
		a.Warn = joined(a.Warn, c.stillHelps())
	}
	a.choose("1", "wrapped", "wrap squares between the coats", &record.Sealed{Cover: record.Wrapped})
	a.choose("2", "bare", fmt.Sprintf("sealer alone; reseal in %d days", trade.ResealDays), &record.Sealed{Cover: record.Bare})
	if empty := c.emptySlots(); len(empty) > 0 {
		for i := range a.Choices {
			a.Choices[i].Doubt = c.staysEmpty(empty, a.Choices[i])
		}
	}
	if ch, ok := c.broke("0"); ok {
		a.choice(ch)
	}
	a.Likely = "1"
	if c.Before.Cover == record.Bare {
		a.Likely = "2"
	}
}

// emptySlots is the slots marked that have no scion and are not said to stay
// empty, while there are any scions.
func (c *Case) emptySlots() (out []int) {
	if c.A.AllSet() || len(c.A.Grafts) == 0 {
		return nil
	}
	for n := 1; n <= c.A.Marked(); n++ {
		if !c.settled(n) {
			out = append(out, n)
		}
	}
	return out
}

// staysEmpty asks, before a graft with an open slot is sealed, whether the slot
// stays empty.
func (c *Case) staysEmpty(empty []int, seal Choice) *Doubt {
	var bodies []record.Body
	var words []string
	for _, n := range empty {
		bodies = append(bodies, &record.SlotEmpty{Slot: n})
		words = append(words, strconv.Itoa(n))
	}
	what := "Slot " + words[0] + " has"
	if len(words) > 1 {
		what = "Slots " + strings.Join(words, ", ") + " have"
	}
	return &Doubt{what + " no scion yet.", []Choice{
		{Key: "1", Word: "set it", Meaning: "back to the scions", Go: StepScion},
		{Key: "2", Word: "stays empty", Meaning: "seal it without", Bodies: append(bodies, seal.Bodies...)},
	}}
}

// beforeSealing is what to mind before a graft goes under sealer: what was not
// right with a scion, and how far a split ran.
func (c *Case) beforeSealing() string {
	var out, bad []string
	for _, g := range c.A.Grafts {
		if wrong := g.Set.What.Checks.Wrong(); len(wrong) > 0 {
			bad = append(bad, fmt.Sprintf("Scion %d: %s.", g.Slot, strings.Join(wrong, ", ")))
		}
		switch s := g.Set.What.Split; {
		case s == record.SplitUnmeasured:
			out = append(out, fmt.Sprintf("The split at slot %d ran on: seal below its end.", g.Slot))
		case s.Given():
			out = append(out, fmt.Sprintf("The split at slot %d ran %s: seal below its end.", g.Slot, c.length(s.Length)))
		}
	}
	switch len(bad) {
	case 0:
	case 1:
		bad = append(bad, "Mend it before you seal.")
	default:
		bad = append(bad, "Mend them before you seal.")
	}
	return strings.Join(append(bad, out...), " ")
}

// sunWords says what the day's sun does to a graft sealed at a time, and what still
// helps; false where that cannot be reckoned. That it passes no limit is no reason
// not to paint. By when it must be white is said once: by the white clock where it
// runs, else here.
func (c *Case) sunWords(a *Ask, sealed time.Time) bool {
	heat, ok := c.Heat(sealed)
	if !ok {
		if c.B.Placed && c.A.Sealed == nil {
			a.Because += " d records the day's weather, to work out the sun on dark sealer."
		}
		return false
	}
	peak := max(heat.Black.Side.Peak, heat.Black.Scion.Peak)
	day := "today"
	if c.B.Day(sealed) != c.B.Day(c.Now) {
		day = "that day"
	}
	white := max(heat.White.Side.Peak, heat.White.Scion.Peak)
	hot := fmt.Sprintf(" Dark sealer would reach %s %s, white paint %s.", c.B.Units.Temperature(peak), day, c.B.Units.Temperature(white))
	_, running := c.WhiteDue()
	switch {
	case heat.DryFirst && !running:
		hot += fmt.Sprintf(" Shade it until it is dry; paint it white by %s.", c.when(c.whiteBy()))
	case heat.DryFirst:
		hot += " Shade it until it is dry."
	case heat.WhiteBefore != nil && !running:
		hot += fmt.Sprintf(" Paint it white by %s.", c.when(c.whiteBy()))
	case heat.WhiteBefore == nil:
		hot += " Paint it all the same, once dry."
	}
	a.Because += hot
	a.Work = append(a.Work, heat.Work)
	return true
}

// whiteBy is by when the graft must be white: as the running clock says, else as it
// would say if the graft were sealed now.
func (c *Case) whiteBy() time.Time {
	if d, running := c.WhiteDue(); running {
		return d.By
	}
	return due.WhiteBy(c.S, c.B, c.Now)
}

// WhiteBy is the one time by which the graft must be white.
func (c *Case) WhiteBy() time.Time { return c.whiteBy() }

func doneSeal(c *Case) answer {
	if !c.A.IsSealed() {
		return open
	}
	return told(string(c.A.Sealed.What.Cover) + " " + c.when(c.A.Sealed.At))
}

// WhiteDue is the running white clock, if there is one.
func (c *Case) WhiteDue() (due.Due, bool) { return c.Due(due.White) }

func askWhite(c *Case, a *Ask) {
	d, running := c.WhiteDue()
	if !running {
		a.Question, a.Because = "Is it painted white?", "White keeps the sun's heat off the sealer."
	} else {
		open := d.Opens
		a.Until = &open
		a.Because = d.Why(c.B)
		switch {
		case d.Late(c.Now):
			a.Question = fmt.Sprintf("Paint it white now: it was due by %s.", c.when(d.By))
		case d.Open(c.Now):
			a.Question = fmt.Sprintf("Is the sealer dry? Paint it white by %s.", c.when(d.By))
		case c.shadeFirst():
			a.Question = fmt.Sprintf("Shade it until the sealer is dry. Paint it white at %s.", c.when(d.Opens))
		default:
			a.Question = fmt.Sprintf("Paint it white when the sealer is dry, %s to %s.", c.when(d.Opens), c.when(d.By))
		}
	}
	if coat := c.A.Coat(); !coat.IsZero() {
		c.sunWords(a, coat)
	}
	a.choose("1", "painted white", "over everything, buds too", &record.PaintedWhite{})
	a.Choices[0].Doubt = c.wetStill()
	a.choose("2", "still wet", "look again in 30 min", &record.StillWet{})
	c.rain(a)
	a.choice(Choice{Key: "4", Word: "next stump", Meaning: "its clock stays above", Leave: true})
	a.Likely = "1"
	if running && c.Now.Before(d.Opens) {
		a.Likely = "4"
	}
}

// shadeFirst says whether the day's sun would harm the dark sealer before it
// can be dry.
func (c *Case) shadeFirst() bool {
	if c.A.Sealed == nil {
		return false
	}
	heat, ok := c.Heat(c.A.Sealed.At)
	return ok && heat.DryFirst
}

// wetStill doubts white over sealer that can hardly be dry: under half of the
// least time it takes.
func (c *Case) wetStill() *Doubt {
	if c.A.Sealed == nil || c.again {
		return nil
	}
	since := c.Now.Sub(c.A.Sealed.At)
	if since < 0 || since >= trade.WhiteOpensHours*time.Hour/2 {
		return nil
	}
	return &Doubt{Says: fmt.Sprintf("Sealed only %d minutes ago: the sealer takes %d to %d hours to dry.", int(since.Minutes()), trade.WhiteOpensHours, trade.WhiteByHours), Ways: []Choice{
		{Key: "0", Word: "next stump", Meaning: "paint it white when it is dry", Leave: true},
		{Key: "5", Word: "it is dry", Meaning: "painted white now", Bodies: []record.Body{&record.PaintedWhite{}}},
	}}
}

func doneWhite(c *Case) answer {
	if !c.A.IsWhite() {
		return open
	}
	return told(c.when(c.A.White.At))
}

func askRing(c *Case, a *Ask) {
	a.Question = "Is the earwig ring on?"
	a.Because = "Earwigs are a problem on this block, by its settings."
	a.choose("1", "ring set", "the label is the law", &record.RingSet{})
	a.choice(Choice{Key: "2", Word: "later", Meaning: "it stays due", Leave: true})
	a.Likely = "1"
}

func doneRing(c *Case) answer {
	if n := len(c.A.Rings); n > 0 {
		return told(c.when(c.A.Rings[n-1].At))
	}
	return open
}

// rain is what rain did, by what it fell on: sealer that is not white is wet again;
// white that was painted today, or is asked about again, may be washed off and is
// painted again. After hard rain the seal is looked at.
func (c *Case) rain(a *Ask) {
	if !c.A.IsWhite() {
		a.choose("3", "rained on", "wet again: look in 30 min", &record.StillWet{Rain: true})
		return
	}
	a.choose("3", "washed off", "paint it again when dry", &record.WashedOff{})
	a.choice(c.hardRain())
}

// hardRain is hard rain on the seal, at any time after sealing.
func (c *Case) hardRain() Choice {
	return Choice{Key: "5", Word: "hard rain", Meaning: "then check the seal", Bodies: []record.Body{&record.RainedHard{}}}
}
