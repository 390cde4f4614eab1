package practice

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

var woodKinds = []maker{
	{"thickness", thickness},
	{"cut-this-stick", cutThisStick},
	{"which-stick", whichStick},
	{"single-budded", singleBudded},
	{"doubtful-lot", doubtfulLot},
	{"pith", pith},
	nextStep(Wood),
}

func thickness(seed uint64) Case {
	t := newTale(seed)
	across := t.inches(pick(&t.dice, 1.5, 1.75, 2.25, 2.5, 2.75, 3.5, 4))
	t.measured()
	t.sayNow().say("The stump is %s across. Four sticks lie on the wet sack, all dormant, cold and two-budded.", t.words(across.Length))
	var options []option
	best := ""
	var fit scion.FitAnswer
	limits, err := scion.Fit(scion.Wood{Across: across.Length, Thick: unit.Inch / 2})
	if err != nil {
		return Case{}
	}
	for _, of := range []unit.Length{limits.Least * 11 / 20, limits.Least * 4 / 5, (limits.Least + limits.Most) / 2, limits.Most * 13 / 10} {
		thick := t.fine(float64(of / unit.Inch)).Length
		a, err := scion.Fit(scion.Wood{Across: across.Length, Thick: thick})
		if err != nil {
			return Case{}
		}
		o := option{is: t.words(thick), words: "The one " + t.words(thick) + " thick"}
		switch {
		case a.Thin:
			o.wrong = fmt.Sprintf("At %s it is thin for this stump: little wood, little food in it, and it rocks behind so thick a bark.", t.words(thick))
		case a.Stout:
			o.wrong = fmt.Sprintf("At %s it is stout for this stump: it bows the bark off on both sides and leaves a hollow.", t.words(thick))
		default:
			best += o.is
		}
		options, fit = append(options, o), a
	}
	c := t.ask("Which one is cut for it?", best, fmt.Sprintf("%s to %s suits a stump of this size.", t.words(fit.Least), t.words(fit.Most)), fit.Work, options...)
	c.Rule.Step = "thickness"
	return c
}

// stick is a stick of a length with nodes at places from the butt, in inches.
func (t *tale) stick(long float64, nodes ...scion.Node) scion.Stick {
	return scion.StickDefaults(unit.Length(long)*unit.Inch, nodes)
}

func node(at float64, b scion.Buds) scion.Node {
	return scion.Node{At: unit.Length(at) * unit.Inch, Buds: b}
}

var budCount = map[scion.Buds]int{scion.BothBuds: 2, scion.FirstBud: 1, scion.NoBud: 0}

// drawn is a stick as it is drawn.
func drawn(s scion.Stick) *Stick {
	d := &Stick{Length: s.Length}
	for _, n := range s.Nodes {
		d.Nodes = append(d.Nodes, Node{n.At, budCount[n.Buds]})
	}
	return d
}

// stickSays tells a stick node by node.
func (t *tale) stickSays(s scion.Stick) []string {
	words := map[scion.Buds]string{scion.BothBuds: "both buds", scion.FirstBud: "the first bud only", scion.NoBud: "none"}
	var nodes []string
	for _, n := range s.Nodes {
		nodes = append(nodes, t.words(n.At)+" "+words[n.Buds])
	}
	return []string{fmt.Sprintf("The stick is %s long.", t.words(s.Length)), "Its nodes from the butt: " + strings.Join(nodes, ", ") + "."}
}

func cutThisStick(seed uint64) Case {
	t := newTale(seed)
	buds := func() scion.Buds { return pick(&t.dice, scion.BothBuds, scion.BothBuds, scion.FirstBud) }
	s := t.stick(float64(t.of(20, 26)))
	for at := 3.5 + float64(t.of(0, 4))*0.25; at < s.Length.Inches()-1.5; at += 1.25 + float64(t.of(0, 6))*0.25 {
		s.Nodes = append(s.Nodes, node(at, buds()))
	}
	a, err := scion.CutStick(s)
	if err != nil || a.Total == 0 {
		return Case{}
	}
	t.wooded()
	t.sayNow().told = append(t.told, t.stickSays(s)...)
	t.say("A scion has two nodes, %s of wood below the lower for the long cut and the rest, %s above the upper, and is %s long at most. %s is lost at each end.",
		t.figure(s.LongCut+s.Below), t.figure(s.Above), t.figure(s.Longest), t.figure(s.TrimButt))
	wrong := func(k int) string {
		if k > a.Total {
			return fmt.Sprintf("For %d the pieces would have to overlap, or one would lack wood for its long cut.", k)
		}
		if k == 0 {
			return fmt.Sprintf("It has nodes enough: cut with care it gives %d.", a.Total)
		}
		return fmt.Sprintf("With %d of them wood is wasted: cut with care the stick gives %d.", k, a.Total)
	}
	var options []option
	least := max(0, a.Total-t.of(0, 3))
	for k := least; k < least+4; k++ {
		word := unit.Count(k, "scion")
		if k == 0 {
			word = "None"
		}
		options = append(options, option{digits(k), word, wrong(k)})
	}
	var cuts []string
	d := drawn(s)
	for _, p := range a.Scions {
		cuts = append(cuts, t.words(p.From)+" to "+t.words(p.To))
		d.Pieces = append(d.Pieces, [2]unit.Length{p.From, p.To})
	}
	c := t.ask("How many scions does it give at best?", digits(a.Total), fmt.Sprintf("Cut from the butt at %s; %d of them with both buds at every node.", list(cuts...), a.Paired), a.Work, options...)
	c.Figure = &Figure{Stick: &Stick{Length: d.Length, Nodes: d.Nodes}, Says: t.stickSays(s)}
	for i := range c.Choices {
		if c.Choices[i].Best {
			c.Choices[i].Pieces = d.Pieces
		}
	}
	c.Rule.Step = "buds"
	return c
}

