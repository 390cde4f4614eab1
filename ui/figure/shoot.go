package figure

import (
	"math"
	"strings"

	"barkslip/core/unit"
)

// Shoot is the leader against the stake it is tied to, and how it grew through the
// summer beside it at the same scale. Lengths are from the graft.
type Shoot struct {
	Measured []Reached
	Forecast []Reached
	From, To unit.Date
	StakeTop unit.Length // 0 where there is no stake yet
	AimLow   unit.Length // where the leader should end the season
	AimHigh  unit.Length
	Ties     []unit.Length
	Next     unit.Length // where the next tie goes; 0 where none is to come
	Sys      unit.System
}

// Reached is how long the shoot was on a day.
type Reached struct {
	On     unit.Date
	Length unit.Length
}

// The curve is drawn where there are columns for it beside the stake with its
// words.
const (
	stakeColumns = 26
	curveFrom    = 52
)

// Draw draws the shoot in w columns and h lines: against its stake, and where
// there is room how it came there, at the same scale.
func (s Shoot) Draw(w, h int, mode Mode) Figure {
	c, ok := newCanvas(w, h, mode)
	if !finite(s.Next.MM()) {
		s.Next = 0
	}
	v := s.curve()
	if !ok || !v.drawable() {
		return c.finish()
	}
	if c.w < curveFrom {
		stake := v
		stake.Series, stake.HLines, stake.XTicks = nil, nil, nil
		f := stake.frame(c, 0)
		f.high.y = float64(4*c.h) - 1
		if c.h >= 6 {
			f.high.y -= 2
		}
		f.draw(c)
		s.stake(c, f, int(f.low.x)/2+1)
		return c.finish()
	}
	f := v.frame(c, stakeColumns)
	f.draw(c)
	s.stake(c, f, c.w-stakeColumns+1)
	return c.finish()
}

