package stump

import (
	"slices"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// heat is the day's heat in a graft sealed as this one was, or now.
func (s *Screen) heat() (weather.HeatAnswer, bool) {
	sealed := s.x.Time()
	if a := s.walk.A.Sealed; a != nil {
		sealed = a.At
	}
	return s.walk.Heat(sealed)
}

// heatView is the day's heat in a graft under dark sealer and under white.
func (s *Screen) heatView(w, h int) []paper.Line {
	heat, ok := s.heat()
	if !ok {
		return nil
	}
	return s.x.Inked(heatFigure(heat, s.walk.WhiteBy(), s.x.Site()).Draw(w, h, s.x.Mode()))
}

// heatFigure draws the hotter of the dark parts and the hotter of the white, and by
// when it is to be white, where that is the same day.
func heatFigure(heat weather.HeatAnswer, by time.Time, b *record.Block) figure.Day {
	hour := func(t time.Time) float64 {
		t = t.In(b.Zone)
		return float64(t.Hour()) + float64(t.Minute())/60
	}
	curve := func(name string, dash figure.Dash, ink figure.Ink, temps ...[]unit.Temperature) figure.DayLine {
		l := figure.DayLine{Name: name, Dash: dash, Ink: ink}
		for i, t := range heat.Curves.Times {
			hottest := temps[0][i]
			for _, other := range temps[1:] {
				hottest = max(hottest, other[i])
			}
			h := hour(t)
			if n := len(l.Points); n > 0 && h < l.Points[n-1].Hour {
				h = 24
			}
			l.Points = append(l.Points, figure.Reading{Hour: h, Temp: hottest})
		}
		return l
	}
	c := heat.Curves
	day := figure.Day{Limit: trade.InjuryFrom, Sys: b.Units, Lines: []figure.DayLine{
		curve("black", figure.Filled, figure.Black, c.BlackScion, c.BlackSide),
		curve("white", figure.Hollow, figure.White, c.WhiteScion, c.WhiteSide),
		curve("air", figure.Dotted, figure.Faint, c.Air),
	}}
	at := func(t time.Time) string { return t.In(b.Zone).Format("15:04") }
	day.Marks = append(day.Marks, figure.Mark{Hour: hour(heat.Sealed), Label: "sealed " + at(heat.Sealed), Brief: []string{"sealed"}, Ink: figure.Plain})
	if !by.IsZero() && b.Day(by) == b.Day(heat.Sealed) {
		day.Marks = append(day.Marks, figure.Mark{Hour: hour(by), Label: "white by " + at(by), Brief: []string{"by " + at(by), at(by)}, Ink: figure.Warn})
	}
	slices.SortFunc(day.Marks, func(x, y figure.Mark) int { return int(100 * (x.Hour - y.Hour)) })
	return day
}
