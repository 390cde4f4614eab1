package tally

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"barkslip/testdata/published"
)

// pairs reads counts such as 56/70 48/80.
func pairs(t *testing.T, text string) (out []Counts) {
	t.Helper()
	for _, field := range strings.Fields(text) {
		c, err := ParseCounts(field)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, c)
	}
	return out
}

func yes(is bool) float64 {
	if is {
		return 1
	}
	return 0
}

func TestPublishedProportions(t *testing.T) {
	published.Each(t, "proportions.csv", func(t *testing.T, c published.Check) {
		switch c.Name {
		case "wilson":
			i := Wilson(pairs(t, c.Inputs)[0])
			c.Against(t, i.Low, i.High)
		case "difference":
			p := pairs(t, c.Inputs)
			a, err := Take(p[0].Alive, p[0].Of, &p[1])
			if err != nil {
				t.Fatal(err)
			}
			c.Against(t, *a.Difference, *a.DifferenceLow, *a.DifferenceHigh)
		case "fisher":
			p := pairs(t, c.Inputs)
			c.Against(t, Fisher(p[0], p[1]))
		case "one-sided":
			p := pairs(t, c.Inputs)
			c.Against(t, FisherMore(p[0], p[1]))
		case "enough":
			p := pairs(t, c.Inputs)
			c.Against(t, yes(Enough(p[0], p[1])))
		case "at-least-one":
			v := c.Values(t)
			c.Against(t, AtLeastOne(v["p"], int(v["n"])))
		case "nought":
			n, err := strconv.Atoi(c.Inputs)
			if err != nil {
				t.Fatal(err)
			}
			c.Against(t, NoughtAtMost(n), RuleOfThree(n))
		case "beta-binomial":
			v := c.Values(t)
			m, r := v["a"]/(v["a"]+v["b"]), 1/(1+v["a"]+v["b"])
			c.Against(t, chances(int(v["n"]), m, r)...)
		case "logits":
			c.Against(t, logits(t, c.Inputs)...)
		default:
			t.Errorf("no such check: %q", c.Name)
		}
	})
}

// chances are those of 0 to n alive of n on a stump; the chance of none is that
// behind the chance of a stump.
func chances(n int, m, r float64) []float64 {
	out := []float64{noneOf(n, m, r)}
	for k := 1; k <= n; k++ {
		l := lot{counts: []Counts{{Alive: k, Of: n}}, times: []float64{1}}
		ways := math.Exp(rising(1, 1, n) - rising(1, 1, k) - rising(1, 1, n-k))
		out = append(out, ways*math.Exp(l.log(m, r)))
	}
	return out
}

// logits fits lots of counts parted by semicolons.
func logits(t *testing.T, text string) (out []float64) {
	t.Helper()
	var lots [][]Counts
	for part := range strings.SplitSeq(text, ";") {
		lots = append(lots, pairs(t, part))
	}
	a, err := Learn(lots...)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range a.Rates {
		out = append(out, math.Log(p/(1-p)))
	}
	return out
}

func TestPublishedSurvival(t *testing.T) {
	published.Each(t, "survival.csv", func(t *testing.T, c published.Check) {
		var all []Waited
		for field := range strings.FieldsSeq(c.Inputs) {
			text, censored := strings.CutSuffix(field, "+")
			all = append(all, Waited{For: published.Numbers(t, text)[0], Happened: !censored})
		}
		curve, err := Survival(all)
		if err != nil {
			t.Fatal(err)
		}
		var got []float64
		for _, s := range curve.Steps {
			switch c.Name {
			case "surviving":
				got = append(got, s.Still)
			case "times":
				got = append(got, s.At)
			case "standard-error":
				got = append(got, s.StandardError)
			default:
				t.Fatalf("no such check: %q", c.Name)
			}
		}
		c.Against(t, got...)
	})
}

func TestPublishedCounts(t *testing.T) {
	published.Each(t, "counts.csv", func(t *testing.T, c published.Check) {
		switch c.Name {
		case "wilson-percent":
			i := Wilson(pairs(t, c.Inputs)[0])
			c.Against(t, 100*i.Low, 100*i.High)
		case "chi-square":
			a, err := Table(AliveTable(pairs(t, c.Inputs)...))
			if err != nil {
				t.Fatal(err)
			}
			c.Against(t, a.Statistic, float64(a.Freedom))
		case "rows", "rows-p", "columns", "columns-p":
			rows, columns := twenties(t, c.Inputs)
			groups := rows
			if strings.HasPrefix(c.Name, "columns") {
				groups = columns
			}
			a, err := Table(AliveTable(groups...))
			if err != nil {
				t.Fatal(err)
			}
			if strings.HasSuffix(c.Name, "-p") {
				c.Against(t, a.P)
			} else {
				c.Against(t, a.Statistic, float64(a.Freedom))
			}
		default:
			t.Errorf("no such check: %q", c.Name)
		}
	})
}

// twenties adds up a table of counts, each of 20, by row and by column.
func twenties(t *testing.T, text string) (rows, columns []Counts) {
	t.Helper()
	for part := range strings.SplitSeq(text, ";") {
		var row Counts
		for j, n := range published.Numbers(t, part) {
			if j == len(columns) {
				columns = append(columns, Counts{})
			}
			row.Alive, row.Of = row.Alive+int(n), row.Of+20
			columns[j].Alive, columns[j].Of = columns[j].Alive+int(n), columns[j].Of+20
		}
		rows = append(rows, row)
	}
	return rows, columns
}
