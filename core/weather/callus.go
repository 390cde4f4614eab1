package weather

import (
	"fmt"
	"maps"
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
var walnutCallus = Cardinal{15, 27, 38}

// Warmest callus of other species; only the best is known, and weakly. Where
// sources give a range it is its middle.
var bestCallus = map[string]unit.Temperature{
	"chestnut": 22.5, "apple": 15.5, "pear": 15.5, "plum": 16, "cherry": 20, "peach": 22,
	"grape": 25.5, "persimmon": 24, "olive": 30,
}

// Species lists the kinds of tree whose callus can be reckoned.
func Species() []string {
	return slices.Sorted(slices.Values(append(slices.Collect(maps.Keys(bestCallus)), Walnut)))
}

// CallusOf are the cardinals of a species, empty for walnut. Those of other
// species lie about their best as the walnut's do.
func CallusOf(species string) (Cardinal, error) {
	name := strings.ToLower(strings.TrimSpace(species))
	if name == Walnut || name == "" {
		return walnutCallus, nil
	}
	best, ok := bestCallus[name]
	if !ok {
		return Cardinal{}, &trade.Impossible{Option: "species", Given: species, Accepted: strings.Join(Species(), ", ")}
	}
	shift := best - walnutCallus.Best
	return Cardinal{walnutCallus.Least + shift, best, walnutCallus.Most + shift}, nil
}
