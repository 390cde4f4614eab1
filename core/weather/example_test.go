package weather_test

import (
	"fmt"

	"barkslip/core/unit"
	"barkslip/core/weather"
)

// Callus grows fastest at the species' best temperature, taken as 27 C for walnut.
func ExampleCardinal_Rate() {
	walnut, err := weather.CallusOf("walnut")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f of the best at 27 C, %.2f at 20 C, %.2f at 10 C\n",
		walnut.Rate(unit.Temperature(27)), walnut.Rate(unit.Temperature(20)), walnut.Rate(unit.Temperature(10)))
	// Output: 1.00 of the best at 27 C, 0.60 at 20 C, 0.00 at 10 C
}
