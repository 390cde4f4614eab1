package girth

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"barkslip/core/unit"
	publishedtable "barkslip/testdata/published"
)

// published reads a table of testdata/published as rows by column name.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, cell := range line {
			row[lines[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return rows
}

func float(t *testing.T, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// inputs reads "a=10 b=1".
func inputs(t *testing.T, s string) map[string]float64 {
	t.Helper()
	in := map[string]float64{}
	for _, part := range strings.Fields(s) {
		name, value, _ := strings.Cut(part, "=")
		in[name] = float(t, value)
	}
	return in
}

// geometry is what each check of geometry.csv computes.
var geometry = map[string]func(t *testing.T, in map[string]float64) float64{
	"elliptic-e": func(_ *testing.T, in map[string]float64) float64 { return mathext.EllipticE(in["phi"], in["m"]) },
	"girth":      ovalGirth,
	"girth-near": ovalGirth,
	"ring": func(_ *testing.T, in map[string]float64) float64 {
		var blocked []span
		if in["to"] > 0 {
			blocked = []span{{in["from"], in["to"]}}
		}
		return newRing(in["round"], blocked).widest(int(in["k"]))
	},
	"orange-asymptote": func(t *testing.T, _ map[string]float64) float64 { return orangeTrees(t).asymptote },
	"orange-midpoint":  func(t *testing.T, _ map[string]float64) float64 { return orangeTrees(t).midpoint },
	"orange-scale":     func(t *testing.T, _ map[string]float64) float64 { return orangeTrees(t).scale },
}

// orangeTrees is the logistic through all the measured trunks.
func orangeTrees(t *testing.T) logistic {
	t.Helper()
	var days, mm []float64
	for _, row := range published(t, "orange-trees.csv") {
		days, mm = append(days, float(t, row["day"])), append(mm, float(t, row["circumference_mm"]))
	}
	l, ok := fitLogistic(days, mm)
	if !ok || len(days) != 35 {
		t.Fatalf("no logistic fits the %d measures", len(days))
	}
	return l
}

func ovalGirth(_ *testing.T, in map[string]float64) float64 {
	return Oval{Across: unit.Length(2 * in["a"]), Across2: unit.Length(2 * in["b"])}.Girth().MM()
}

func TestPublishedGeometry(t *testing.T) {
	for _, row := range published(t, "geometry.csv") {
		t.Run(publishedtable.Title(row["check"], row["inputs"], row["source"]), func(t *testing.T) {
			compute := geometry[row["check"]]
			if compute == nil || row["source"] == "" {
				t.Fatalf("no such check, or no source: %v", row)
			}
			got, want := compute(t, inputs(t, row["inputs"])), float(t, row["expected"])
			if !(math.Abs(got-want) <= float(t, row["tolerance"])) {
				t.Errorf("%s %s: %.16g, want %s (%s)", row["check"], row["inputs"], got, row["expected"], row["source"])
			}
		})
	}
}
