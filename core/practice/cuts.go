package practice

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

var cutsKinds = []maker{
	{"reversed-scion", func(seed uint64) Case { return checked(seed, 0) }},
	{"wavy-long-cut", func(seed uint64) Case { return checked(seed, 1) }},
	{"blind-back-cut", func(seed uint64) Case { return checked(seed, 2) }},
	{"tight-slot", func(seed uint64) Case { return checked(seed, 3) }},
	{"badly-nailed", func(seed uint64) Case { return checked(seed, 4) }},
	{"driven-down", func(seed uint64) Case { return checked(seed, 5) }},
	{"slot-width", slotWidth},
	{"nail-length", nailLength},
	nextStep(Cuts),
}

// seen is what is seen on a scion that fails one of its six checks, and what each
// deed would be good for.
var seen = [len(record.CheckWords)][]string{
	{"At each node the small bud sits above the big one, and the leaf scar above both. The long cut is smooth.",
		"The leaf scars are all over their buds, and the buds lean down toward the cut end."},
	{"Laid on a ruler the long cut shows light in the middle: the knife came out and went in again.",
		"The long cut is hollow, with a step near its end where the blade stopped."},
	{"The back of the tip still has its brown bark right to the end; the long cut in front is flat.",
		"The back cut took off the outer bark and stopped: no line of green shows at the tip."},
	{"It goes in only when you lean on it, and the bark on both sides of the slot has begun to lift.",
		"Halfway down it sticks, and the edges of the slot bulge."},
	{"One nail holds it, driven through the thin end of the tip, which has split.",
		"A single nail sits near the top; low down the scion can be lifted with a finger."},
	{"It was knocked down with the handle until the top of the long cut went out of sight below the rim.",
		"Nothing of the cut shows above the stump; the scion sits flush in its slot."},
}

// mends are what is done about each check that fails, and why that is no use where
// another fails.
var mends = [len(record.CheckWords)]option{
	{"", "Cut a new long cut at the other end, and set it the other way up.", "It stands the right way up already: turned, its buds would look down and it would never grow."},
	{"", "Cut the long cut again in one stroke with a keen blade.", "The long cut is as it should be, and each stroke more takes away wood and length."},
	{"", "Cut the back of the tip again, through the bark, until cambium shows.", "The back cut shows its green line. What is wrong is elsewhere."},
	{"", "Take it out and widen the slot a little.", "The slot is wide enough; a wider one leaves hollows that dry."},
	{"", "Nail it afresh: one nail high, one near the tip above the feather edge.", "Nails hold what fits. They do not mend what does not."},
	{"", "Lift it until a little of the cut shows above the rim, and nail it there.", "How far it stands above the rim is right; lifting it does not help here."},
}

// checked is a scion of which one check fails.
func checked(seed uint64, fails int) Case {
	t := newTale(seed)
	good := record.AllGood
	for i, check := range []*bool{&good.WayUp, &good.LongCut, &good.BackCut, &good.SlotEasy, &good.Nails, &good.Proud} {
		*check = i != fails
	}
	t.wooded()
	t.sayNow().say("Scion %d of 3 is in hand.", t.of(1, 3)).say("%s", pick(&t.dice, seen[fails]...)).say("All else about it is as it should be.")
	wrong := good.Wrong()
	all := record.Checks{}.Wrong() // what each is called when it fails, in order
	options := []option{{"leave", "Leave it as it is: the sealer covers it, and two more scions go on.", leaves[fails]}}
	of := []int{0, 1, 2, 3, 4, 5}
	shuffle(&t.dice, of)
	picked := []int{fails}
	for _, i := range of {
		if i != fails && len(picked) < 4 {
			picked = append(picked, i)
		}
	}
	for _, i := range picked {
		o := mends[i]
		o.is = all[i]
		options = append(options, o)
	}
	c := t.ask(whatNow, wrong[0], "What fails is: "+wrong[0]+". "+rights[fails], facts("What is seen on every scion?", rests[fails]...), options...)
	cut := scion.Defaults(t.fine(0.4375).Length)
	f := &Cut{Thick: cut.Thick, LongCut: cut.LongCut, Back: cut.Back, Tip: cut.Tip, Reversed: fails == 0}
	says := []string{fmt.Sprintf("A scion %s thick with a long cut of %s.", t.words(cut.Thick), t.figure(cut.LongCut))}
	if fails == 0 {
		says = append(says, "The second buds sit above the first ones.")
	}
	if fails == 2 {
		f.Back = 0
		says = append(says, "No back cut shows at its tip.")
	}
	if fails == 4 {
		f.Nails = []unit.Length{cut.LongCut / 8}
		says = append(says, "One nail only.")
	}
	c.Figure = &Figure{Cut: f, Says: says}
	c.Rule.Step = "scions"
	return c
}

