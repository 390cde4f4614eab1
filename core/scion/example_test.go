package scion_test

import (
	"fmt"

	"barkslip/core/scion"
	"barkslip/core/unit"
)

// The cuts of a scion 0.4 in thick: how wide its slot is, and its two nails.
func ExampleCuts() {
	a, err := scion.Cuts(scion.Defaults(0.4 * unit.Inch))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("slot %.2f to %.2f mm, %d nails\n", a.Slot.Least.MM(), a.Slot.Most.MM(), len(a.Nails))
	// Output: slot 10.96 to 16.51 mm, 2 nails
}
