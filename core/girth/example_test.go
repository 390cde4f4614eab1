package girth_test

import (
	"fmt"

	"barkslip/core/girth"
	"barkslip/core/unit"
)

// A round stump 4 in across: four scions, one to 80 mm of girth.
func ExampleScions() {
	c, err := girth.Scions(4*unit.Inch, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f mm round, %d scions, %.1f mm apart\n", c.Girth.MM(), c.Scions, c.Spacing.MM())
	// Output: 319.2 mm round, 4 scions, 79.8 mm apart
}

// Three slots on a round stump with bark from 75 degrees either side of north
// blocked: the free bark gives 105 degrees between neighbours.
func ExampleSlots() {
	round := 300 * unit.Millimetre
	l, err := girth.Slots(girth.SlotPlan{
		Across: round, Scions: 3, Slot: unit.Millimetre / 1000,
		Blocked: []girth.Arc{{Bearing: 75, Width: girth.Oval{Across: round}.Girth() * 150 / 360}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d slots, %.0f degrees apart\n", l.Scions, float64(l.Gap/l.Girth)*360)
	// Output: 3 slots, 105 degrees apart
}
