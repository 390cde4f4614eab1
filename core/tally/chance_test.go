package tally

import (
	"encoding/json"
	"errors"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"barkslip/core/trade"
)

func sorted(m map[string]json.RawMessage) []string { return slices.Sorted(maps.Keys(m)) }

// By hand: a bud in two, four buds: 15/16. Independent, three scions: 1 - 1/16^3;
// all alike: as one scion.
func TestChanceByHand(t *testing.T) {
	for together, want := range map[float64]float64{0: 1 - 1.0/4096, 1: 15.0 / 16} {
		a, err := Chance(0.5, 4, 3, together)
		if err != nil || math.Abs(a.Scion-15.0/16) > 1e-15 || math.Abs(a.Stump-want) > 1e-15 {
			t.Errorf("together %v: %+v, %v", together, a, err)
		}
		if (a.ScionsFor == nil) != (together == 1) {
			t.Errorf("together %v: scions for 95 in 100 %v", together, a.ScionsFor)
		}
	}
	a, err := Chance(0.95, 1, 1, 0)
	if err != nil || a.ScionsFor == nil || *a.ScionsFor != 1 {
		t.Errorf("95 in 100 with one scion: %+v, %v", a, err)
	}
	hopeless, err := Chance(0, 1, 1, 0)
	text, _ := json.Marshal(hopeless)
	if err != nil || !strings.HasPrefix(string(text), `{"scion":0,"stump":0,"scions_for_95":null,"because":[`) {
		t.Errorf("%s, %v", text, err)
	}
}

// noneByGamma is the beta-binomial chance of none alive through the beta
// function: B(a, b+n)/B(a, b).
func noneByGamma(n int, m, r float64) float64 {
	a, b := m*(1-r)/r, (1-m)*(1-r)/r
	g := func(x float64) float64 { l, _ := math.Lgamma(x); return l }
	return math.Exp(g(b+float64(n)) + g(a+b) - g(b) - g(a+b+float64(n)))
}

func TestChanceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bud := rapid.Float64Range(0.01, 0.9).Draw(t, "bud")
		buds := rapid.IntRange(1, 4).Draw(t, "buds")
		scions := rapid.IntRange(1, 6).Draw(t, "scions")
		r := rapid.Float64Range(0.01, 0.99).Draw(t, "together")
		a, err := Chance(bud, buds, scions, r)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(1-a.Stump-noneByGamma(scions, a.Scion, r)) > 1e-9 {
			t.Fatalf("stump %v, through the beta function %v", a.Stump, 1-noneByGamma(scions, a.Scion, r))
		}
		alone, err1 := Chance(bud, buds, scions, 0)
		alike, err2 := Chance(bud, buds, scions, 1)
		if err1 != nil || err2 != nil || a.Stump > alone.Stump+1e-12 || a.Stump < alike.Stump-1e-12 || math.Abs(alike.Stump-a.Scion) > 1e-12 {
			t.Fatalf("stump %v lies outside %v to %v", a.Stump, alike.Stump, alone.Stump)
		}
		if n := a.ScionsFor; n != nil {
			if with, _ := Chance(bud, buds, *n, r); with.Stump < 0.95-1e-9 {
				t.Fatalf("%d scions give %v", *n, with.Stump)
			}
			if fewer, err := Chance(bud, buds, *n-1, r); err == nil && fewer.Stump >= 0.95 {
				t.Fatalf("%d scions would do", *n-1)
			}
		}
		if math.Abs(PerBud(a.Scion, buds)-bud) > 1e-9 {
			t.Fatalf("a bud of %v gives %v back", bud, PerBud(a.Scion, buds))
		}
	})
}

