package weather

import (
	"time"

	"barkslip/core/unit"
)

// Day is the daylight around the noon of one local date. Rise and Set are nil
// where the sun does not cross the horizon; near the poles in summer Set may
// fall after midnight and Rise before it.
type Day struct {
	Date       unit.Date
	Rise       *time.Time // the sun's upper edge comes up
	Noon       time.Time  // the sun is highest
	Set        *time.Time // the upper edge goes under
	AlwaysUp   bool       // the sun stays up for the whole turn around noon
	AlwaysDown bool       // the sun does not come up
}

// Length is the daylight: 24 hours where the sun stays up, 0 where it stays
// down.
func (d Day) Length() time.Duration {
	if d.AlwaysDown {
		return 0
	}
	from, to := d.ends()
	return to.Sub(from)
}

// ends are rise and set, or half a turn either side of noon where there is
// none.
func (d Day) ends() (from, to time.Time) {
	from, to = d.Noon.Add(-halfTurn), d.Noon.Add(halfTurn)
	if d.Rise != nil {
		from = *d.Rise
	}
	if d.Set != nil {
		to = *d.Set
	}
	return from, to
}

const (
	sunUnder = 0.833 // degrees under the horizon at rise and set: half the disc and the air's bending
	halfTurn = 12 * time.Hour
)

// SunDay is sunrise, noon and sunset of a date on the place's own clock, to the
// second, with the horizon level and at the place's own height. The place must
// be valid.
func SunDay(p Place, d unit.Date) Day {
	day := Day{Date: d, Noon: solarNoon(p, d).In(p.Zone).Round(time.Second)}
	if SunAt(p, day.Noon).TrueZenith >= 90+sunUnder {
		day.AlwaysDown = true
		return day
	}
	day.Rise = crossing(p, day.Noon, day.Noon.Add(-halfTurn))
	day.Set = crossing(p, day.Noon, day.Noon.Add(halfTurn))
	day.AlwaysUp = day.Rise == nil && day.Set == nil
	return day
}

// solarNoon is the sun's passage over the meridian nearest the middle of the
// local date.
func solarNoon(p Place, d unit.Date) time.Time {
	start := d.In(p.Zone)
	t := start.Add(d.Add(1).In(p.Zone).Sub(start) / 2)
	for range 3 {
		c := centuries(t)
		a := apparent(centuries(t.Add(clockTrails)))
		hour := turn(greenwich(c) + a.nutation*cosd(a.obliquity) + p.Lon - a.ascension)
		if hour > 180 {
			hour -= 360
		}
		t = t.Add(-time.Duration(hour / 15 * float64(time.Hour)))
	}
	return t
}

// crossing is where the sun passes the horizon between a time with the sun up
// and the midnight before or after it; nil if it is up there too.
func crossing(p Place, up, night time.Time) *time.Time {
	if SunAt(p, night).TrueZenith < 90+sunUnder {
		return nil
	}
	for range 24 { // halves 12 hours to 3 milliseconds
		middle := up.Add(night.Sub(up) / 2)
		if SunAt(p, middle).TrueZenith < 90+sunUnder {
			up = middle
		} else {
			night = middle
		}
	}
	t := up.Round(time.Second)
	return &t
}
