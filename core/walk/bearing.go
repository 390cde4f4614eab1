package walk

import (
	"regexp"
	"strconv"
	"strings"

	"barkslip/core/unit"
)

// hourOf is an hour of the clock as it is typed: 3h, 3 o'clock.
var hourOf = regexp.MustCompile(`^(1[0-2]|[1-9])\s*(?:h|o'?clock|o’clock)$`)

// spacedHour is an hour typed with a space in it.
var spacedHour = regexp.MustCompile(`\b(\d{1,2})\s+o['’]?clock`)

// readBearing reads a direction from the middle of the stump without a compass
// or with one: a compass word, degrees, or the hour on a clock laid on the stump
// as seen from the shade side, 6 o'clock nearest and 12 behind.
func (c *Case) readBearing(text string) (unit.Bearing, error) {
	if m := hourOf.FindStringSubmatch(strings.ToLower(strings.TrimSpace(text))); m != nil {
		hour, _ := strconv.Atoi(m[1])
		return (c.B.Shade() + 180 + unit.Bearing(hour%12)*30).Normal(), nil
	}
	b, err := unit.ParseBearing(text)
	if err != nil {
		return 0, &unit.Error{Given: text, Accepted: "a side such as N or NNE, degrees from north such as 120, or the clock seen from the shade side such as 3h"}
	}
	return b, nil
}