// curve is the shoot as a curve, dates along and lengths up.
func (s Shoot) curve() Curve {
	size, name, step := unit.Foot, "ft", 1.0
	if s.Sys == unit.Metric {
		size, name, step = unit.Metre, "m", 0.5
	}
	high := max(s.StakeTop, s.AimHigh, s.Next, unit.Foot)
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
		v.HLines = []Line{{At: float64(s.StakeTop / size), Dash: Dashed}}
	}
	if s.AimLow < s.AimHigh {
		v.Bands = []Band{{Y0: float64(s.AimLow / size), Y1: float64(s.AimHigh / size), Ink: Faint}}
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

// pole is where the stake stands on the canvas: columns of dots, and the heights
// of lengths.
type pole struct {
	shoot, wood float64
	left        int // the first column that is free
	height      func(unit.Length) float64
}

// stake draws the shoot as it stands now against its stake, from a column on: its
// length, its ties, what it is forecast to gain, and the words of all of these.
func (s Shoot) stake(c *canvas, f frame, left int) {
	size := unit.Foot
	if s.Sys == unit.Metric {
		size = unit.Metre
	}
	p := pole{left: left, height: func(l unit.Length) float64 { return f.at(Point{f.X0, float64(l / size)}).y }}
	p.shoot = float64(2 * (left + min(max((c.w-left)/3-3, 1), 12)))
	p.wood = p.shoot + 5
	ground := p.height(0)
	c.line(point{float64(2 * left), ground}, point{float64(2*c.w) - 1, ground}, pen{ink: Faint})
	if s.StakeTop > 0 {
		c.polyline([]point{{p.wood + 1, ground - 1}, {p.wood + 1, min(p.height(s.StakeTop)+1, ground-1)}}, pen{dash: Filled})
	}
	for _, tie := range s.Ties {
		c.line(point{p.shoot - 1, p.height(tie)}, point{p.wood + 2, p.height(tie)}, pen{})
	}
	if s.Next > 0 {
		c.line(point{p.shoot - 1, p.height(s.Next)}, point{p.wood + 2, p.height(s.Next)}, pen{ink: Accent, dash: Dotted})
	}
	now := s.now()
	if now > 0 {
		c.line(point{p.shoot, ground}, point{p.shoot, p.height(now)}, pen{ink: Growth})
		c.line(point{p.shoot + 1, ground}, point{p.shoot + 1, p.height(now)}, pen{ink: Growth})
	}
	if n := len(s.Forecast); n > 0 {
		c.line(point{p.shoot, p.height(now)}, point{p.shoot, p.height(s.Forecast[n-1].Length)}, pen{ink: Growth, dash: Dotted})
	}
	s.stakeWords(c, p)
}

// now is the shoot's length when it was last measured; 0 if it never was.
func (s Shoot) now() unit.Length {
	if n := len(s.Measured); n > 0 && finite(s.Measured[n-1].Length.MM()) {
		return s.Measured[n-1].Length
	}
	return 0
}

// stakeWords writes the shoot's length along it, and behind the stake what stands
// at each height, as much as has a line of its own.
func (s Shoot) stakeWords(c *canvas, p pole) {
	now := s.now()
	switch {
	case now == 0 && s.StakeTop > 0 && p.height(0)-p.height(s.StakeTop) > 12:
		x, y := cellAt(point{p.wood + 5, p.height(0) - 4})
		c.text(x, y, fitting(c.w-x, "shoot not measured", "not measured"), Faint)
	case now > 0 && !s.along(c, p, now):
		p.beside(c, now, Growth, "shoot "+s.Sys.Length(now), s.Sys.Length(now))
	}
	if s.StakeTop > 0 {
		p.beside(c, s.StakeTop, Plain, "stake "+tall(s.Sys, s.StakeTop), "stake")
	}
	if s.AimLow < s.AimHigh {
		low, high := tall(s.Sys, s.AimLow), tall(s.Sys, s.AimHigh)
		if number, size, ok := strings.Cut(low, " "); ok && strings.HasSuffix(high, " "+size) {
			low = number
		}
		for _, at := range []unit.Length{(s.AimLow + s.AimHigh) / 2, s.AimHigh, s.AimLow} {
			if p.beside(c, at, Faint, "aim "+low+" to "+high, "aim "+high, "aim") {
				break
			}
		}
	}
	if n := len(s.Forecast); n > 0 && s.Forecast[n-1].Length > now {
		last := s.Forecast[n-1]
		p.beside(c, last.Length, Growth, tall(s.Sys, last.Length)+" by "+last.On.Short(), "by "+last.On.Short())
	}
	if s.Next > 0 {
		p.beside(c, s.Next, Accent, "next tie "+tall(s.Sys, s.Next), "next tie", "tie")
	}
	for i := len(s.Ties) - 1; i >= 0; i-- {
		if finite(s.Ties[i].MM()) {
			p.beside(c, s.Ties[i], Plain, "tie "+tall(s.Sys, s.Ties[i]), "tie")
		}
	}
}

// along writes the shoot's length left of it, at the middle of a dimension line,
// if there is room.
func (s Shoot) along(c *canvas, p pole, now unit.Length) bool {
	said := s.Sys.Length(now)
	x := p.shoot - 4
	top, ground := p.height(now), p.height(0)
	column, _ := cellAt(point{x, 0})
	_, row := cellAt(point{x, (top + ground) / 2})
	start := column - 1 - width(said)
	if start < p.left || ground-top < 8 || !c.clear(start, row, width(said)) {
		return false
	}
	c.line(point{x, top}, point{x, ground}, pen{ink: Faint})
	for _, y := range []float64{top, ground} {
		c.line(point{x - 1, y}, point{x + 1, y}, pen{ink: Faint})
	}
	c.text(start, row, said, Growth)
	return true
}

// beside writes the first of the texts that fits behind the stake at a height, and
// says whether there was room.
func (p pole) beside(c *canvas, at unit.Length, ink Ink, texts ...string) bool {
	x, y := cellAt(point{p.wood + 5, p.height(at)})
	s := fitting(c.w-x, texts...)
	if s == "" || !c.free(x, y, width(s)) {
		return false
	}
	c.text(x, y, s, ink)
	return true
}

// tall says a height beside the stake: in feet or metres, from one of them on.
func tall(sys unit.System, l unit.Length) string {
	switch {
	case sys == unit.US && l >= unit.Foot:
		return trimmed(float64(l/unit.Foot)) + " ft"
	case sys == unit.Metric && l >= unit.Metre:
		return trimmed(float64(l/unit.Metre)) + " m"
	}
	return round(sys, l)
}
