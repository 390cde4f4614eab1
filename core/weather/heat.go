package weather

import (
	"math"
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// HeatDay is one date for which the heat of a sealed graft is asked.
type HeatDay struct {
	Place     Place
	Date      unit.Date
	Low, High unit.Temperature // of the air
	Wind      unit.Speed       // taken as steady
	Cloud     float64          // oktas, 0 clear to 8 overcast
	Across    unit.Length      // the stump
	Thick     unit.Length      // the scion
	Sealed    *unit.Clock      // on the date; nil: at sunrise
}

// What is usual where nothing is said.
const (
	UsualAcross = 3 * unit.Inch
	UsualThick  = 0.4 * unit.Inch
)

// NewHeatDay is a clear day with a usual graft, sealed at sunrise.
func NewHeatDay(p Place, d unit.Date, low, high unit.Temperature, wind unit.Speed) HeatDay {
	return HeatDay{Place: p, Date: d, Low: low, High: high, Wind: wind, Across: UsualAcross, Thick: UsualThick}
}

// HeatAnswer is the day's heat in a graft left dark and in one painted white.
type HeatAnswer struct {
	Air         [24]unit.Temperature `json:"air"` // at elapsed hours after local midnight
	Sun         HeatSun              `json:"sun"`
	Black       Coat                 `json:"black"`
	White       Coat                 `json:"white"`
	WhiteBefore *time.Time           `json:"white_before"`
	DryFirst    bool                 `json:"dry_first"` // the sealer is not dry by then: shade it
	Advice      string               `json:"advice"`
	Work        trade.Worked         `json:"because"`

	Sealed time.Time  `json:"-"`
	Passed *time.Time `json:"-"` // when the dark scion or side first passes the limit; nil if never
	Curves Curves     `json:"-"`
}

// HeatSun is the day's sun and the most it gives at any time of the day.
type HeatSun struct {
	Rise *time.Time `json:"rise"` // nil where it does not cross the horizon
	Noon time.Time  `json:"noon"`
	Set  *time.Time `json:"set"`
	Top  float64    `json:"top_w_m2"`
	Side float64    `json:"side_w_m2"`
}

// Coat is a graft under one colour. The top is the upper bound of a surface
// with no wood under it to carry heat off, and is not steered by.
type Coat struct {
	Scion Spell `json:"scion"`
	Side  Spell `json:"side"`
	Top   Spell `json:"top"`
}

// Curves are the temperatures from sealing to midnight, for drawing.
type Curves struct {
	Times                 []time.Time
	Air                   []unit.Temperature
	BlackScion, BlackSide []unit.Temperature
	WhiteScion, WhiteSide []unit.Temperature
}

// Heat reckons how hot a graft gets from sealing to midnight of the date, under
// dark sealer and under white, and by when it must be white. The error is a
// *trade.Impossible.
func Heat(d HeatDay) (HeatAnswer, error) {
	if err := d.check(); err != nil {
		return HeatAnswer{}, err
	}
	sun := SunDay(d.Place, d.Date)
	air := airThrough(d.Place, []Extremes{{d.Date, d.Low, d.High}})[0]
	times, gaps := steps(d.sealedAt(sun), d.Date.Add(1).In(d.Place.Zone), step)
	moments := make([]moment, len(times))
	for i, t := range times {
		moments[i] = d.momentAt(t, air(t).C())
	}

	a := HeatAnswer{Air: hourly(d.Place, d.Date, air), Sealed: times[0]}
	a.Sun = HeatSun{Rise: sun.Rise, Noon: sun.Noon, Set: sun.Set}
	a.Sun.Side, a.Sun.Top = d.strongest()
	black := a.Black.fill(times, moments, gaps, parts(d.Thick, d.Across, blackTakes))
	white := a.White.fill(times, moments, gaps, parts(d.Thick, d.Across, whiteTakes))
	a.whiteBefore(times, black)
	a.Curves = curves(times, moments, black, white)
	a.Advice = d.advice(a, sun)
	a.Work = d.work(a, sun)
	return a, nil
}

// sealedAt is the instant of sealing: the clock time on the date, sunrise where
// none is given, and the start of the date where the sun is up already then or
// does not rise at all.
func (d HeatDay) sealedAt(sun Day) time.Time {
	start := d.Date.In(d.Place.Zone)
	switch {
	case d.Sealed != nil:
		if t := d.Sealed.On(d.Date, d.Place.Zone); t.After(start) {
			return t
		}
	case d.risesOn(sun):
		return *sun.Rise
	}
	return start
}

// risesOn tells whether the sun rises on the date itself; near the poles the
// daylight around noon may begin before midnight.
func (d HeatDay) risesOn(sun Day) bool {
	return sun.Rise != nil && unit.DateOf(sun.Rise.In(d.Place.Zone)) == d.Date
}

// step is the time over which sun, air and loss of heat are taken as steady; a
// thirtieth of it moves no answer by 0.01 C.
const step = 30 * time.Second

// steps are the instants from sealing to midnight and the seconds between them.
func steps(from, to time.Time, every time.Duration) (times []time.Time, gaps []float64) {
	times = append(times, from)
	for t := from; t.Before(to); {
		next := stepAfter(t, to, every)
		gaps = append(gaps, next.Sub(t).Seconds())
		times = append(times, next)
		t = next
	}
	return times, gaps
}

// stepAfter is the end of the step from a time, which does not go past the last.
func stepAfter(t, last time.Time, every time.Duration) time.Time {
	if next := t.Add(every); next.Before(last) {
		return next
	}
	return last
}

func (d HeatDay) momentAt(t time.Time, air float64) moment {
	s, zenith := light(d.Place, t, outside(d.Date.YearDay()), d.Cloud)
	return moment{
		air:   air,
		sky:   air - skyColder*(1-d.Cloud/8),
		wind:  max(leastWind, d.Wind.MS()),
		light: [3]float64{s.round(zenith), s.sunnyHalf(zenith), s.Level},
	}
}

// strongest is the most sun that side and top get at any minute of the date.
func (d HeatDay) strongest() (side, top float64) {
	end := d.Date.Add(1).In(d.Place.Zone)
	for t := d.Date.In(d.Place.Zone); t.Before(end); t = t.Add(time.Minute) {
		m := d.momentAt(t, 0)
		side, top = math.Max(side, m.light[1]), math.Max(top, m.light[2])
	}
	return side, top
}

// fill sums up scion, side and top and returns their temperatures.
func (c *Coat) fill(times []time.Time, moments []moment, gaps []float64, ps [3]part) (temps [3][]float64) {
	for i, s := range []*Spell{&c.Scion, &c.Side, &c.Top} {
		temps[i] = ps[i].follow(moments, i, gaps)
		*s = spell(times, temps[i])
	}
	return temps
}

// whiteBefore sets the time by which the graft must be white: an hour
// before its dark scion or side passes 45 C, not before it is sealed.
func (a *HeatAnswer) whiteBefore(times []time.Time, black [3][]float64) {
	for _, temps := range black[:2] {
		over := firstOver(times, temps)
		if over == nil {
			continue
		}
		a.Passed = sooner(a.Passed, *over)
		a.WhiteBefore = sooner(a.WhiteBefore, whiteFrom(*over, a.Sealed))
	}
	a.DryFirst = dryFirst(a.WhiteBefore, a.Sealed)
}

// dryFirst says whether the sealer is not dry yet by when the graft must be white.
func dryFirst(before *time.Time, sealed time.Time) bool {
	return before != nil && before.Before(sealed.Add(trade.WhiteOpensHours*time.Hour))
}

const drawEvery = 10 // steps: five minutes

// curves thins the temperatures out to one every five minutes, and midnight.
func curves(times []time.Time, moments []moment, black, white [3][]float64) (c Curves) {
	for i := range times {
		if i%drawEvery != 0 && i != len(times)-1 {
			continue
		}
		c.Times = append(c.Times, times[i])
		c.Air = append(c.Air, unit.Temperature(moments[i].air))
		c.BlackScion = append(c.BlackScion, unit.Temperature(black[0][i]))
		c.BlackSide = append(c.BlackSide, unit.Temperature(black[1][i]))
		c.WhiteScion = append(c.WhiteScion, unit.Temperature(white[0][i]))
		c.WhiteSide = append(c.WhiteSide, unit.Temperature(white[1][i]))
	}
	return c
}
