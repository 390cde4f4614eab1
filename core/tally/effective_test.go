package tally

import (
	"math"
	"testing"
)

// clusters is stumps, each taken of known.
func clusters(stumps ...Counts) (c Clusters) {
	for _, s := range stumps {
		c.Add(int64(s.Alive), int64(s.Of))
	}
	return c
}

// Two groups worked by hand. A is 3/3 2/3 0/3 3/3 1/2: n 14, y 9, p 9/14. The offs
// y - p m in fourteenths: 15 1 -27 15 -4, their squares 225 1 729 225 16, together
// 1196/196. v = 5/4 x 1196/196/196, d = 14 v/(9/14 x 5/14) = 5/4 x 1196/196 x 14/45.
// B is 1/3 0/3 2/3 0/2 1/3: n 14, y 4, p 4/14; offs 2 -12 16 -8 2, squares 4 144 256
// 64 4, together 472/196, d = 5/4 x 472/196 x 14/40 = 1.0536.
func TestDesignEffectByHand(t *testing.T) {
	a := clusters(Counts{3, 3}, Counts{2, 3}, Counts{0, 3}, Counts{3, 3}, Counts{1, 2})
	b := clusters(Counts{1, 3}, Counts{0, 3}, Counts{2, 3}, Counts{0, 2}, Counts{1, 3})
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-12 {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	da, db := 5./4*1196/196*14/45, 5./4*472/196*14/40
	near("d of A", a.Design(), da)
	near("d of B", b.Design(), db)
	na, nb := 14/da, 14/db
	near("effective known of A", a.Effective().Of, na)
	near("effective took of B", b.Effective().Alive, 4/db)
	all := (9/da + 4/db) / (na + nb)
	chi := (na*math.Pow(9./14-all, 2) + nb*math.Pow(4./14-all, 2)) / (all * (1 - all))
	got := AlikeOf([]Share{a.Effective(), b.Effective()})
	near("chi-square", got.Chi2, chi)
	near("p", got.P, math.Erfc(math.Sqrt(chi/2))) // of one degree of freedom
	pair := Compare(a, b)
	near("difference", pair.Difference, 5./14)
	near("p of the pair", pair.P, got.P)
	if pair.Exact || !pair.Enough || pair.Low > 5./14 || pair.High < 5./14 {
		t.Errorf("%+v", pair)
	}
}

func TestDesignEffectAtTheEdges(t *testing.T) {
	for what, c := range map[string]Clusters{
		"none": {}, "one stump": clusters(Counts{1, 3}), "all alive": clusters(Counts{3, 3}, Counts{2, 2}), "all dead": clusters(Counts{0, 3}, Counts{0, 2}),
		"nothing known": clusters(Counts{0, 0}), "alternate": clusters(Counts{1, 2}, Counts{1, 2}, Counts{1, 2}),
	} {
		if d := c.Design(); d != 1 {
			t.Errorf("%s: %v", what, d)
		}
		if i := c.Effective().Wilson(); math.IsNaN(i.Low) || math.IsNaN(i.High) {
			t.Errorf("%s: %v", what, i)
		}
	}
	if a := AlikeOf([]Share{{3, 3}, {}}); a != nil {
		t.Errorf("one group alone differs: %v", a)
	}
	if a := AlikeOf([]Share{{3, 3}, {2, 2}}); a == nil || a.P != 1 || a.Chi2 != 0 {
		t.Errorf("all alive: %v", a)
	}
}

// Three against three can never tell; a test on stumps that each fare for
// themselves is the exact one.
func TestCompareSaysTooFew(t *testing.T) {
	if p := Compare(clusters(Counts{3, 3}), clusters(Counts{0, 3})); p.Enough || !p.Exact || math.Abs(p.P-0.1) > 1e-12 {
		t.Errorf("%+v", p)
	}
	if p := Compare(clusters(), clusters(Counts{2, 3})); p.Enough || p.P != 1 {
		t.Errorf("%+v", p)
	}
}

// Published: 4 ft 69/195, 5 ft 139/203, 6 ft 167/200, chi-square 102.1127, 2 df;
// with single grafts to a stump the counts stand as they are.
func TestAlikeAsPublished(t *testing.T) {
	singles := func(y, n int) (c Clusters) {
		for i := range n {
			c.Add(int64(min(1, max(0, y-i))), 1)
		}
		return c
	}
	var shares []Share
	for _, c := range []Counts{{69, 195}, {139, 203}, {167, 200}} {
		s := singles(c.Alive, c.Of)
		if d := s.Design(); d > 1.01 {
			t.Fatalf("design effect %v of single grafts", d)
		}
		shares = append(shares, c.share())
	}
	if a := AlikeOf(shares); math.Abs(a.Chi2-102.1127) > 5e-5 || a.Freedom != 2 {
		t.Errorf("%+v", a)
	}
	for _, c := range []struct {
		y, n      float64
		low, high float64
	}{{5, 60, 0.0361, 0.1807}, {675, 900, 0.7207, 0.7772}, {4, 100, 0.0157, 0.0984}, {10, 10, 0.7225, 1}} {
		if i := (Share{c.y, c.n}).Wilson(); math.Abs(i.Low-c.low) > 5e-5 || math.Abs(i.High-c.high) > 5e-5 {
			t.Errorf("%v of %v: %v", c.y, c.n, i)
		}
	}
}

// Freireich 1963: weeks, the curve by whole days is the published one.
func TestSurvivalByDayIsTheCurve(t *testing.T) {
	happened, lost := make([]int, 36), make([]int, 36)
	for _, at := range []int{6, 6, 6, 7, 10, 13, 16, 22, 23} {
		happened[at]++
	}
	for _, at := range []int{6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35} {
		lost[at]++
	}
	want := []float64{0.857, 0.807, 0.753, 0.690, 0.627, 0.538, 0.448}
	c := SurvivalByDay(happened, lost)
	if len(c.Steps) != len(want) {
		t.Fatalf("%d steps", len(c.Steps))
	}
	for i, s := range c.Steps {
		if math.Abs(s.Still-want[i]) > 5e-4 {
			t.Errorf("after %v: %v, want %v", s.At, s.Still, want[i])
		}
	}
}
