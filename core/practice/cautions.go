package practice

import (
	"slices"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/walk"
)

var cautionsKinds = []maker{
	{"at-the-saw", func(seed uint64) Case {
		return cautioned(seed, trade.SawKnifeDrill, walk.StepHeight, walk.StepFreshCut, walk.StepLimbOff)
	}},
	{"at-the-drill", func(seed uint64) Case { return cautioned(seed, trade.SawKnifeDrill, walk.StepDrill) }},
	{"from-tree-to-tree", func(seed uint64) Case {
		return cautioned(seed, trade.CleanBlades, walk.StepGashes, walk.StepNewGashes, walk.StepSprouts, walk.StepPinch, walk.StepScratch)
	}},
	{"paint-and-bait", func(seed uint64) Case {
		return cautioned(seed, trade.LabelIsLaw, walk.StepSeal, walk.StepWhite, walk.StepRing, walk.StepReseal)
	}},
	{"wood-from-elsewhere", func(seed uint64) Case { return cautioned(seed, trade.MovingWood, walk.StepWood) }},
	{"nails-in-the-stem", func(seed uint64) Case { return cautioned(seed, trade.NailsStay, walk.StepSecond, walk.StepNurseOff) }},
	{"a-hot-day", func(seed uint64) Case { return cautioned(seed, trade.CrewHeat, walk.StepVisit, walk.StepWhite) }},
	{"more-than-six-gashes", func(seed uint64) Case { return noted(seed, 0) }},
	{"no-limb-left", func(seed uint64) Case { return noted(seed, 1) }},
	{"below-browse-height", func(seed uint64) Case { return noted(seed, 2) }},
}

// dangers are what somebody is about to do against each caution, by its id, and at
// which step; heeds what is done instead.
var dangers = map[string]map[walk.StepID][]string{
	trade.SawKnifeDrill.ID: {
		walk.StepHeight: {"A hand stands on the third rung, alone in the row, and reaches out over the stem with the chain saw.",
			"A hand saws at shoulder height, without glasses, pulling the blade toward himself. Nobody else is in the block."},
		walk.StepFreshCut: {"To keep the bark whole a hand pulls the knife toward his own thumb, standing on a box."},
		walk.StepLimbOff:  {"The limb is awkward to reach. A hand climbs into the fork to saw it off; the others have gone to eat."},
		walk.StepDrill: {"A hand kneels in front of the stem and leans his chest on the drill, without glasses; the bit comes up toward him.",
			"The bit has jammed in the stem. A hand pulls at it with the drill running; the others are in another row."},
	},
	trade.CleanBlades.ID: {
		walk.StepGashes:    {"You gashed a tree with knobbly galls on its root collar, and walk on to the next one with the same knife."},
		walk.StepNewGashes: {"The last stem had a rough swelling at the ground. The axe goes on to this one as it is."},
		walk.StepSprouts:   {"Tough sprouts are cut, tree after tree, with one pair of shears. The last tree looked sick."},
		walk.StepPinch:     {"Rivals are cut back with the shears along the whole row, without a stop. One tree in it is stunted and galled."},
		walk.StepScratch:   {"You scratch scion after scion with one knife, those of a sick tree among them."},
	},
	trade.LabelIsLaw.ID: {
		walk.StepSeal:   {"The can of sealer has lost its label. Somebody says it is surely the right one, and thins it with petrol."},
		walk.StepWhite:  {"There is a drum of white in the shed without a label; it smells of oil and is cheap."},
		walk.StepRing:   {"To make sure of the earwigs a hand doubles the poison in the bait; the label gives a dose."},
		walk.StepReseal: {"A fungicide from another crop is to be stirred into the sealer. Its label does not name walnut."},
	},
	trade.MovingWood.ID: {
		walk.StepWood: {"A friend across the state line offers a bundle of scion wood from an old tree that looks well enough.",
			"On a journey you cut sticks from a fine tree by the road, to bring them home in the cool box."},
	},
	trade.NailsStay.ID: {
		walk.StepSecond:   {"The second scion comes off close to the union, where it was set two years ago. A hand starts the saw.", "Low down, where the scion was held, the saw is to go through the old graft."},
		walk.StepNurseOff: {"A nurse limb comes off just under the graft, where scions were held; the saw is new."},
	},
	trade.CrewHeat.ID: {
		walk.StepVisit: {"Two hundred stumps are to be looked at by evening, at 38 C. The crew has no water left and wants to push through."},
		walk.StepWhite: {"It is 100 F and still; a hand who has painted in the sun for hours says he feels cold, and goes on."},
	},
}

