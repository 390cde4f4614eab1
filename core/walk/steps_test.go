package walk

import (
	"testing"

	"barkslip/core/due"
)

// Every kind of due is met on a step of the walk.
func TestEveryDueHasItsStep(t *testing.T) {
	for _, kind := range due.Kinds() {
		if stepByID(kind.Step()) == nil {
			t.Errorf("%s is met on no step", kind)
		}
	}
}