// rights say why each is mended so, leaves why it is not left.
var (
	rights = [len(record.CheckWords)]string{
		"The second bud and the leaf scar lie below the first bud.",
		"Only a flat cut lies on the wood along all its length; it is made in one stroke.",
		"The tip is where callus comes first, and the back cut is what shows it cambium: it matters most.",
		"A slot a hair wider than the scion lets it slide; force tears the bark beside it.",
		"Two fine nails hold it flat at both ends, through flap and scion into the wood.",
		"A little of the cut shows above the rim: that part still joins if the cut below is uneven.",
	}
	leaves = [len(record.CheckWords)]string{
		"Upside down no scion grows for long, whatever covers it.",
		"Sealer does not bring two surfaces together. In the hollow both sides dry.",
		"Bark against wood does not join, however tight it is covered.",
		"Under the sealer the lifted bark dries back from the slot, and the scion with it.",
		"The first wind or bird moves it, and what has begun to join tears.",
		"A scion knocked home sits on a bruised tip, and nothing is left above to make up for an uneven cut.",
	}
	rests = [len(record.CheckWords)][]trade.Fact{
		{trade.WayUp}, {trade.LongCutLength, trade.RecutFaces}, {trade.BackCutTip, trade.TipThickness}, {trade.SlotTight, trade.SlotSpare},
		{trade.TwoNails, trade.NailSizes}, {trade.LittleProud, trade.ProudBy},
	}
)

func slotWidth(seed uint64) Case {
	t := newTale(seed)
	thick := t.fine(pick(&t.dice, 0.375, 0.4375, 0.5)).Length
	a, err := scion.Cuts(scion.Defaults(thick))
	if err != nil {
		return Case{}
	}
	t.wooded()
	t.sayNow().say("The scion is %s thick over the bark. You scribe its slot on the stump.", t.words(thick))
	widths := []struct {
		w     unit.Length
		wrong string
	}{
		{thick * 3 / 4, "Narrower than the scion: it is forced, and the bark beside it lifts and dies."},
		{thick, "Exactly its width sounds right, but it leaves no play: it binds halfway and lifts the bark."},
		{thick + unit.Length(pick(&t.dice, 0.0625, 0.125))*unit.Inch, ""},
		{thick*2 + unit.Inch/8, "That is wider than it needs by far: hollows on both sides that dry and rot."},
	}
	best := ""
	var options []option
	for i, w := range widths {
		if w.w >= a.Slot.Least-0.05 && w.w <= a.Slot.Most {
			best += digits(i)
		}
		options = append(options, option{digits(i), t.words(w.w) + " wide", w.wrong})
	}
	c := t.ask("How wide is the slot?", best, fmt.Sprintf("From %s to %s does no harm; near the scion's own width is best.", t.words(a.Slot.Least), t.words(a.Slot.Most)),
		trade.Worked{Question: "How wide is a slot?", Inputs: []trade.Input{{Name: "scion", Value: thick}},
			Answer: []trade.Input{{Name: "slot at least", Value: a.Slot.Least}, {Name: "slot at most", Value: a.Slot.Most}}, Facts: []trade.Fact{trade.SlotSpare, trade.SlotTight}}, options...)
	c.Rule.Step = "scions"
	return c
}

func nailLength(seed uint64) Case {
	t := newTale(seed)
	thick := t.fine(pick(&t.dice, 0.375, 0.4375, 0.5, 0.5625)).Length
	a, err := scion.Cuts(scion.Defaults(thick))
	if err != nil {
		return Case{}
	}
	sold := trade.NailsSold
	if t.b.Units == unit.Metric {
		sold = trade.NailsSoldMetric
	}
	upper := a.Nails[0]
	best := ""
	var options []option
	for i, n := range sold {
		o := option{digits(i), t.words(n), fmt.Sprintf("Longer than it needs by %s: it is harder to drive straight, splits the scion more, and more iron waits for the next saw.", t.words(n-upper.Length))}
		if n < upper.Length {
			o.wrong = fmt.Sprintf("Short by %s: it hardly bites into the wood of the stump.", t.words(upper.Length-n))
		} else if best == "" {
			best = digits(i)
		}
		options = append(options, o)
	}
	t.wooded()
	t.sayNow().say("The scion is %s thick, its long cut %s. Where the upper nail goes in, %s of it is left. The bark flap stays over it.", t.words(thick), t.figure(trade.LongCut), t.words(upper.Thickness))
	c := t.ask("Which nail for the upper one?", best, fmt.Sprintf("Flap, scion and %s into the wood come to %s: the next size sold is taken.", t.figure(trade.NailBite), t.words(upper.Length)),
		trade.Worked{Question: "How long is the upper nail?", Formula: "bark flap + scion where the nail goes through + bite into the wood",
			Inputs: []trade.Input{{Name: "scion there", Value: upper.Thickness}}, Answer: []trade.Input{{Name: "upper nail", Value: upper.Length}},
			Facts: []trade.Fact{trade.TwoNails, trade.NailSizes, trade.NailsAreSold}}, options...)
	c.Figure = &Figure{Cut: &Cut{Thick: thick, LongCut: trade.LongCut, Back: trade.BackCut, Tip: trade.TipLeft, Nails: []unit.Length{upper.FromTop, a.Nails[1].FromTop}},
		Says: []string{fmt.Sprintf("A scion %s thick with both nails marked on its long cut.", t.words(thick))}}
	c.Rule.Step = "scions"
	return c
}
