package girth

import (
	"math"
	"slices"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// The ways a twine's day is found.
const (
	ByRate = "rate" // at a yearly gain of girth
	ByFit  = "fit"  // by the curve that fits the readings
)

const (
	daysAYear   = 365.25
	fitReadings = 3           // least for a fit
	horizonDays = 100 * 366.0 // what lies beyond is never
)

// TwinePlan is a loop of twine and the growth of the stem inside it.
type TwinePlan struct {
	Loop     unit.Length  // girth of the loop
	Readings []Reading    // of the stem, in order of date
	Rate     *unit.Length // girth gained a year; nil: from three readings or more
}

// Twining is when a loop grows tight and by when it is cut.
type Twining struct {
	TightOn   *unit.Date   `json:"tight_on"`   // the stem reaches the loop's girth; nil if never
	CutBefore unit.Date    `json:"cut_before"` // trade.TwineWarnDays earlier, or trade.TwineYears after the first reading if sooner
	Method    string       `json:"method"`     // ByRate or ByFit
	Work      trade.Worked `json:"because"`
}

// Twine finds the day the stem's girth reaches the loop's: between the readings
// where one of them has; else going on from the latest reading at the rate; else
// where the curve fitted to the readings gets there. A day over a century off
// is never. Errors are *trade.Impossible on loop, girth or rate.
func Twine(p TwinePlan) (Twining, error) {
	if err := p.check(); err != nil {
		return Twining{}, err
	}
	out := Twining{Method: ByFit}
	if p.Rate != nil {
		out.Method = ByRate
	}
	growth, from := p.growth()
	if on, ok := p.tightOn(growth, from); ok {
		out.TightOn = &on
	}
	out.CutBefore = p.Readings[0].On.AddYears(trade.TwineYears)
	if out.TightOn != nil {
		out.CutBefore = min(out.CutBefore, out.TightOn.Add(-trade.TwineWarnDays))
	}
	out.Work = p.work(out, growth)
	return out, nil
}

// TightOn is the day on which the stem fills the loop, as Twine says it; ok is false where
// it never does. Errors are *trade.Impossible on loop, girth or rate.
func TightOn(p TwinePlan) (on unit.Date, ok bool, err error) {
	if err := p.check(); err != nil {
		return 0, false, err
	}
	growth, from := p.growth()
	on, ok = p.tightOn(growth, from)
	return on, ok, nil
}

func (p TwinePlan) tightOn(growth curve, from unit.Date) (on unit.Date, ok bool) {
	if on, tight := p.passed(); tight {
		return on, true
	}
	days, ok := growth.reaches(p.Loop.MM())
	if !ok || days >= horizonDays {
		return 0, false
	}
	last := p.Readings[len(p.Readings)-1].On
	return max(from.Add(int(math.Ceil(days-hair))), last.Add(1)), true // it was still loose at the last reading
}

// fitMisses is by how much, in mm, a fitted curve may miss a reading and still
// date a girth that lies between two of them.
const fitMisses = 3

// passed is the day on which a girth that a reading has reached was passed: by
// the curve fitted to the readings or, where it misses one of them by more than
// 3 mm, by the line between the reading below the girth and the one past it. A
// first reading past it is its own day.
func (p TwinePlan) passed() (on unit.Date, tight bool) {
	i := slices.IndexFunc(p.Readings, func(r Reading) bool { return r.Girth >= p.Loop-sliver })
	switch {
	case i < 0:
		return 0, false
	case i == 0:
		return p.Readings[0].On, true
	}
	below, past := p.Readings[i-1], p.Readings[i]
	if len(p.Readings) >= fitReadings {
		days, sizes := series(p.Readings)
		c := fit(days, sizes)
		at, ok := c.reaches(p.Loop.MM())
		day := p.Readings[0].On.Add(int(math.Ceil(at - hair)))
		if ok && day > below.On && day <= past.On && worst(c, days, sizes) <= fitMisses {
			return day, true
		}
	}
	share := float64((p.Loop - below.Girth) / (past.Girth - below.Girth))
	return below.On.Add(int(math.Ceil(share*float64(past.On-below.On) - hair))), true
}

// growth is how the girth grows, in mm and days after from.
func (p TwinePlan) growth() (c curve, from unit.Date) {
	if p.Rate != nil {
		latest := p.Readings[len(p.Readings)-1]
		return line{latest.Girth.MM(), p.Rate.MM() / daysAYear}, latest.On
	}
	return fit(series(p.Readings)), p.Readings[0].On
}

// LoopLimits says what a loop may be.
const LoopLimits = "a girth above 0 and up to that of a stem 40in (1016mm) across, with its unit: 16in, 1 1/2ft, 40cm, 400mm or 0.4m"

func (p TwinePlan) check() error {
	if !(p.Loop > 0 && p.Loop <= trade.WidestStump*math.Pi) {
		return impossible("loop", millimetres(p.Loop), LoopLimits)
	}
	if err := checkReadings(p.Readings); err != nil {
		return err
	}
	if p.Rate != nil && !(*p.Rate >= 0 && *p.Rate <= unit.Metre) {
		return impossible("rate", millimetres(*p.Rate), "the girth gained a year, 0 to 1m")
	}
	if p.Rate == nil && len(p.Readings) < fitReadings {
		return impossible("girth", plural(len(p.Readings), "reading"), "three readings or more, or a rate")
	}
	return nil
}

func (p TwinePlan) work(out Twining, growth curve) trade.Worked {
	w := trade.Worked{
		Question: "When does the twine grow tight?",
		Inputs:   []trade.Input{{Name: "loop", Value: p.Loop}},
		Facts:    []trade.Fact{trade.TwineGirdles, trade.TwineOff},
	}
	if out.TightOn != nil {
		w.Answer = append(w.Answer, trade.Input{Name: "tight on", Value: *out.TightOn})
	} else {
		w.Answer = append(w.Answer, trade.Input{Name: "tight on", Value: "never, as the stem grows"})
	}
	w.Answer = append(w.Answer, trade.Input{Name: "cut before", Value: out.CutBefore})
	for _, r := range p.Readings {
		w.Inputs = append(w.Inputs, trade.Input{Name: "girth on " + r.On.Long(), Value: r.Girth})
	}
	if _, tight := p.passed(); tight {
		w.Formula = "the day between two readings on which the fitted curve passes the loop's girth, or the line between them where the curve misses a " +
			"reading by over 3 mm"
		return w
	}
	switch growth := growth.(type) {
	case logistic:
		w.Formula = "girth = asymptote / (1 + e^((midpoint - day) / scale)), least squares"
		w.Inputs = append(w.Inputs, trade.Input{Name: "levels off at", Value: unit.Length(growth.asymptote)})
		w.Facts = append(w.Facts, trade.LogisticGirth)
	case line:
		w.Formula = "girth grows in a straight line, least squares through the readings"
		w.Inputs = append(w.Inputs, trade.Input{Name: "girth gained a year", Value: unit.Length(growth.daily * daysAYear)})
		w.Facts = append(w.Facts, trade.StraightGirth)
		if p.Rate != nil {
			w.Formula = "girth grows at the rate, on from the latest reading"
			w.Facts = append(w.Facts, trade.GirthGain)
		}
	}
	return w
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return number(float64(n)) + " " + noun + "s"
}
