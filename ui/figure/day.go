package figure

import (
	"fmt"
	"math"
	"strconv"

	"barkslip/core/unit"
)

// Day is temperatures through one day, midnight to midnight.
type Day struct {
	Lines []DayLine
	Limit unit.Temperature // a line across; 0 for none
	Marks []Mark
	Sys   unit.System
}

// DayLine is one temperature through the day.
type DayLine struct {
	Name   string
	Points []Reading
	Dash   Dash
	Ink    Ink
}

// Reading is a temperature at an hour, 0 to 24, of the day.
type Reading struct {
	Hour float64
	Temp unit.Temperature
}

// Mark is an hour that matters and what happens then: sealed 10:30, in brief
// sealed.
type Mark struct {
	Hour  float64
	Label string
	Brief []string
	Ink   Ink
}

// Draw draws the day in w columns and h lines.
func (d Day) Draw(w, h int, mode Mode) Figure { return d.curve(w).Draw(w, h, mode) }

// The hours of the day that are drawn at least: the sun's.
const dawn, dusk = 6, 21

// limit is the line at the limit, which says what it is as fully as there is room
// for.
func (d Day) limit() Line {
	at := d.Sys.Temperature(d.Limit)
	return Line{At: d.degrees(d.Limit), Label: at + ": harm begins", Brief: []string{at + " harm", "harm"}, Ink: Warn, Dash: Dashed}
}

// curve is the day as a curve for a figure of w columns, in the degrees of the
// block.
func (d Day) curve(w int) Curve {
	v := Curve{X0: dawn, X1: dusk, YName: string(d.Sys.BareTemperature())}
	low, high := math.Inf(1), math.Inf(-1)
	if d.Limit != 0 {
		high = d.degrees(d.Limit)
		v.HLines = []Line{d.limit()}
	}
	for _, m := range d.Marks {
		if m.Hour >= 0 && m.Hour <= 24 {
			v.X0, v.X1 = min(v.X0, math.Floor(m.Hour)), max(v.X1, math.Ceil(m.Hour))
		}
		v.VLines = append(v.VLines, Line{At: m.Hour, Label: m.Label, Brief: m.Brief, Ink: m.Ink, Dash: Dotted})
	}
	for _, l := range d.Lines {
		s := Series{Name: l.Name, Dash: l.Dash, Ink: l.Ink}
		for _, r := range l.Points {
			p := Point{r.Hour, d.degrees(r.Temp)}
			if finite(p.X, p.Y) && p.X >= v.X0 && p.X <= v.X1 {
				low, high = min(low, p.Y), max(high, p.Y)
			}
			s.Points = append(s.Points, p)
		}
		v.Series = append(v.Series, s)
	}
	low = min(low, high)
	if !finite(low, high) {
		return Curve{}
	}
	step := roundStep((high-low)/5, 5)
	room := max(high-low, step) / 12
	v.Y0, v.Y1 = low-room, high+room
	v.YTicks = ticks(v.Y0, v.Y1, step)
	v.XTicks = hours(v.X0, v.X1, w)
	return v
}

func (d Day) degrees(t unit.Temperature) float64 {
	if d.Sys == unit.Metric {
		return t.C()
	}
	return t.F()
}

// hours are the ticks of a day as clock times, as many as stand apart in a figure
// of w columns.
func hours(from, to float64, w int) []Tick {
	step := 1
	for _, step = range []int{1, 2, 3, 6, 12} {
		if float64(w-6)*float64(step) >= 7*(to-from) {
			break
		}
	}
	var all []Tick
	for h := 0; h <= 24; h += step {
		if float64(h) >= from && float64(h) <= to {
			all = append(all, Tick{float64(h), fmt.Sprintf("%02d:00", h)})
		}
	}
	return all
}

// ticks are the multiples of step from low to high.
func ticks(low, high, step float64) []Tick {
	var all []Tick
	for n := math.Ceil(low / step); n*step <= high && len(all) < 50; n++ {
		all = append(all, Tick{n * step, strconv.FormatFloat(n*step, 'f', -1, 64)})
	}
	return all
}

// roundStep is the first of 1, 2, 4, 10, 20, 40 ... times least that is no less
// than about.
func roundStep(about, least float64) float64 {
	step := least
	for i := 0; step < about && i < 60; i++ {
		step *= []float64{2, 2, 2.5}[i%3]
	}
	return step
}
