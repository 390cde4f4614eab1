package due

import "fmt"

// verbs is what each kind of work is called to the one who is to do it; its name
// in kebab case is for machines alone.
var verbs = map[Kind]string{
	CutBack:        "cut back",
	Look:           "look",
	LookAgain:      "look again",
	Graft:          "graft",
	Finish:         "finish",
	Seal:           "seal",
	White:          "paint white",
	AfterLook:      "check the seal",
	Reseal:         "reseal",
	Earwigs:        "ring against earwigs",
	Stake:          "stake",
	Buds:           "look at the buds",
	ConfirmTake:    "confirm the take",
	KeepSprouts:    "keep sprouts",
	Sprouts:        "rub sprouts",
	Leader:         "choose the leader",
	Tie:            "tie",
	Pinch:          "pinch",
	Twine:          "twine",
	TwineCheck:     "check the twine",
	CutTwine:       "cut the twine",
	SeasonsEnd:     "season's end",
	TiesOff:        "tapes off",
	HeadBack:       "head back",
	SecondShootOff: "second shoot off",
	NurseLimbsOff:  "nurse limbs off",
	Untie:          "untie",
	Regraft:        "graft again",
}

func init() {
	for _, w := range table {
		if verbs[w.Kind] == "" {
			panic(fmt.Sprintf("%s has no verb", w.Name))
		}
	}
}

// Verb is the kind as it is said: paint white, rub sprouts.
func (k Kind) Verb() string { return verbs[k] }

// VerbOf is the verb of a kind by its name, or the name itself where there is no
// such kind.
func VerbOf(name string) string {
	if k, ok := ParseKind(name); ok {
		return k.Verb()
	}
	return name
}
