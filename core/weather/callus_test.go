package weather

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

func TestCardinals(t *testing.T) {
	for _, c := range []Cardinal{{5, 17.5, 30}, {5, 10, 30}, {5, 30, 30}, {5, 5, 5}, {unit.Temperature(math.NaN()), 20, 30}} {
		if c.Check() == nil {
			t.Errorf("%v passes", c)
		}
	}
	for _, name := range Species() {
		c, err := CallusOf(name)
		if err != nil || c.Check() != nil {
			t.Errorf("%s: %v, %v, %v", name, c, err, c.Check())
		}
	}
	if c, err := CallusOf(""); err != nil || c != (Cardinal{15, 27, 38}) {
		t.Errorf("walnut is %v, %v", c, err)
	}
	var impossible *trade.Impossible
	if _, err := CallusOf("baobab"); !errors.As(err, &impossible) || impossible.Option != "species" || !strings.Contains(impossible.Accepted, Walnut) {
		t.Errorf("baobab: %v", err)
	}
}

// Every kind rests on its own best temperature, stated with its own standing,
// and only walnut on walnut's figures.
func TestCallusFactsAreTheKindsOwn(t *testing.T) {
	for _, kind := range trade.CallusKinds {
		a, err := Callus(valley, nil, 0, kind.Name)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Contains(a.Work.Facts, kind.Fact) || !slices.Contains(trade.Facts(), kind.Fact) {
			t.Errorf("%s: its fact %q is not among those of the answer or of all", kind.Name, kind.Fact.Says)
		}
		for _, other := range trade.CallusKinds {
			if other.Name != kind.Name && slices.Contains(a.Work.Facts, other.Fact) {
				t.Errorf("%s rests on a fact of %s", kind.Name, other.Name)
			}
		}
		walnuts := slices.Contains(a.Work.Facts, trade.CallusLimits) || slices.Contains(a.Work.Facts, trade.CallusDays)
		if walnuts != (kind.Name == Walnut) || walnuts == slices.Contains(a.Work.Facts, trade.CallusLimitsElse) {
			t.Errorf("%s rests on %v", kind.Name, a.Work.Facts)
		}
	}
	for name, says := range map[string]string{
		"chestnut": "Chestnut callus grows fastest at 21 to 24 C (70 to 75 F); the middle is used.",
		"plum":     "Plum callus grows fastest at about 16 C (61 F), by weak sources.",
		"walnut":   "Walnut callus grows fastest at about 27 C (81 F), where weak sources agree.",
	} {
		kind, err := kindOf(name)
		ranged := name == "chestnut"
		if err != nil || kind.Fact.Says != says || (kind.Fact.Standing == trade.Disagree) != ranged || !ranged && kind.Fact.Standing != trade.Memory {
			t.Errorf("%s: %+v (%v)", name, kind, err)
		}
	}
	for name, best := range map[string]unit.Temperature{"chestnut": 22.5, "apple": 15.5, "pear": 15.5, "plum": 16, "cherry": 20, "peach": 22, "grape": 25.5, "persimmon": 24, "olive": 30} {
		if c, err := CallusOf(name); err != nil || c.Best != best || c.Best-c.Least != 12 || c.Most-c.Best != 11 {
			t.Errorf("%s: %v (%v)", name, c, err)
		}
	}
}

func TestRateLiesBetweenNoughtAndOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		least := rapid.Float64Range(-5, 20).Draw(t, "least")
		most := least + rapid.Float64Range(1, 40).Draw(t, "range")
		best := least + (most-least)*rapid.Float64Range(0.51, 0.99).Draw(t, "share")
		c := Cardinal{unit.Temperature(least), unit.Temperature(best), unit.Temperature(most)}
		at := rapid.Float64Range(-30, 70).Draw(t, "at")
		if r := c.Rate(unit.Temperature(at)); !(r >= 0 && r <= 1+1e-9) {
			t.Fatalf("%v at %v: %v", c, at, r)
		}
		if r := c.Rate(c.Best); math.Abs(r-1) > 1e-9 {
			t.Fatalf("%v at its best: %v", c, r)
		}
	})
}

var valley = Place{Lat: 38.5, Lon: -121.8, Zone: time.FixedZone("", -7*3600)}

// steadyDays are dates in a row with the same low and high.
func steadyDays(first unit.Date, n int, low, high unit.Temperature) (list []Extremes) {
	for i := range n {
		list = append(list, Extremes{first.Add(i), low, high})
	}
	return list
}

