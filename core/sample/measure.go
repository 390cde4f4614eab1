package sample

import (
	"strconv"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// eighthTyped is how a length in eighths of an inch is typed, for the lengths
// that come up again and again.
var eighthTyped = func() (typed [1024]string) {
	parts := [8]string{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"}
	for i := range typed {
		whole, part := i/8, parts[i%8]
		switch {
		case part == "":
			typed[i] = strconv.Itoa(whole) + "in"
		case whole == 0:
			typed[i] = part + "in"
		default:
			typed[i] = strconv.Itoa(whole) + " " + part + "in"
		}
	}
	return typed
}()

// eighths is a length in eighths of an inch, as measured with a tape.
func eighths(n int) record.Measure {
	n = min(max(n, 0), len(eighthTyped)-1)
	return record.Measure{Length: unit.Length(float64(n)/8) * unit.Inch, Typed: eighthTyped[n]}
}

// inches is a length in whole inches.
func inches(n int) record.Measure { return eighths(8 * n) }
