package trade

// Caution is a warning shown where the work can hurt; it never blocks.
type Caution struct {
	ID   string
	Says string
}

// The cautions of the trade.
var (
	SawKnifeDrill = Caution{"saw-knife-drill", "Saw, knife and drill: cut away from the body, feet on the ground, eyes and legs protected, no saw work alone."}
	KnifeHand     = Caution{"knife-hand", "Knife: cut away from the hand that holds the wood, and wear a cut-resistant glove on it."}
	HammerNails   = Caution{"hammer-nails", "Hammer: start a nail with light taps, keep the fingers clear of its head, and the eyes protected."}
	NailsStay     = Caution{"nails-stay", "Nails stay in the stem: their height is recorded, and whoever saws there later must know."}
	LabelIsLaw    = Caution{"label-is-law", "Bait, paint and sealer: the label is the law; a licensed applicator where local rules ask for one."}
	MovingWood    = Caution{"moving-wood", "Moving wood: plant-health rules differ by place and change; ask the local office first. No wood from trees " +
		"of unknown health."}
	CleanBlades = Caution{"clean-blades", "Clean blades between trees: crown gall travels on tools."}
	CrewHeat    = Caution{"crew-heat", "Heat and sun are hard on the crew too: water and shade."}
	AidsOnly    = Caution{"aids-only", "The figures are aids; local extension advice and licensed practice come first."}
)

// Cautions lists them all.
func Cautions() []Caution {
	return []Caution{SawKnifeDrill, KnifeHand, HammerNails, NailsStay, LabelIsLaw, MovingWood, CleanBlades, CrewHeat, AidsOnly}
}

// Causes of loss, the pick list.
var Causes = []string{
	"bled", "overheated", "dried out or seal cracked", "bark lifted", "set upside down", "poor wood",
	"earwigs", "wind", "bird perched", "deer or stock", "outgrown by sprouts", "frost",
	"collapsed after push", "never moved", "girdled", "machine or person", "unknown",
}
