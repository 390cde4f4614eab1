package tally

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// For two rows and two columns chi-square is n (ad - bc)^2 over the product of
// the totals, and its chance with one degree of freedom is that of the normal
// curve outside its root.
func TestTwoByTwo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string) int { return rapid.IntRange(1, 200).Draw(t, name) }
		a, b, c, d := n("a"), n("b"), n("c"), n("d")
		got, err := Table([][]int{{a, b}, {c, d}})
		if err != nil {
			t.Fatal(err)
		}
		cross := float64(a*d - b*c)
		want := float64(a+b+c+d) * cross * cross / (float64(a+b) * float64(c+d) * float64(a+c) * float64(b+d))
		if math.Abs(got.Statistic-want) > 1e-9*(1+want) || got.Freedom != 1 {
			t.Fatalf("%+v, want %v", got, want)
		}
		if p := math.Erfc(math.Sqrt(want / 2)); math.Abs(got.P-p) > 1e-9 {
			t.Fatalf("chance %v, want %v", got.P, p)
		}
		turned, err := Table([][]int{{a, c}, {b, d}})
		if err != nil || math.Abs(turned.Statistic-got.Statistic) > 1e-9 {
			t.Fatalf("turned round %+v, %v", turned, err)
		}
		padded, err := Table([][]int{{a, 0, b}, {0, 0, 0}, {c, 0, d}})
		if err != nil || padded.Freedom != 1 || math.Abs(padded.Statistic-got.Statistic) > 1e-9 || padded.Least != got.Least {
			t.Fatalf("with an empty row and column %+v, %v", padded, err)
		}
		if got.Rough != (got.Least < 5) {
			t.Fatalf("%+v", got)
		}
	})
}

func TestImpossibleTables(t *testing.T) {
	for _, bad := range [][][]int{nil, {{1, 2}}, {{1}, {2}}, {{1, 0}, {2, 0}}, {{1, 2}, {3}}, {{1, -2}, {3, 4}}, {{1, 2}, {0, 0}}} {
		if a, err := Table(bad); err == nil {
			t.Errorf("%v: %+v, want it refused", bad, a)
		}
	}
}
