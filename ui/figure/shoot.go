package figure

import (
	"math"

	"barkslip/core/unit"
)

// Shoot is the leader's length through a summer, with the stake it is tied to
// standing beside the curve at the same scale. Lengths are from the graft.
type Shoot struct {
	Measured []Reached
	Forecast []Reached
	From, To unit.Date
	StakeTop unit.Length // 0 where there is no stake yet
	AimLow   unit.Length // where the leader should end the season
	AimHigh  unit.Length
	Ties     []unit.Length
	Sys      unit.System
}

// Reached is how long the shoot was on a day.
type Reached struct {
	On     unit.Date
	Length unit.Length
}

// stakeColumns are kept to the right of the curve for the stake.
const stakeColumns = 6

// Draw draws the shoot in w columns and h lines.
func (s Shoot) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	v := s.curve()
	if !ok || !v.drawable() {
		return c.finish()
	}
	beside := stakeColumns
	if c.w < 24 {
		beside = 0
	}
	f := v.frame(c, beside)
	if beside > 0 {
		s.stake(c, f)
	}
	f.draw(c)
	return c.finish()
}

// curve is the shoot as a curve, dates along and lengths up.
func (s Shoot) curve() Curve {
	size, name, step := unit.Foot, "ft", 1.0
	if s.Sys == unit.Metric {
		size, name, step = unit.Metre, "m", 0.5
	}
	high := max(s.StakeTop, s.AimHigh, unit.Foot)
	along := func(all []Reached) (through []Point) {
		for _, r := range all {
			if finite(r.Length.MM()) {
				high = max(high, r.Length)
			}
			through = append(through, Point{float64(r.On), float64(r.Length / size)})
		}
		return through
	}
	v := Curve{X0: float64(s.From), X1: float64(s.To), YName: name, XTicks: months(s.From, s.To)}
	v.Series = []Series{
		{Name: "forecast", Points: along(s.Forecast), Ink: Growth, Dash: Dashed},
		{Name: "measured", Points: along(s.Measured), Ink: Growth, Dots: true},
	}
	step = roundStep(float64(high/size)/6, step)
	v.Y1 = math.Ceil(float64(high/size)*1.04/step) * step
	v.YTicks = ticks(0, v.Y1, step)
	if s.StakeTop > 0 {
		v.HLines = []Line{{At: float64(s.StakeTop / size), Label: "stake " + round(s.Sys, s.StakeTop), Dash: Dashed}}
	}
	if s.AimLow < s.AimHigh {
		v.Bands = []Band{{Y0: float64(s.AimLow / size), Y1: float64(s.AimHigh / size), Label: "aim", Ink: Faint}}
	}
	return v
}

// months are the first days of the months between two dates.
func months(from, to unit.Date) []Tick {
	const most = 60
	var all []Tick
	for d := from; d <= to && len(all) < most; {
		y, m, day := d.Parts()
		if day == 1 {
			all = append(all, Tick{float64(d), m.String()[:3]})
		}
		d = unit.MakeDate(y, m+1, 1)
	}
	return all
}

// stake draws the stake beside the curve, with the shoot as it stands now, what
// it is forecast to gain, and its ties.
func (s Shoot) stake(c *canvas, f frame) {
	size := unit.Foot
	if s.Sys == unit.Metric {
		size = unit.Metre
	}
	height := func(l unit.Length) float64 { return f.at(Point{f.X0, float64(l / size)}).y }
	wood, shoot := float64(2*c.w-4), float64(2*c.w-8)
	ground := height(0)
	c.line(point{shoot - 2, ground}, point{wood + 3, ground}, pen{ink: Faint})
	if s.StakeTop > 0 {
		for _, x := range []float64{wood, wood + 1} {
			c.line(point{x, ground}, point{x, height(s.StakeTop)}, pen{})
		}
	}
	now := unit.Length(0)
	if n := len(s.Measured); n > 0 {
		now = s.Measured[n-1].Length
		c.line(point{shoot, ground}, point{shoot, height(now)}, pen{ink: Growth})
	}
	if n := len(s.Forecast); n > 0 {
		c.line(point{shoot, height(now)}, point{shoot, height(s.Forecast[n-1].Length)}, pen{ink: Growth, dash: Dotted})
	}
	for _, tie := range s.Ties {
		c.line(point{shoot, height(tie)}, point{wood, height(tie)}, pen{})
	}
}
