package tally

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barkslip/core/trade"
)

func someCounts(t *rapid.T, most int) Counts {
	of := rapid.IntRange(1, most).Draw(t, "of")
	return Counts{Alive: rapid.IntRange(0, of).Draw(t, "alive"), Of: of}
}

func TestIntervalProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, d := someCounts(t, 500), someCounts(t, 500)
		i := Wilson(c)
		if !(0 <= i.Low && i.Low <= c.Rate() && c.Rate() <= i.High && i.High <= 1) {
			t.Fatalf("%v: %+v", c, i)
		}
		dead := Wilson(Counts{Alive: c.Of - c.Alive, Of: c.Of})
		if math.Abs(dead.Low-(1-i.High)) > 1e-12 || math.Abs(dead.High-(1-i.Low)) > 1e-12 {
			t.Fatalf("%v: alive %+v, dead %+v", c, i, dead)
		}
		more := Wilson(Counts{Alive: 4 * c.Alive, Of: 4 * c.Of})
		if more.High-more.Low >= i.High-i.Low {
			t.Fatalf("%v: four times the count is no surer", c)
		}
		apart, back := Difference(c, d), Difference(d, c)
		gap := c.Rate() - d.Rate()
		if !(-1 <= apart.Low && apart.Low <= gap && gap <= apart.High && apart.High <= 1) {
			t.Fatalf("%v against %v: %+v", c, d, apart)
		}
		if math.Abs(apart.Low+back.High) > 1e-12 || math.Abs(apart.High+back.Low) > 1e-12 {
			t.Fatalf("%v against %v: %+v, turned round %+v", c, d, apart, back)
		}
	})
}

// exactByFactorials sums the tables of fixed totals with logarithms of
// factorials.
func exactByFactorials(a, b Counts) float64 {
	choose := func(n, k int) float64 {
		f := func(n int) float64 { l, _ := math.Lgamma(float64(n) + 1); return l }
		return f(n) - f(k) - f(n-k)
	}
	alive := a.Alive + b.Alive
	chance := func(k int) float64 {
		return math.Exp(choose(a.Of, k) + choose(b.Of, alive-k) - choose(a.Of+b.Of, alive))
	}
	sum := 0.0
	for k := max(0, alive-b.Of); k <= min(a.Of, alive); k++ {
		if chance(k) <= chance(a.Alive)*(1+1e-7) {
			sum += chance(k)
		}
	}
	return sum
}

func TestExactProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := someCounts(t, 60), someCounts(t, 60)
		p := Fisher(a, b)
		if math.Abs(p-exactByFactorials(a, b)) > 1e-10 || math.Abs(p-Fisher(b, a)) > 1e-12 {
			t.Fatalf("%v against %v: %v, by factorials %v, turned round %v", a, b, p, exactByFactorials(a, b), Fisher(b, a))
		}
		could := false
		alive := a.Alive + b.Alive
		for k := max(0, alive-b.Of); k <= min(a.Of, alive); k++ {
			could = could || Fisher(Counts{k, a.Of}, Counts{alive - k, b.Of}) < 0.05
		}
		if could != Enough(a, b) {
			t.Fatalf("%v against %v: enough %v, by trying every table %v", a, b, Enough(a, b), could)
		}
	})
}

func TestTakeAsJSON(t *testing.T) {
	a, err := Take(81, 263, nil)
	if err != nil {
		t.Fatal(err)
	}
	keys := keysOf(t, a)
	if got := strings.Join(keys, " "); got != "because high low rate" {
		t.Errorf("alone: %s", got)
	}
	a, err = Take(3, 3, &Counts{Alive: 0, Of: 3})
	if err != nil || *a.Enough || math.Abs(*a.P-0.1) > 1e-15 {
		t.Errorf("three against three: %+v, %v", a, err)
	}
	if got := strings.Join(keysOf(t, a), " "); got != "because difference difference_high difference_low enough high low p rate" {
		t.Errorf("against: %s", got)
	}
}

// keysOf are the names in the JSON of an answer, sorted.
func keysOf(t *testing.T, answer any) []string {
	t.Helper()
	text, err := json.Marshal(answer)
	if err != nil {
		t.Fatal(err)
	}
	fields := map[string]json.RawMessage{}
	if err := json.Unmarshal(text, &fields); err != nil {
		t.Fatal(err)
	}
	return sorted(fields)
}

func TestImpossibleCounts(t *testing.T) {
	for _, c := range []struct {
		alive, of int
		against   *Counts
		option    string
	}{
		{5, 4, nil, "alive"}, {-1, 4, nil, "alive"}, {0, 0, nil, "of"}, {0, -3, nil, "of"}, {1, 1 << 40, nil, "of"},
		{1, 2, &Counts{3, 2}, "against"}, {1, 2, &Counts{0, 0}, "against"},
	} {
		_, err := Take(c.alive, c.of, c.against)
		var refused *trade.Impossible
		if !errors.As(err, &refused) || refused.Option != c.option {
			t.Errorf("%d of %d against %v: %v, want it refused for %s", c.alive, c.of, c.against, err, c.option)
		}
	}
	for _, bad := range []string{"", "5", "5/", "/5", "a/b", "1/2/3", "1.5/2"} {
		if c, err := ParseCounts(bad); err == nil {
			t.Errorf("ParseCounts(%q) = %v, want it refused", bad, c)
		}
	}
}
