package trade

// Lesson is what to do differently after grafts were lost to a cause: in one plain
// sentence, with the fact it rests on.
type Lesson struct {
	Lost   string // how the loss is told: "it bled"
	Better string // what to do differently
	Fact   Fact
}

// LessonOf is the lesson of a cause of loss; ok is false where nothing is learned
// from it, as of one that is not known.
func LessonOf(cause string) (l Lesson, ok bool) {
	l, ok = lessons[cause]
	return l, ok
}

var lessons = map[string]Lesson{
	"bled":                      {"it bled", "graft only on a face that stays dry after wiping, and let it drain first", DryFace},
	"overheated":                {"it overheated", "paint it white in time, and shade it on a hot day", DarkSealer},
	"dried out or seal cracked": {"it dried out or its seal cracked", "put wrap squares between the coats, or reseal after 5 days", BareCracks},
	"bark lifted":               {"the bark lifted", "cut the slot a little wider than the scion; a tight one lifts the bark", SlotTight},
	"set upside down":           {"scions were set upside down", "look for the second bud and the leaf scar below the first bud", WayUp},
	"poor wood":                 {"the wood was poor", "use dormant wood kept cold, none that is warm, old or swollen", StoreLimits},
	"earwigs":                   {"earwigs ate the buds", "put a tape ring with bait on before the buds open", Earwigs},
	"wind":                      {"the wind broke it", "set a scion on the windward side, and tie the shoots to a stake", WindSide},
	"bird perched":              {"a bird perched on it", "stand a perch higher than the scions beside it", PerchHigher},
	"deer or stock":             {"deer or stock ate it", "graft above their reach", BrowseHeight},
	"outgrown by sprouts":       {"sprouts outgrew it", "rub sprouts near the graft every week", StockSprouts},
	"frost":                     {"frost took it", "graft later, when the nights are past frost", LaterThanFrost},
	"collapsed after push":      {"it collapsed after its push", "keep sealer and white paint whole until 30 days after push", MovingNotTaking},
	"never moved":               {"it never moved", "use sound wood, and see cambium on every back cut", BackCutTip},
	"girdled":                   {"its twine girdled it", "check the twine each season and cut it before it is tight", TwineGirdles},
	"machine or person":         {"a machine or a person broke it", "put up a stake that is seen", StakeSeen},
}

// Facts that lessons rest on and nothing else states.
var (
	PerchHigher = state("perch-higher", "care", Memory, "",
		"Birds perch on the highest twig: a stick that stands higher than the scions spares them.")
	LaterThanFrost = state("later-than-frost", "care", Memory, "",
		"Soft shoots die in a late frost; a graft made later pushes after it.")
	StakeSeen = state("stake-seen", "care", Memory, "",
		"A stake that is seen keeps machines and people off a young graft.")
)