func TestSteadyAirGrowsByTheDay(t *testing.T) {
	first := unit.MakeDate(2027, 5, 1)
	for _, c := range []struct {
		air   unit.Temperature
		daily float64
	}{{27, 1}, {15, 0}, {14, 0}, {39, 0}, {21, walnutCallus.Rate(21)}} {
		a, err := Callus(valley, steadyDays(first, 20, c.air, c.air), 0, "")
		if err != nil || len(a.Days) != 20 || math.Abs(a.Total-20*c.daily) > 1e-9 || math.Abs(a.Days[7].Callus-c.daily) > 1e-9 {
			t.Errorf("air of %v: %v, %v", c.air, a, err)
		}
	}
}

func TestBestStart(t *testing.T) {
	first := unit.MakeDate(2027, 5, 1)
	warm := append(steadyDays(first, 10, 12, 20), steadyDays(first.Add(10), 14, 18, 30)...)
	warm = append(warm, steadyDays(first.Add(24), 10, 12, 20)...)
	for name, c := range map[string]struct {
		list []Extremes
		from unit.Date
		want string
	}{
		"the warm days":             {warm, 0, "2027-05-11"},
		"too few":                   {warm[:13], 0, ""},
		"just enough":               {warm[:14], 0, "2027-05-01"},
		"too few after the date":    {warm, first.Add(21), ""},
		"after the date":            {warm, first.Add(15), "2027-05-16"},
		"none at all after":         {warm, first.Add(99), ""},
		"a gap leaves no run":       {append(append([]Extremes{}, warm[:13]...), warm[17:29]...), 0, ""},
		"a gap is not spanned":      {append(append([]Extremes{}, warm[:14]...), warm[16:]...), 0, "2027-05-17"},
		"a list in any other order": {append(append([]Extremes{}, warm[15:]...), warm[:15]...), 0, "2027-05-11"},
	} {
		a, err := Callus(valley, c.list, c.from, Walnut)
		got := ""
		if a.BestStart != nil {
			got = a.BestStart.String()
		}
		if err != nil || got != c.want {
			t.Errorf("%s: %q, %v; want %q", name, got, err, c.want)
		}
	}
	gap, err := Callus(valley, append(append([]Extremes{}, warm[:5]...), warm[9:]...), 0, "")
	if err != nil || !strings.Contains(strings.Join(gap.Work.Assumed, " "), "missing") {
		t.Errorf("a gap must be said: %v, %v", gap.Work.Assumed, err)
	}
}

func TestCallusNamesItsFields(t *testing.T) {
	a, err := Callus(valley, nil, 0, "")
	if err != nil {
		t.Fatal(err)
	}
	if text, err := json.Marshal(a); err != nil || !strings.HasPrefix(string(text), `{"days":[],"total_d":0,"best_start":null,"because":[{`) {
		t.Errorf("%s, %v", text, err)
	}
	a, err = Callus(valley, steadyDays(unit.MakeDate(2027, 5, 1), 14, 27, 27), 0, "")
	if err != nil {
		t.Fatal(err)
	}
	if text, err := json.Marshal(a); err != nil || !strings.HasPrefix(string(text), `{"days":[{"date":"2027-05-01","callus_d":`) || !strings.Contains(string(text), `"best_start":"2027-05-01"`) {
		t.Errorf("%s, %v", text, err)
	}
	if said := strings.Join(a.Work.Assumed, " "); !strings.Contains(said, "not of the graft") || !strings.Contains(said, "assumed") {
		t.Errorf("assumed: %s", said)
	}
}

func TestImpossibleCallus(t *testing.T) {
	d := unit.MakeDate(2027, 5, 1)
	for option, err := range map[string]error{
		"species": second(Callus(valley, nil, 0, "oak")),
		"lat":     second(Callus(Place{Lat: -91, Zone: time.UTC}, nil, 0, "")),
		"low":     second(Callus(valley, []Extremes{{d, 20, 10}}, 0, "")),
		"temps":   second(Callus(valley, []Extremes{{d, 10, 20}, {d, 10, 20}}, 0, "")),
	} {
		var impossible *trade.Impossible
		if !errors.As(err, &impossible) || impossible.Option != option {
			t.Errorf("%s: %v", option, err)
		}
	}
}

func second(_ CallusAnswer, err error) error { return err }
