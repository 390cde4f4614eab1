// Package weather reckons with sun, air and heat at a block: where the sun
// stands, how strongly it shines, how the air warms through a day, how hot a
// sealed graft gets under black and under white, and how fast callus grows.
// Nothing here is measured; every figure is a model of a stated source.
package weather

import (
	"math"
	"strconv"
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Place is a spot on the earth with the clock its people keep.
type Place struct {
	Lat, Lon float64     // degrees, north and east positive
	Altitude unit.Length // above the sea
	Zone     *time.Location
}

// inputs are where the place lies, as it went into a sum.
func (p Place) inputs() []trade.Input {
	degrees := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) + "°" }
	return []trade.Input{{Name: "latitude", Value: degrees(p.Lat)}, {Name: "longitude", Value: degrees(p.Lon)}}
}

// Altitudes on which people graft, with room to spare.
const (
	lowestGround  = -500 * unit.Metre
	highestGround = 9000 * unit.Metre
)

// What places and weather may be, as told where they are not.
const (
	AltitudeLimits = "-500m (-1640ft) to 9000m (29528ft) above the sea, with its unit"
	AirLimits      = "air of -90C to 60C (-130F to 140F)"
	WindLimits     = "a wind of 0m/s to 100m/s (224mph)"
)

// Validate refuses a place that is not on the earth or has no clock; the error
// is a *trade.Impossible naming lat, lon, altitude or zone.
func Validate(p Place) error {
	if !(math.Abs(p.Lat) <= 90) {
		return &trade.Impossible{Option: "lat", Given: number(p.Lat), Accepted: "degrees from -90 (south) to 90 (north)"}
	}
	if !(math.Abs(p.Lon) <= 180) {
		return &trade.Impossible{Option: "lon", Given: number(p.Lon), Accepted: "degrees from -180 (west) to 180 (east)"}
	}
	if !(p.Altitude >= lowestGround && p.Altitude <= highestGround) {
		return &trade.Impossible{Option: "altitude", Given: number(p.Altitude.Metres()) + "m", Accepted: AltitudeLimits}
	}
	if p.Zone == nil {
		return &trade.Impossible{Option: "zone", Given: "none", Accepted: "a time zone such as America/Los_Angeles"}
	}
	return nil
}

// number prints a figure as it was typed, without trailing noughts.
func number(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }
