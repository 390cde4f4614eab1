package ui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/core/weather"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// weather is the way in to a block's weather: put a day down, read a list of
// coming days, or see them.
func (r *root) weather() {
	r.pick("The block's weather", "From it the white clock knows the sun, and a day to graft can be chosen.", []listItem{
		{"put a day down", "low, high, wind, cloud", func() error { r.askWeather(); return nil }},
		{"read a list", "a CSV file of coming days: date, low_f, high_f", func() error { r.askDays(); return nil }},
		{"see the days", "callus, heat and frost of the coming fortnight", func() error { r.days(); return nil }},
	})
}

func (r *root) askWeather() {
	example := "52 91 3 0"
	if r.x.site().Units == unit.Metric {
		example = "11 33 1.5 0"
	}
	r.ask("Low high wind cloud in eighths ("+example+"):", "", true, func(text string) error {
		w, err := readWeather(text, r.x.site(), r.x.now())
		if err != nil {
			return err
		}
		return r.keepWeather([]*record.DayWeather{w})
	})
}

// readWeather reads low, high, wind and cloud; the last two may be left out,
// and a date other than today may stand first.
func readWeather(text string, b *record.Block, now time.Time) (*record.DayWeather, error) {
	bad := &unit.Error{Given: text, Accepted: "low and high, then wind and cloud in eighths if known: 52 91 3 0"}
	words := strings.Fields(text)
	w := &record.DayWeather{Block: b.ID, Day: b.Day(now), Wind: trade.UsualWind.MS(), WindAssumed: true}
	if len(words) > 0 {
		if d, err := unit.ParseDate(words[0]); err == nil {
			w.Day, words = d, words[1:]
		}
	}
	if len(words) < 2 || len(words) > 4 {
		return nil, bad
	}
	for i, into := range []*record.Degrees{&w.Low, &w.High} {
		t, err := unit.ParseTemperature(words[i], b.Units.BareTemperature())
		if err != nil {
			return nil, err
		}
		*into = record.Degrees{Temperature: t, Typed: b.Units.Temperature(t)}
	}
	if len(words) > 2 {
		v, err := unit.ParseSpeed(words[2], b.Units.BareSpeed())
		if err != nil {
			return nil, err
		}
		w.Wind, w.WindAssumed = v.MS(), false
	}
	if len(words) > 3 {
		n, err := strconv.Atoi(words[3])
		if err != nil || n < 0 || n > 8 {
			return nil, &unit.Error{Given: words[3], Accepted: "cloud from 0, clear, to 8, overcast"}
		}
		w.Cloud = n
	}
	return w, record.Check(record.Event{Body: w})
}

func (r *root) askDays() {
	r.ask("Path of the list:", "", true, func(path string) error {
		file, err := r.x.OpenFile(strings.TrimSpace(path))
		if err != nil {
			return fmt.Errorf("the list cannot be opened: %s", paper.Shorten(path, 50))
		}
		defer file.Close()
		list, err := weather.ReadTemps(file)
		if err != nil {
			return err
		}
		sys := r.x.site().Units
		var days []*record.DayWeather
		for _, e := range list {
			days = append(days, &record.DayWeather{Block: r.x.block, Day: e.Date, Wind: trade.UsualWind.MS(), WindAssumed: true,
				Low:  record.Degrees{Temperature: e.Low, Typed: sys.Temperature(e.Low)},
				High: record.Degrees{Temperature: e.High, Typed: sys.Temperature(e.High)}})
		}
		return r.keepWeather(days)
	})
}

// keepWeather writes days of weather in one transaction, each in place of what
// was put down for it before.
func (r *root) keepWeather(days []*record.DayWeather) error {
	given := record.Given{At: r.x.Now()}
	for _, w := range days {
		given.Bodies = append(given.Bodies, w)
	}
	events, err := r.x.Book.Folded().Answer(given)
	if err != nil {
		return err
	}
	if _, err := r.x.write(record.NoStump, events...); err != nil {
		return err
	}
	if err := r.reload(); err != nil {
		return err
	}
	r.x.say("Taken: weather of " + counted(len(days), "day") + ".")
	return nil
}

