package trade

import "barkslip/core/unit"

// UsualWind is taken for a day of which no wind was put down.
const UsualWind = 3 * unit.MileAnHour

// LightWind says so.
var LightWind = state("light-wind", "sums", Memory, "",
	"Where no wind is recorded a light one of 3 mph (1.3 m/s) is assumed.")