// heeds is what each caution asks for, in the words of somebody beside the stump,
// and why it is no answer to another danger.
var heeds = map[string]option{
	trade.SawKnifeDrill.ID: {"", "Stop: feet on the ground, eyes and legs covered, cut away from the body, and not alone.", "Good at any blade, but it is not the blade that does harm here."},
	trade.CleanBlades.ID:   {"", "Clean the blade before the next tree.", "A clean blade is right always; this harm does not travel on a blade."},
	trade.LabelIsLaw.ID:    {"", "Use only what has its label, as the label says; a licensed applicator where rules ask for one.", "Nothing is sprayed, baited or painted here that a label would rule."},
	trade.MovingWood.ID:    {"", "Ask the local plant-health office first, and leave wood of unknown health where it is.", "No wood is moved here from one place to another."},
	trade.NailsStay.ID:     {"", "Look up how high the nails are, and saw clear of them.", "There is no iron in the way here: nothing was nailed where this work is done."},
	trade.CrewHeat.ID:      {"", "Stop for water and shade; the work goes on when the heat is past.", "Water and shade are always good, but it is not the heat that does harm here."},
}

// cautioned is a danger met at a step that carries the caution. The others offered
// are cautions that the step does not carry, and going on.
func cautioned(seed uint64, of trade.Caution, steps ...walk.StepID) Case {
	t := newTale(seed)
	steps = slices.DeleteFunc(slices.Clone(steps), func(id walk.StepID) bool {
		return !slices.ContainsFunc(stepOf(id).Cautions, func(c trade.Caution) bool { return c.ID == of.ID })
	})
	id := pick(&t.dice, steps...)
	step := stepOf(id)
	at := slices.IndexFunc(scenes, func(s scene) bool { return s.step == id })
	if at >= 0 {
		scenes[at].tell(t)
	}
	t.sayNow().say("The work in hand: %s", lowerFirst(deeds[id])).say("%s", pick(&t.dice, dangers[of.ID][id]...))
	carries := func(c trade.Caution) bool {
		return slices.ContainsFunc(step.Cautions, func(s trade.Caution) bool { return s.ID == c.ID })
	}
	best := ""
	if carries(of) {
		best = of.ID
	}
	options := []option{{"on", "Go on, and be quick about it.", "Most times it goes well, which is what makes it tempting. " + of.Says}}
	others := trade.Cautions()
	shuffle(&t.dice, others)
	for _, c := range append([]trade.Caution{of}, others...) {
		if o, known := heeds[c.ID]; known && len(options) < 4 && (c.ID == of.ID) == (len(options) == 1) && (c.ID == of.ID || !carries(c)) {
			o.is = c.ID
			options = append(options, o)
		}
	}
	c := t.ask("What do you say?", best, of.Says, trade.Worked{Question: "What can hurt here?", Answer: []trade.Input{{Value: of.Says}}, Facts: cautionFacts[of.ID]}, options...)
	c.Rule.Step = id
	return c
}

// cautionFacts is what a caution rests on, where a fact says it.
var cautionFacts = map[string][]trade.Fact{
	trade.SawKnifeDrill.ID: {trade.FreshCut, trade.DrainHoleSize}, trade.CleanBlades.ID: {trade.CrownGall}, trade.LabelIsLaw.ID: {trade.NoOilPaint, trade.Earwigs},
	trade.MovingWood.ID: {trade.CherryLeafroll}, trade.NailsStay.ID: {trade.TwoNails}, trade.CrewHeat.ID: {trade.ForecastHeat},
}

// stepOf is a step of the walk.
func stepOf(id walk.StepID) *walk.Step {
	for _, s := range walk.Steps() {
		if s.ID == id {
			return s
		}
	}
	return nil
}

