package weather

import (
	"math"
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Wood and coats.
const (
	woodHeat   = 2.2e6                // J/m3K, green wood
	deepest    = 20 * unit.Millimetre // wood that warms with the surface
	blackTakes = 0.94                 // share of the sunlight that dark sealer absorbs
	whiteTakes = 0.25
	emittance  = 0.9
	boltzmann  = 5.670374419e-8 // W/m2K4
	skyColder  = 10.0           // kelvin by which a clear sky is colder than the air
	kelvin     = 273.15
	leastWind  = 0.3 // m/s; air about a stump never stands quite still
)

// part is a piece of a graft that warms as one lump.
type part struct {
	across float64 // metres, against the wind
	store  float64 // J/m2K behind each square metre of surface
	still  float64 // cooling in still air
	takes  float64 // share of the sunlight that its coat absorbs
}

// parts are scion, side and top of a sealed graft under one coat.
func parts(thick, across unit.Length, takes float64) [3]part {
	stem := min(across/4, deepest).Metres()
	return [3]part{
		{thick.Metres(), woodHeat * thick.Metres() / 4, stillUpright, takes},
		{across.Metres(), woodHeat * stem, stillUpright, takes},
		{across.Metres(), woodHeat * stem, stillTop, takes},
	}
}

// moment is the weather about the graft at one instant.
type moment struct {
	air, sky float64    // degrees C
	wind     float64    // m/s
	light    [3]float64 // W/m2 on scion, side and top
}

// loss is the heat that a surface of a temperature gives off to air and sky, in
// W/m2, and by how much it grows with each kelvin.
func (p part) loss(surface float64, m moment) (flux, slope float64) {
	film := airOf((surface+m.air)/2 + kelvin)
	h := cooling(windCooling(m.wind, p.across, film), p.still, surface-m.air)
	radiated := emittance * boltzmann * (fourth(surface) - (fourth(m.air)+fourth(m.sky))/2)
	cube := surface + kelvin
	return h*(surface-m.air) + radiated, h + 4*emittance*boltzmann*cube*cube*cube
}

// fourth is the fourth power of a temperature given in degrees C, in K4.
func fourth(c float64) float64 {
	square := (c + kelvin) * (c + kelvin)
	return square * square
}

// warm carries a temperature over some seconds in which gain and loss in W/m2
// hold; the slope of the loss keeps thin scions from overshooting.
func warm(c, gain, loss, slope, store, seconds float64) float64 {
	return c + seconds*(gain-loss)/(store+seconds*slope)
}

// follow gives the temperature of a part at each of a row of moments, from that
// of the air at the first; gaps are the seconds between moments.
func (p part) follow(moments []moment, light int, gaps []float64) []float64 {
	out := make([]float64, len(moments))
	out[0] = moments[0].air
	for i, gap := range gaps {
		m := moments[i]
		loss, slope := p.loss(out[i], m)
		out[i+1] = warm(out[i], p.takes*m.light[light], loss, slope, p.store, gap)
	}
	return out
}

// light is the sunlight at a place and instant under cloud, and the zenith.
func light(p Place, t time.Time, outside, oktas float64) (Sunlight, float64) {
	sun := SunAt(p, t)
	cosz := sun.cosZenith()
	if cosz == 0 {
		return Sunlight{}, sun.Zenith
	}
	metres := p.Altitude.Metres()
	clear := ineichen(outside, sun.Zenith, airMass(sun.Zenith, metres), haze, metres)
	return clear.under(oktas, cosz), sun.Zenith
}

// Spell is how one part of the graft fares from sealing to midnight.
type Spell struct {
	Peak   unit.Temperature `json:"peak_c"`
	PeakAt time.Time        `json:"peak_at"`
	Over45 float64          `json:"over_45_min"`
}

// spell sums up a row of temperatures; the minutes over the limit are reckoned
// straight between neighbouring values.
func spell(times []time.Time, temps []float64) Spell {
	limit := trade.InjuryFrom.C()
	s := Spell{Peak: unit.Temperature(temps[0]), PeakAt: times[0]}
	for i, c := range temps[1:] {
		if c > s.Peak.C() {
			s.Peak, s.PeakAt = unit.Temperature(c), times[i+1]
		}
		low, high := min(temps[i], c), max(temps[i], c)
		share := 0.0
		switch {
		case low > limit:
			share = 1
		case high > limit:
			share = (high - limit) / (high - low)
		}
		s.Over45 += share * times[i+1].Sub(times[i]).Minutes()
	}
	return s
}

// firstOver is when a row of temperatures first passes the limit; nil if never.
func firstOver(times []time.Time, temps []float64) *time.Time {
	limit := trade.InjuryFrom.C()
	for i, c := range temps {
		if !(c > limit) {
			continue
		}
		t := times[i]
		if i > 0 {
			share := (c - limit) / (c - temps[i-1])
			t = t.Add(-time.Duration(math.Round(share*t.Sub(times[i-1]).Seconds())) * time.Second)
		}
		return &t
	}
	return nil
}