// days shows the coming fortnight: callus, heat and frost, and which days are
// best to graft.
func (r *root) days() {
	b := r.x.site()
	today := b.Day(r.x.now())
	r.page = &page{r: r, title: "Weather", where: b.Name, make: func(width int) []paper.Line { return r.dayLines(b, today, width-4) }}
}

func (r *root) dayLines(b *record.Block, today unit.Date, width int) []paper.Line {
	lines := []paper.Line{nil, paper.Text(paper.Strong, "  Which day is good to graft?"), nil}
	answer, err := walk.Callus(b, today, 0)
	if len(answer.Days) == 0 || err != nil {
		return append(lines, paper.Text(paper.Plain, "  No coming day is put down yet; d puts one down or reads a list."))
	}
	if answer.BestStart != nil {
		lines = append(lines, paper.Text(paper.Plain, fmt.Sprintf("  The best fourteen days for callus begin %s.", answer.BestStart.Long())), nil)
	} else {
		lines = append(lines, paper.Text(paper.Plain, "  Fourteen days in a row are wanted to name the best start."), nil)
	}
	for _, d := range answer.Days {
		lines = append(lines, r.dayLine(b, d))
	}
	return append(append(lines, nil), r.workLines(answer.Work, width)...)
}

// dayLine is one day: its temperatures, its callus as a bar of up to 20 signs,
// and what to mind.
func (r *root) dayLine(b *record.Block, d weather.CallusDay) paper.Line {
	w := b.Weather[d.Date].What
	full, rest := "█", "·"
	if r.x.Plain {
		full, rest = "#", "."
	}
	n := int(d.Callus*20 + 0.5)
	l := paper.Line{{Text: fmt.Sprintf("  %-3s %-7s", d.Date.Weekday().String()[:3], d.Date.Short()), Ink: paper.Plain},
		{Text: fmt.Sprintf("%6s to %-6s ", b.Units.Temperature(w.Low.Temperature), b.Units.Temperature(w.High.Temperature)), Ink: paper.Plain},
		{Text: strings.Repeat(full, n), Ink: paper.Growth}, {Text: strings.Repeat(rest, 20-n), Ink: paper.Faint},
		{Text: fmt.Sprintf(" %.2f", d.Callus), Ink: paper.Plain}}
	switch {
	case w.High.Temperature >= trade.HeatPostpone-0.01:
		l = l.Add(paper.Warn, "  postpone, or white and shade")
	case w.High.Temperature >= trade.HeatCaution-0.01:
		l = l.Add(paper.Warn, "  hot: white in time")
	case w.Low.Temperature <= 0:
		l = l.Add(paper.Warn, "  frost: soft shoots in danger")
	}
	return l
}

// heatView is the day's heat in a graft under dark sealer and under white.
func (s *stumpScreen) heatView(w, h int) []paper.Line {
	sealed := s.x.now()
	if a := s.c.A.Sealed; a != nil {
		sealed = a.At
	}
	heat, ok := due.Heat(s.s, s.x.site(), sealed)
	if !ok {
		return nil
	}
	return lines(heatFigure(heat, s.x.site()).Draw(w, h, s.x.mode()))
}

// heatFigure draws the hotter of the dark parts and the hotter of the white.
func heatFigure(heat weather.HeatAnswer, b *record.Block) figure.Day {
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
		curve("black", figure.Solid, figure.Accent, c.BlackScion, c.BlackSide),
		curve("white", figure.Dashed, figure.Plain, c.WhiteScion, c.WhiteSide),
		curve("air", figure.Dotted, figure.Faint, c.Air),
	}}
	day.Marks = append(day.Marks, figure.Mark{Hour: hour(heat.Sealed), Label: "sealed " + heat.Sealed.In(b.Zone).Format("15:04"), Ink: figure.Faint})
	if w := heat.WhiteBefore; w != nil {
		day.Marks = append(day.Marks, figure.Mark{Hour: hour(*w), Label: "white before " + w.In(b.Zone).Format("15:04"), Ink: figure.Warn})
	}
	slices.SortFunc(day.Marks, func(x, y figure.Mark) int { return int(100 * (x.Hour - y.Hour)) })
	return day
}