func TestImpossibleChances(t *testing.T) {
	for _, c := range []struct {
		bud          float64
		buds, scions int
		together     float64
		option       string
	}{
		{-0.1, 1, 1, 0, "per-bud"}, {1.1, 1, 1, 0, "per-bud"}, {math.NaN(), 1, 1, 0, "per-bud"},
		{0.5, 0, 1, 0, "buds"}, {0.5, 1e6, 1, 0, "buds"}, {0.5, 1, 0, 0, "scions"}, {0.5, 1, 1e7, 0, "scions"},
		{0.5, 1, 1, -0.1, "together"}, {0.5, 1, 1, 2, "together"},
	} {
		_, err := Chance(c.bud, c.buds, c.scions, c.together)
		var refused *trade.Impossible
		if !errors.As(err, &refused) || refused.Option != c.option {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// Nothing on a fine grid is likelier than what was fitted, judged by the beta
// function and not by the products the fit uses. Counts: Crowder 1978, Applied
// Statistics 27:34, Table 3, the second lot.
func TestLearnedIsLikeliest(t *testing.T) {
	plates := pairs(t, "5/6 53/74 55/72 32/51 46/79 10/13 8/16 10/30 8/28 23/45 0/4")
	a, err := Learn(plates)
	if err != nil {
		t.Fatal(err)
	}
	beta := func(x, y float64) float64 {
		p, _ := math.Lgamma(x)
		q, _ := math.Lgamma(y)
		s, _ := math.Lgamma(x + y)
		return p + q - s
	}
	log := func(m, r float64) (sum float64) {
		x, y := m*(1-r)/r, (1-m)*(1-r)/r
		for _, c := range plates {
			sum += beta(x+float64(c.Alive), y+float64(c.Of-c.Alive)) - beta(x, y)
		}
		return sum
	}
	fitted := log(a.Rates[0], a.Together)
	for m := 0.3; m < 0.8; m += 0.002 {
		for r := 0.005; r < 0.5; r += 0.002 {
			if log(m, r) > fitted+1e-6 {
				t.Fatalf("rate %v and together %v are likelier than the fitted %v and %v", m, r, a.Rates[0], a.Together)
			}
		}
	}
}

func TestLearnedComesBack(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for _, r := range []float64{0.1, 0.3, 0.6} {
		const rate = 0.7
		spread := distuv.Beta{Alpha: rate * (1 - r) / r, Beta: (1 - rate) * (1 - r) / r, Src: random}
		var stumps []Counts
		for range 4000 {
			luck, c := spread.Rand(), Counts{Of: 2 + random.IntN(3)}
			for range c.Of {
				if random.Float64() < luck {
					c.Alive++
				}
			}
			stumps = append(stumps, c)
		}
		a, err := Learn(stumps)
		if err != nil || math.Abs(a.Together-r) > 0.05 || math.Abs(a.Rates[0]-rate) > 0.03 || !a.Enough {
			t.Errorf("made with %v and %v: %v, %v, enough %v, %v", rate, r, a.Rates, a.Together, a.Enough, err)
		}
	}
}

func TestLearnedAtTheEnds(t *testing.T) {
	for name, c := range map[string]struct {
		stumps   string
		together float64
		enough   bool
	}{
		"nothing":          {"", 0, false},
		"one graft each":   {"1/1 0/1 1/1", 0, false},
		"all alive":        {"3/3 2/2 4/4", 0, false},
		"spread too even":  {"1/2 1/2 1/2 1/2", 0, false},
		"all or none":      {"3/3 0/3 3/3 0/3 3/3", 1, false},
		"twenty too even":  {strings.Repeat("2/4 ", 20), 0, true},
		"nineteen and one": {strings.Repeat("2/4 ", 19) + "1/1", 0, false},
	} {
		a, err := Learn(pairs(t, c.stumps))
		if err != nil || math.Abs(a.Together-c.together) > 1e-5 || a.Enough != c.enough {
			t.Errorf("%s: %+v, %v", name, a, err)
		}
	}
	if _, err := Learn([]Counts{{3, 2}}); err == nil {
		t.Error("three alive of two: not refused")
	}
}
