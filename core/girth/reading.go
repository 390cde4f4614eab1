package girth

import (
	"math"
	"strings"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Reading is the girth of a stem as measured on a day.
type Reading struct {
	On    unit.Date
	Girth unit.Length
}

// ParseReadings reads days and girths, "2027-06-01=4.1in 2027-10-01=5in"; each
// girth must carry its unit and may be written with spaces, as 4 1/8 in.
// Anything else is a *unit.Error.
func ParseReadings(s string) ([]Reading, error) {
	var pairs []string
	for _, word := range strings.Fields(s) {
		if !strings.Contains(word, "=") && len(pairs) > 0 {
			pairs[len(pairs)-1] += " " + word
			continue
		}
		pairs = append(pairs, word)
	}
	var readings []Reading
	for _, pair := range pairs {
		r, err := parseReading(pair)
		if err != nil {
			return nil, err
		}
		readings = append(readings, r)
	}
	if len(readings) == 0 {
		return nil, &unit.Error{Given: s, Accepted: acceptedReadings}
	}
	return readings, nil
}

const acceptedReadings = `DATE=GIRTH such as "2027-06-01=4.1in 2027-10-01=5in", in order of date, each girth above 0 and with its unit: in, ft, mm, cm or m`

func parseReading(pair string) (Reading, error) {
	fail := &unit.Error{Given: pair, Accepted: acceptedReadings}
	day, long, _ := strings.Cut(pair, "=")
	on, err := unit.ParseDate(day)
	if err != nil {
		return Reading{}, fail
	}
	girth, err := unit.ParseLength(long, 0)
	if err != nil || girth <= 0 {
		return Reading{}, fail
	}
	return Reading{on, girth}, nil
}

// checkReadings refuses readings out of order, two on a day, and girths no
// stem has. Girths may shrink a little from one to the next: tapes differ.
func checkReadings(readings []Reading) error {
	if len(readings) == 0 {
		return impossible("girth", "no reading", acceptedReadings)
	}
	for i, r := range readings {
		if !(r.Girth > 0) || r.Girth > trade.WidestStump*math.Pi {
			return impossible("girth", r.On.String()+"="+millimetres(r.Girth), "a girth above 0 and up to that of a stem 40in (1016mm) across")
		}
		if i > 0 && r.On <= readings[i-1].On {
			return impossible("girth", r.On.String()+" after "+readings[i-1].On.String(), "readings in order of date, one a day")
		}
	}
	return nil
}

// series are the readings as days after the first and mm.
func series(readings []Reading) (days, mm []float64) {
	for _, r := range readings {
		days = append(days, float64(r.On-readings[0].On))
		mm = append(mm, r.Girth.MM())
	}
	return days, mm
}