// notes are what the verdict warns of on a stump, a word of its caution, and the
// answers.
var notes = []struct {
	sign  string // in the caution's words
	tell  func(t *tale)
	right string
	wrong [3]string
	words [4]string // the best first
	fact  trade.Fact
	step  walk.StepID
}{
	{"gashes; think again", func(t *tale) {
		t.cutBack(9).on(-3, 9, 0, &record.Gashed{Number: t.of(2, 3)}).on(-1, 9, 0, &record.Gashed{Number: t.of(3, 4)})
		t.at(0, 8, 0).did(&record.Looked{Slip: record.SlipsClean}, &record.Looked{Bleeding: record.Weeping})
		t.sayNow().say("The stem has %d gashes by now and the face still weeps. A hand lifts the axe for more.", t.walk().Found.Gashes)
	}, "Gashes all round are a girdle. Look at what stands: staggered heights, not opposite, none below a scion.",
		[3]string{"Every wound lets some sap out; taken all together they cut the stem off from its root.",
			"Deeper is no better: on a thin stem a deep gash weakens it until it snaps.",
			"A gash below a scion starves just the bark that has to feed it."},
		[4]string{"Think again before the next: see where the gashes stand, and rather bore a drain hole.", "Two more, all round, between the old ones.", "Make the old ones deeper, half through the stem.",
			"Two more right under where the scions will stand."}, trade.GashLimits, walk.StepNewGashes},
	{"No nurse limb", func(t *tale) {
		t.on(-9, 9, 0, &record.NurseJudged{Limbs: 0, Leaf: "none"}, &record.CutBack{Height: t.inches(38)}, &record.Gashed{Number: 2})
		t.at(0, 8, 0).did(&record.Looked{Slip: record.SlipsClean}, &record.Looked{Bleeding: record.Dry})
		t.sayNow().say("Somebody took all limbs off at the cut-back. It is dry, the bark slips, and the stem stands bare in the sun.")
	}, "It may be grafted all the same; sprouts low down and paint on the stem stand in for the limb.",
		[3]string{"It blocks nothing: a graft on a bare stem can take, and a year is lost.",
			"Sprouts beside the graft outgrow it; those that feed the root stand low.",
			"The root feeds on what leaf there is. With none at all it is weaker, and the bark scalds."},
		[4]string{"Graft it when it is ready, leave some sprouts low down this summer, and shade or paint the stem.", "Do not graft it: leave it a year until limbs have grown.", "Keep every sprout, those beside the graft too.",
			"Nothing: without limbs all sap goes into the graft."}, trade.NurseLimbs, walk.StepLimbs},
	{"below browse height", func(t *tale) {
		t.b.Browse = record.Measured(6*12*25.4, t.b.Units)
		t.on(-9, 9, 0, &record.NurseJudged{Limbs: 1, Nearest: t.inches(26), Leaf: "some"}, &record.CutBack{Height: t.inches(float64(t.of(40, 60)))}, &record.Gashed{Number: 2})
		t.at(0, 8, 0).did(&record.Looked{Slip: record.SlipsClean}, &record.Looked{Bleeding: record.Dry})
		t.sayNow().say("It was cut back at %s. Here animals browse to %s.", t.words(t.walk().A.CutBack.What.Height.Length), t.words(t.b.Browse.Length))
	}, "What stands below that height is eaten; it is guarded, or grafted higher from the start.",
		[3]string{"Lower cuts bleed more, and the new shoots stand at the height of a mouth all the more.",
			"Soft shoots at a handy height are just what they come for; one night is enough.",
			"White paint is against sun. It keeps no deer off."},
		[4]string{"Put a guard round it before anything grows, or leave it for a tree that is cut higher.", "Cut it lower still, below their reach.", "Graft it and see; they may not come this year.",
			"Paint it white to keep them off."}, trade.BrowseWhitetail, walk.StepHeight},
}

// noted is a stump of which the verdict warns.
func noted(seed uint64, which int) Case {
	t := newTale(seed)
	n := notes[which]
	n.tell(t)
	best, says := "", ""
	for _, c := range t.walk().Advice.Cautions {
		if strings.Contains(c, n.sign) {
			best, says = "best", c
		}
	}
	c := t.ask(whatNow, best, says+" "+n.right, facts("What is the caution?", n.fact),
		option{"best", n.words[0], ""}, option{"1", n.words[1], n.wrong[0]}, option{"2", n.words[2], n.wrong[1]}, option{"3", n.words[3], n.wrong[2]})
	c.Rule.Step = n.step
	return c
}
