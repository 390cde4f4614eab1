package practice

import (
	"fmt"
	"math"
	"strings"

	"barkslip/core/girth"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

var placesKinds = []maker{
	{"how-many", howMany},
	{"place-the-slots", placeSlots},
	{"torn-edge", tornEdge},
	{"knot", knotOnFace},
	{"shade-side", shadeSide},
	{"room-lost", roomLost},
	nextStep(Places),
}

// face is a stump's outline for a figure.
func face(o girth.Oval) *Face {
	return &Face{Across: o.Across, AtRight: o.Across2, LongWay: o.LongWay.Deg()}
}

func (t *tale) oval() girth.Oval {
	across := t.inches(pick(&t.dice, 2, 2.5, 3, 3.5, 4, 4.5, 5, 7))
	o := girth.Oval{Across: across.Length}
	if t.chance(2) {
		o.Across2 = t.inches(across.Length.Inches() * 0.85).Length
		o.LongWay = unit.Bearing(t.of(0, 17) * 10)
	}
	return o
}

// sayOval tells the size of a stump.
func (t *tale) sayOval(o girth.Oval) *tale {
	if o.Across2 == 0 {
		return t.say("The face is round, %s across.", t.words(o.Across))
	}
	return t.say("The face is %s across the long way, which lies to %s, and %s at right angles.", t.words(o.Across), o.LongWay.Words(), t.words(o.Across2))
}

func howMany(seed uint64) Case {
	t := newTale(seed)
	o := t.oval()
	n, err := girth.Scions(o.Across, o.Across2)
	if err != nil {
		return Case{}
	}
	t.measured()
	t.sayNow().sayOval(o)
	wrong := func(k int) string {
		if k > n.Scions {
			return fmt.Sprintf("%d would stand %s apart along the bark. More scions are more chances, but each slot loosens bark, and between near slots it dies.", k, t.words(n.Girth/unit.Length(k)))
		}
		return fmt.Sprintf("%d would leave %s of bark between them. The wide gap dries and dies back before callus closes it.", k, t.words(n.Girth/unit.Length(k)))
	}
	var options []option
	least := max(1, n.Scions-t.of(0, 3))
	for k := least; k < least+4; k++ {
		options = append(options, option{digits(k), unit.Count(k, "scion"), wrong(k)})
	}
	c := t.ask("How many scions does it take?", digits(n.Scions), fmt.Sprintf("It is %s round. One scion goes to about %s of girth, at least 2 and at most 4, or 6 on a wide stump.",
		t.words(n.Girth), t.figure(trade.GirthPerScion)), n.Work, options...)
	c.Figure = &Figure{Face: face(o), Says: []string{"The face seen from above, with nothing marked on it yet."}}
	c.Rule.Step = "slots"
	return c
}

// placing is slots on a face, judged by the three things that count.
type placing struct {
	slots  []unit.Bearing
	barred bool        // a slot stands on torn bark or at a knot
	gap    unit.Length // the smallest between neighbours, along the bark
	shade  float64     // degrees from the shade side to the nearest slot
}

// judge holds a placing against the face.
func (t *tale) judge(o girth.Oval, barred []girth.Arc, slots []unit.Bearing) placing {
	p := placing{slots: slots, gap: o.Girth(), shade: 360}
	for i, s := range slots {
		next := slots[(i+1)%len(slots)]
		if len(slots) > 1 {
			far := o.Along(next) - o.Along(s)
			for far <= 0 {
				far += o.Girth()
			}
			p.gap = min(p.gap, far)
		}
		p.shade = math.Min(p.shade, s.From(t.b.Shade()))
		for _, a := range barred {
			off := math.Abs((o.Along(s) - o.Along(a.Bearing)).MM())
			off = math.Min(off, o.Girth().MM()-off)
			p.barred = p.barred || off < ((a.Width+trade.SlotWidth)/2).MM()-0.01
		}
	}
	return p
}

// turned is the slots turned by degrees.
func turned(slots []unit.Bearing, by float64) []unit.Bearing {
	var out []unit.Bearing
	for _, s := range slots {
		out = append(out, (s + unit.Bearing(by)).Normal())
	}
	return out
}

// slotWords tells a placing.
func slotWords(slots []unit.Bearing) string {
	var out []string
	for _, s := range slots {
		out = append(out, s.Words())
	}
	return "Slots at " + list(out...)
}

func degrees(slots []unit.Bearing) (out []float64) {
	for _, s := range slots {
		out = append(out, s.Deg())
	}
	return out
}

func placeSlots(seed uint64) Case {
	t := newTale(seed)
	o := girth.Oval{Across: t.inches(pick(&t.dice, 3, 3.25, 3.5)).Length}
	torn := girth.Arc{Bearing: t.b.Shade() + unit.Bearing(t.of(45, 315)), Width: t.inches(pick(&t.dice, 0.75, 1, 1.25)).Length}
	torn.Bearing = torn.Bearing.Normal()
	shade := t.b.Shade()
	plan := girth.SlotPlan{Across: o.Across, Blocked: []girth.Arc{torn}, Toward: &shade, Scions: 3}
	l, err := girth.Slots(plan)
	if err != nil {
		return Case{}
	}
	var good []unit.Bearing
	for _, s := range l.Slots {
		good = append(good, unit.Bearing(math.Round(s.Bearing.Deg())).Normal())
	}
	t.measured()
	t.sayNow().sayOval(o).say("The bark is torn at %s, over %s. Three slots are wanted.", torn.Bearing.Words(), t.words(torn.Width))
	right := t.judge(o, plan.Blocked, good)
	options := []option{{"best", slotWords(good), ""}}
	all := map[string][]unit.Bearing{options[0].words: good}
	offer := func(slots []unit.Bearing, wrong string) {
		p := t.judge(o, plan.Blocked, slots)
		same := math.Abs((p.gap-right.gap).MM()) < 3 && !p.barred && p.shade < right.shade+5
		if _, known := all[slotWords(slots)]; !known && !same {
			options = append(options, option{fmt.Sprint("wrong", len(options)), slotWords(slots), wrong})
			all[slotWords(slots)] = slots
		}
	}
	offer(turned([]unit.Bearing{torn.Bearing, torn.Bearing + 120, torn.Bearing + 240}, 0), "Even all round, but the first slot stands on torn bark: a flap that is torn dries, and its scion with it.")
	bunched := []unit.Bearing{shade, shade + 50, shade + 100}
	if p := t.judge(o, plan.Blocked, turned(bunched, 0)); p.barred {
		bunched = []unit.Bearing{shade - 100, shade - 50, shade}
	}
	offer(turned(bunched, 0), "All on the shaded half, which sounds kind. But most of the rim is left without a scion and dies back; and slots so near lift each other's bark.")
	offer(turned(good, 180), "That turns the slots round to the other side: the shade side has none, or one falls on the torn bark.")
	offer(turned(good, 60), "Turned so far that none is on the shade side, or one comes onto the torn bark.")
	offer(turned([]unit.Bearing{good[0], good[0] + 180}, 0), "Two slots leave half the girth between them on each side; this size takes three.")
	c := t.ask("Where do the slots go?", "best", fmt.Sprintf("None on torn bark, the smallest gap %s, which is as even as the torn bark allows, and one as near the shade side as that leaves.",
		t.words(l.Gap)), l.Work, options[:min(4, len(options))]...)
	for i := range c.Choices {
		c.Choices[i].Slots = degrees(all[c.Choices[i].Words])
	}
	f := face(o)
	f.Torn, f.Shade = [][2]float64{arcOn(o, torn)}, shade.Deg()
	c.Figure = &Figure{Face: f, Says: []string{"The face seen from above.", fmt.Sprintf("The shade side is %s.", shade.Words()),
		fmt.Sprintf("The bark is torn at %s, over %s.", torn.Bearing.Words(), t.words(torn.Width))}}
	c.Rule.Step = "slots"
	return c
}

// arcOn is the bearings between which an arc lies.
func arcOn(o girth.Oval, a girth.Arc) [2]float64 {
	half := 180 * float64(a.Width/o.Girth())
	return [2]float64{unit.Bearing(a.Bearing.Deg() - half).Normal().Deg(), unit.Bearing(a.Bearing.Deg() + half).Normal().Deg()}
}

// clear asks which of four places a slot can have, on a face with bark that can
// take none at all but one of them.
func (t *tale) clear(what, wrong string, fact trade.Fact) Case {
	o := girth.Oval{Across: t.inches(pick(&t.dice, 3, 3.5, 4)).Length}
	first := unit.Bearing(t.of(0, 89))
	free := t.of(0, 3)
	var barred []girth.Arc
	var at []unit.Bearing
	for i := range 4 {
		b := (first + unit.Bearing(90*i)).Normal()
		at = append(at, b)
		if i != free {
			off := unit.Bearing(t.of(-6, 6))
			barred = append(barred, girth.Arc{Bearing: (b + off).Normal(), Width: t.inches(pick(&t.dice, 0.5, 0.75)).Length})
		}
	}
	t.measured()
	t.sayNow().sayOval(o)
	f := face(o)
	says := []string{"The face seen from above."}
	for _, a := range barred {
		says = append(says, fmt.Sprintf("%s at %s, over %s.", what, a.Bearing.Words(), t.words(a.Width)))
		if what == "Torn bark" {
			f.Torn = append(f.Torn, arcOn(o, a))
		} else {
			f.Knots = append(f.Knots, a.Bearing.Deg())
		}
	}
	t.told = append(t.told, says[1:]...)
	best := ""
	var options []option
	for i, b := range at {
		p := t.judge(o, barred, []unit.Bearing{b})
		if !p.barred {
			best += digits(i)
		}
		near := ""
		for _, a := range barred {
			if a.Bearing.From(b) < 10 {
				near = fmt.Sprintf(" It is %.0f degrees from %s.", a.Bearing.From(b), a.Bearing.Words())
			}
		}
		options = append(options, option{digits(i), "At " + b.Words(), wrong + near})
	}
	c := t.ask("Which of these places can take a slot?", best, fmt.Sprintf("Half a slot's width, %s, is kept clear on both sides of it.", t.figure(trade.SlotWidth/2)),
		facts("Where can a slot stand?", fact, trade.EvenGaps), options...)
	for i := range c.Choices {
		for j, b := range at {
			if c.Choices[i].Words == "At "+b.Words() {
				c.Choices[i].Slots = []float64{at[j].Deg()}
			}
		}
	}
	c.Figure = &Figure{Face: f, Says: says}
	c.Rule.Step = "slots"
	return c
}

func tornEdge(seed uint64) Case {
	return newTale(seed).clear("Torn bark", "The flap there is torn from its edge: it dries out and takes the scion with it.", trade.WholeBark)
}

func knotOnFace(seed uint64) Case {
	return newTale(seed).clear("A knot", "Over a knot the grain runs across and the bark does not lift flat: the scion rocks and touches at two points.", trade.WholeBark)
}

func shadeSide(seed uint64) Case {
	t := newTale(seed)
	t.measured()
	t.sayNow().say("The stump is clean all round; three slots go on it, evenly. You may turn the whole pattern as you like.")
	shade := t.b.Shade()
	wrong := map[float64]string{
		90:  "The morning sun is mild, but there is a side that gets less than it.",
		180: "That is the side the midday sun stands on: dark sealer on it heats past what cambium bears.",
		270: "The afternoon sun falls on bark that is warm already; few sides are hotter.",
	}
	best, far := "", 400.0
	var options []option
	for _, by := range []float64{0, 90, 180, 270} {
		b := (shade + unit.Bearing(by)).Normal()
		options = append(options, option{digits(int(by)), "The first slot to " + b.Words(), wrong[by]})
		if d := b.From(shade); d < far {
			best, far = digits(int(by)), d
		}
	}
	if t.b.South() { // morning and afternoon change places with the sense of the turn
		options[1].wrong, options[3].wrong = options[3].wrong, options[1].wrong
	}
	c := t.ask("Which way does the first slot go?", best, fmt.Sprintf("Here the shade side is %s: a scion there stays coolest.", shade.Words()),
		facts("Why the shade side?", trade.ShadeSide, trade.WindSide, trade.DarkSealer), options...)
	f := &Face{Across: t.walk().Found.Across, Shade: shade.Deg()}
	c.Figure = &Figure{Face: f, Says: []string{"The face seen from above, round, with no slot marked."}}
	c.Rule.Step = "slots"
	return c
}

func roomLost(seed uint64) Case {
	t := newTale(seed)
	o := girth.Oval{Across: t.inches(pick(&t.dice, 2.5, 3, 3.5, 4)).Length}
	share := pick(&t.dice, 0.25, 0.5, 0.6, 0.75)
	torn := girth.Arc{Bearing: unit.Bearing(t.of(0, 359)), Width: t.inches(o.Girth().Inches() * share).Length}
	l, err := girth.Slots(girth.SlotPlan{Across: o.Across, Blocked: []girth.Arc{torn}})
	if err != nil {
		return Case{}
	}
	whole, _ := girth.Scions(o.Across, 0)
	t.measured()
	t.sayNow().sayOval(o).say("On %s of its girth of %s the bark is torn or dead. The rest is sound.", t.words(torn.Width), t.words(o.Girth()))
	wrong := func(k int) string {
		switch {
		case k > l.Scions:
			return fmt.Sprintf("On what is left %s would stand nearer than %s: the bark between them lifts and dies.", unit.Count(k, "scion"), t.figure(trade.ClosestScions))
		case k == 1:
			return "One scion is one chance. There is room for more, and two always go on where they fit side by side."
		}
		return fmt.Sprintf("With %d there is room for more: %d of them still stand %s apart or more.", k, l.Scions, t.figure(trade.ClosestScions))
	}
	least := max(1, l.Scions-t.of(0, 2))
	var options []option
	for k := least; k < least+4; k++ {
		options = append(options, option{digits(k), unit.Count(k, "slot"), wrong(k)})
	}
	why := fmt.Sprintf("Sound all round it would take %d. ", whole.Scions)
	if l.Tight {
		why += fmt.Sprintf("Two go on however close they come: here %s.", t.words(l.Gap))
	} else {
		why += fmt.Sprintf("On the sound bark %d have a smallest gap of %s.", l.Scions, t.words(l.Gap))
	}
	c := t.ask("How many slots does the sound bark carry?", digits(l.Scions), why, l.Work, options...)
	f := face(o)
	f.Torn = [][2]float64{arcOn(o, torn)}
	c.Figure = &Figure{Face: f, Says: []string{"The face seen from above.", strings.TrimSuffix(t.told[2], " The rest is sound.")}}
	c.Rule.Step = "slots"
	return c
}