// whichStick asks which of four sticks gives the most scions.
func whichStick(seed uint64) Case {
	t := newTale(seed)
	kinds := []struct {
		words, wrong string
		s            scion.Stick
	}{
		{"A stick with its nodes close together, two buds at each", "",
			t.stick(14, node(4, scion.BothBuds), node(5.25, scion.BothBuds), node(9.5, scion.BothBuds), node(10.75, scion.BothBuds))},
		{"A long, whippy stick with nodes far apart", "It looks like the most wood. But from one node to the next but one is more than a scion is long: it gives none.",
			t.stick(18, node(4.5, scion.BothBuds), node(9.5, scion.BothBuds), node(14.5, scion.BothBuds))},
		{"A stick with its nodes crowded at the butt end", "Buds enough, but below them no wood for a long cut.",
			t.stick(12, node(0.75, scion.BothBuds), node(1.5, scion.BothBuds), node(2.25, scion.BothBuds))},
		{"A stick of which most buds have been knocked off", "Every other node is bare. A scion wants two nodes with buds within its length.",
			t.stick(14, node(4, scion.FirstBud), node(6.5, scion.NoBud), node(9.5, scion.NoBud), node(11, scion.FirstBud))},
	}
	long := t.of(0, 3)
	best, most := -1, 0
	var options []option
	var work trade.Worked
	why := ""
	t.wooded()
	t.sayNow().say("Two scions are wanted from one stick. All four are dormant and of the right thickness:")
	for i, k := range kinds {
		for n := range k.s.Nodes {
			k.s.Nodes[n].At += unit.Length(long) * unit.Inch / 16
		}
		a, err := scion.CutStick(k.s)
		if err != nil {
			return Case{}
		}
		if a.Total > most {
			best, most, work, why = i, a.Total, a.Work, fmt.Sprintf("It gives %s; short internodes are what makes a stick rich.", unit.Count(a.Total, "scion"))
		}
		options = append(options, option{digits(i), k.words + ": " + lowerFirst(strings.Join(t.stickSays(k.s)[1:], " ")), k.wrong})
	}
	c := t.ask("Which stick do you cut?", digits(best), why, work, options...)
	c.Rule.Step = "wood"
	return c
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

func singleBudded(seed uint64) Case {
	t := newTale(seed)
	pair := t.chance(2) // of paired wood there is some
	t.wooded()
	s1 := t.stick(9, node(4, scion.FirstBud), node(5.5, scion.FirstBud))
	s2 := t.stick(9, node(4, scion.BothBuds), node(5.5, scion.BothBuds))
	one, err1 := scion.CutStick(s1)
	two, err2 := scion.CutStick(s2)
	if err1 != nil || err2 != nil {
		return Case{}
	}
	t.sayNow().say("The stump is ready. The stick in hand is sound, dormant and of the right thickness, but at each node it carries the first bud only: no second one under it.")
	best, right := "use", "One bud at each of two nodes still are two chances. It is second best, and better than a face that dries."
	if pair {
		t.say("In the same box lies a stick as good, with a second bud under each first one.")
		best, right = "pair", "A second bud under each first one doubles the chances: up to four on a scion of two nodes."
		if two.Paired <= one.Paired {
			best = ""
		}
	} else {
		t.say("There is no other wood of this variety, and the face is cut.")
		if one.Total == 0 {
			best = ""
		}
	}
	options := []option{
		{"use", "Cut the single-budded stick.", "It would do if it were all there is. With two-budded wood at hand you give away half the buds."},
		{"upside", "Cut it longer, with four nodes, to make up for the buds.", "A long scion dries and is broken by wind. Two nodes are what a scion can feed."},
		{"none", "Set no scion today; leave the stump for next year.", "Single-budded wood is not refused. A year is a high price for a second bud."},
	}
	if pair {
		options = append(options, option{"pair", "Cut the stick with second buds.", ""})
	} else {
		options = append(options, option{"wait", "Leave the fresh face open and look for better wood.", "A fresh face is good for the hour. Tomorrow it is cut again, lower."})
	}
	c := t.ask(whatNow, best, right, facts("What is single-budded wood worth?", trade.SingleBudded, trade.TwoNodes, trade.NodeGroups), options...)
	c.Figure = &Figure{Stick: drawn(s1), Says: t.stickSays(s1)}
	c.Rule.Step = "buds"
	return c
}

// lot is scion wood as it was received, with a reading of its store.
func (t *tale) lot(days int, store unit.Temperature, held bool) *record.Lot {
	day := t.b.Day(t.now)
	l := &record.Lot{ID: record.ID{0x10}}
	l.Received = &record.Said[record.LotReceived]{What: record.LotReceived{Lot: l.ID, Name: "L", Variety: t.b.Variety, Cut: day.Add(-days)}}
	l.Readings = []record.Said[record.StoreRead]{{At: t.now.AddDate(0, 0, -20), What: record.StoreRead{Lot: l.ID, Temp: record.Degrees{Temperature: store}}}}
	if held {
		l.Held = &record.Said[record.LotHeld]{What: record.LotHeld{Lot: l.ID, Held: true, Why: "unknown health of its tree"}}
	}
	return l
}

func doubtfulLot(seed uint64) Case {
	t := newTale(seed)
	t.marked()
	cold := unit.Fahrenheit(float64(t.of(32, 36)))
	warm := unit.Fahrenheit(float64(t.of(43, 52)))
	fresh, old := t.of(80, 100), t.of(165, 220)
	t.sayNow().say("The stump is marked and %s is planned. Four lots of it are in the shed:", t.b.Variety)
	var options []option
	best, right := "", ""
	for i, l := range []struct {
		days  int
		store unit.Temperature
		held  bool
		wrong string
	}{
		{fresh, cold, false, ""},
		{fresh - 30, warm, false, "It is the youngest, but wood kept warm has spent its food: the buds start before the union can feed them, and collapse."},
		{old, cold, false, "It was kept cold, and looks it. But wood as old as this has dried and lived on its own food for too long."},
		{fresh - 10, cold, true, "It was kept as it should be; still, what is held back for its health is not carried from tree to tree on your knife."},
	} {
		lot := t.lot(l.days, l.store, l.held)
		words := fmt.Sprintf("Cut %s ago, its store stood at %s", dayCount(l.days), t.b.Units.Temperature(l.store))
		if l.held {
			words += ", held back: the health of its tree is not known"
		}
		doubts := lot.Doubts(t.b, t.b.Day(t.now))
		if len(doubts) == 0 {
			best += digits(i)
			right = fmt.Sprintf("Nothing speaks against it: not past %d days, never over %s, not held.", trade.StoreOldDays, t.b.Units.Temperature(trade.StoreWarm))
		}
		options = append(options, option{digits(i), words + ".", l.wrong})
	}
	c := t.ask("Which lot do you take?", best, right, facts("What speaks against wood?", trade.StoreCold, trade.StoreLimits, trade.CherryLeafroll), options...)
	c.Rule.Step = "wood"
	return c
}

func pith(seed uint64) Case {
	t := newTale(seed)
	across := t.inches(pick(&t.dice, 2.75, 3, 2.5))
	t.wooded()
	t.sayNow().say("The stump is %s across. You cut the end of four sticks and look at the pith:", t.words(across.Length))
	var options []option
	best, right := "", ""
	var work trade.Worked
	for i, w := range []struct {
		thick, pith float64
		words       string
		wrong       string
	}{
		{0.40625, 0.125 + float64(t.of(0, 1))*0.03125, "from the middle of the shoot", ""},
		{0.375, 0.25, "from the soft tip", "The pith is over half of it: little wood is left for the long cut, and it shrivels."},
		{0.25, 0.09375, "a thin side shoot", "Hardly any pith, but thin for this stump: it holds little food and rocks in its slot."},
		{0.6875, 0.25, "from the stout base", "Firm and full of food, but stout for this stump: it stands the bark off on both sides."},
	} {
		thick, p := t.fine(w.thick).Length, t.fine(w.pith).Length
		a, err := scion.Fit(scion.Wood{Across: across.Length, Thick: thick, Pith: p})
		if err != nil {
			return Case{}
		}
		if len(a.Cautions) == 0 {
			best += digits(i)
			right, work = fmt.Sprintf("%s to %s suits this stump, and the pith is not over half of it.", t.words(a.Least), t.words(a.Most)), a.Work
		}
		options = append(options, option{digits(i), fmt.Sprintf("%s thick, pith %s, %s.", t.words(thick), t.words(p), w.words), w.wrong})
	}
	c := t.ask("Which one do you cut?", best, right, work, options...)
	c.Rule.Step = "thickness"
	return c
}
