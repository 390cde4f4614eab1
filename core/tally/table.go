package tally

import (
	"fmt"

	"gonum.org/v1/gonum/stat/distuv"

	"barkslip/core/trade"
)

// TableAnswer is the chi-square test of a table of counts.
type TableAnswer struct {
	Statistic float64      `json:"statistic"`
	Freedom   int          `json:"df"`
	P         float64      `json:"p"`
	Least     float64      `json:"least_expected"` // in any cell
	Rough     bool         `json:"rough"`          // that is under 5
	Work      trade.Worked `json:"because"`
}

// Table tests whether the rows of a table of counts share their counts out over
// the columns alike. Rows and columns without a count are left out; fewer than
// two of either, rows of unequal length or counts under 0 are a
// *trade.Impossible.
func Table(counts [][]int) (TableAnswer, error) {
	rows, columns, total, err := totals(counts)
	if err != nil {
		return TableAnswer{}, err
	}
	a := TableAnswer{Freedom: (filled(rows) - 1) * (filled(columns) - 1), Least: total}
	for i, row := range counts {
		for j, n := range row {
			expected := rows[i] * columns[j] / total
			if expected == 0 {
				continue
			}
			off := float64(n) - expected
			a.Statistic += off * off / expected
			a.Least = min(a.Least, expected)
		}
	}
	a.P = distuv.ChiSquared{K: float64(a.Freedom)}.Survival(a.Statistic)
	a.Rough = a.Least < trade.LeastExpected
	a.Work = trade.Worked{
		Question: "Do the rows differ by more than chance?",
		Answer: []trade.Input{
			{Name: "chance of rows as different if all fare alike", Value: a.P}, {Name: "chi-square", Value: a.Statistic},
			{Name: "degrees of freedom", Value: a.Freedom}, {Name: "least expected in a cell", Value: a.Least},
		},
		Formula: "Chi-square = sum over the cells of (seen - expected)^2 / expected, expected = row total x column total / all.",
		Inputs:  []trade.Input{{Name: "rows", Value: filled(rows)}, {Name: "columns", Value: filled(columns)}, {Name: "counted", Value: total}},
		Assumed: []string{"each one counted fared for itself"},
		Facts:   []trade.Fact{trade.ChiSquared},
	}
	return a, nil
}

// AliveTable is the table of alive and dead for counts, a row each.
func AliveTable(groups ...Counts) [][]int {
	var table [][]int
	for _, c := range groups {
		table = append(table, []int{c.Alive, c.Of - c.Alive})
	}
	return table
}

func totals(counts [][]int) (rows, columns []float64, total float64, err error) {
	refuse := func(given any) error {
		return &trade.Impossible{Option: "table", Given: fmt.Sprint(given), Accepted: "two rows and two columns or more with counts from 0"}
	}
	rows = make([]float64, len(counts))
	for i, row := range counts {
		if i == 0 {
			columns = make([]float64, len(row))
		}
		if len(row) != len(columns) {
			return nil, nil, 0, refuse(row)
		}
		for j, n := range row {
			if n < 0 || n > mostCounted {
				return nil, nil, 0, refuse(n)
			}
			rows[i] += float64(n)
			columns[j] += float64(n)
			total += float64(n)
		}
	}
	if filled(rows) < 2 || filled(columns) < 2 {
		return nil, nil, 0, refuse(fmt.Sprintf("%d rows and %d columns with counts", filled(rows), filled(columns)))
	}
	return rows, columns, total, nil
}

// filled is how many totals are not 0.
func filled(totals []float64) (n int) {
	for _, t := range totals {
		if t > 0 {
			n++
		}
	}
	return n
}
