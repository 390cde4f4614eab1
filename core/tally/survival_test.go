package tally

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Without anyone lost sight of, the curve is the plain share still waiting and
// Greenwood's error that of a proportion.
func TestAllSeenToTheEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		days := rapid.SliceOfN(rapid.IntRange(0, 40), 1, 60).Draw(t, "days")
		var all []Waited
		for _, d := range days {
			all = append(all, Waited{For: float64(d), Happened: true})
		}
		c, err := Survival(all)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range c.Steps {
			later := 0
			for _, d := range days {
				if float64(d) > s.At {
					later++
				}
			}
			n := float64(len(days))
			p := float64(later) / n
			if math.Abs(s.Still-p) > 1e-12 || math.Abs(s.StandardError-math.Sqrt(p*(1-p)/n)) > 1e-12 {
				t.Fatalf("%v: %+v, want %v", days, s, p)
			}
		}
	})
}

func TestCurveProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var all []Waited
		for range rapid.IntRange(0, 50).Draw(t, "followed") {
			all = append(all, Waited{For: rapid.Float64Range(0, 60).Draw(t, "days"), Happened: rapid.Bool().Draw(t, "happened")})
		}
		c, err := Survival(all)
		if err != nil {
			t.Fatal(err)
		}
		still, at, happened := 1.0, -1.0, 0
		for _, s := range c.Steps {
			if s.Still > still || s.Still < 0 || s.At <= at || s.Happened < 1 || s.AtRisk < s.Happened || !(s.StandardError >= 0) {
				t.Fatalf("%+v after %v", s, still)
			}
			still, at, happened = s.Still, s.At, happened+s.Happened
		}
		for _, w := range all {
			if w.Happened {
				happened--
			}
		}
		if happened != 0 {
			t.Fatalf("%d too many in %+v", happened, c.Steps)
		}
	})
}

func TestMedian(t *testing.T) {
	c, err := Survival([]Waited{{10, true}, {12, true}, {14, false}, {20, true}})
	if days, reached := c.Median(); err != nil || !reached || days != 12 {
		t.Errorf("half by day %v, %v, %v", days, reached, err)
	}
	c, err = Survival([]Waited{{10, true}, {12, false}, {14, false}})
	if days, reached := c.Median(); err != nil || reached {
		t.Errorf("half by day %v, %v", days, err)
	}
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		if _, err := Survival([]Waited{{bad, true}}); err == nil {
			t.Errorf("%v days: not refused", bad)
		}
	}
}
