// Package tally weighs results: rates with their intervals, differences, exact
// tests, the chance of a stump whose grafts share its luck, waiting times, and
// tables of counts.
package tally

import (
	"fmt"
	"strconv"
	"strings"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Counts is how many are alive of how many judged.
type Counts struct {
	Alive, Of int
}

// mostCounted is more than any block holds and keeps the sums exact.
const mostCounted = 10_000_000

// ParseCounts reads ALIVE/OF, such as 48/80.
func ParseCounts(s string) (Counts, error) {
	alive, of, _ := strings.Cut(s, "/")
	a, errAlive := strconv.Atoi(strings.TrimSpace(alive))
	n, errOf := strconv.Atoi(strings.TrimSpace(of))
	if errAlive != nil || errOf != nil {
		return Counts{}, &unit.Error{Given: s, Accepted: "alive/of, such as 48/80"}
	}
	return Counts{Alive: a, Of: n}, nil
}

func (c Counts) String() string { return fmt.Sprintf("%d/%d", c.Alive, c.Of) }

// Rate is the share alive, 0 to 1; of none it is 0.
func (c Counts) Rate() float64 {
	if c.Of == 0 {
		return 0
	}
	return float64(c.Alive) / float64(c.Of)
}

// check refuses counts that cannot be, in the name of the option they came by.
func (c Counts) check(aliveOption, ofOption string) error {
	if c.Of < 1 || c.Of > mostCounted {
		return &trade.Impossible{Option: ofOption, Given: strconv.Itoa(c.Of), Accepted: fmt.Sprintf("a count from 1 to %d", mostCounted)}
	}
	if c.Alive < 0 || c.Alive > c.Of {
		return &trade.Impossible{Option: aliveOption, Given: strconv.Itoa(c.Alive), Accepted: fmt.Sprintf("a count from 0 to %d, as many as were judged", c.Of)}
	}
	return nil
}
