package tally_test

import (
	"fmt"

	"barkslip/core/tally"
)

// 81 of 263: Newcombe 1998, Statistics in Medicine 17:857, Table I, method 3.
func ExampleWilson() {
	i := tally.Wilson(tally.Counts{Alive: 81, Of: 263})
	fmt.Printf("%.4f to %.4f\n", i.Low, i.High)
	// Output: 0.2553 to 0.3662
}
