package weather

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Cardinal are the temperatures between which callus grows and at which it
// grows fastest.
type Cardinal struct {
	Least, Best, Most unit.Temperature
}

// Check refuses cardinals for which the growth curve does not hold: they must
// rise, with the best above the middle of the others.
func (c Cardinal) Check() error {
	if !(c.Least < c.Best && c.Best < c.Most && c.Best > (c.Least+c.Most)/2) {
		return &trade.Impossible{Option: "species", Given: fmt.Sprintf("callus from %v to %v C, best at %v", c.Least.C(), c.Most.C(), c.Best.C()),
			Accepted: "a best temperature under the most and above the middle of least and most"}
	}
	return nil
}

// Rate is how fast callus grows, 1 at the best temperature and 0 from Least
// down and from Most up: the cardinal temperature model with inflection, Rosso
// et al. 1993. The cardinals must have passed Check.
func (c Cardinal) Rate(t unit.Temperature) float64 {
	if t <= c.Least || t >= c.Most {
		return 0
	}
	at, least, best, most := t.C(), c.Least.C(), c.Best.C(), c.Most.C()
	top := (at - most) * (at - least) * (at - least)
	return top / ((best - least) * ((best-least)*(at-best) - (best-most)*(best+least-2*at)))
}

// Walnut is the species where none is named.
const Walnut = "walnut"

// walnutCallus: the best is known weakly, the ends are assumed.
var walnutCallus = Cardinal{trade.CallusLeast, trade.CallusBest, trade.CallusMost}

// Species lists the kinds of tree whose callus can be reckoned.
func Species() []string {
	var names []string
	for _, k := range trade.CallusKinds {
		names = append(names, k.Name)
	}
	slices.Sort(names)
	return names
}

// kindOf is a species by its name, walnut where that is empty.
func kindOf(species string) (trade.CallusKind, error) {
	name := cmp.Or(strings.ToLower(strings.TrimSpace(species)), Walnut)
	at := slices.IndexFunc(trade.CallusKinds, func(k trade.CallusKind) bool { return k.Name == name })
	if at < 0 {
		return trade.CallusKind{}, &trade.Impossible{Option: "species", Given: species, Accepted: strings.Join(Species(), ", ")}
	}
	return trade.CallusKinds[at], nil
}

// CallusOf are the cardinals of a species, empty for walnut. Those of other
// species lie about their best as the walnut's do.
func CallusOf(species string) (Cardinal, error) {
	kind, err := kindOf(species)
	if err != nil {
		return Cardinal{}, err
	}
	shift := kind.Best - walnutCallus.Best
	return Cardinal{walnutCallus.Least + shift, kind.Best, walnutCallus.Most + shift}, nil
}

// callusFacts is what the growth of a kind's callus rests on.
func callusFacts(kind trade.CallusKind) []trade.Fact {
	facts := []trade.Fact{trade.CallusRate, kind.Fact}
	if kind.Name == Walnut {
		return append(facts, trade.CallusLimits, trade.CallusDays)
	}
	return append(facts, trade.CallusLimitsElse)
}
