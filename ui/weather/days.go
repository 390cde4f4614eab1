package weather

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/core/weather"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// seeDays shows the coming fortnight: callus, heat and frost, and which days are
// best to graft.
func seeDays(x *part.Session) part.Msgs {
	b := x.Site()
	today := b.Day(x.Time())
	lines := func(width int) []paper.Line { return dayLines(x, b, today, width-4) }
	return part.Msgs{part.Read{Page: part.NewPage(x, "Weather", b.Name, lines)}}
}

func dayLines(x *part.Session, b *record.Block, today unit.Date, width int) []paper.Line {
	lines := []paper.Line{nil, paper.Text(paper.Strong, "  Which day is good to graft?"), nil}
	answer, err := walk.Callus(b, today, 0)
	if len(answer.Days) == 0 || err != nil {
		return append(lines, paper.Text(paper.Plain, "  No coming day is recorded yet; d records one or reads a list."))
	}
	if answer.BestStart != nil {
		lines = append(lines, paper.Text(paper.Plain, fmt.Sprintf("  The best fourteen days for callus begin %s.", answer.BestStart.Long())), nil)
	} else {
		lines = append(lines, paper.Text(paper.Plain, "  It takes fourteen days in a row to name the best start."), nil)
	}
	for _, d := range answer.Days {
		lines = append(lines, dayLine(x, b, d))
	}
	return append(append(lines, nil), part.WorkLines(answer.Work, b.Units, width)...)
}

// dayLine is one day: its temperatures, its callus as a bar,
// and what to mind.
func dayLine(x *part.Session, b *record.Block, d weather.CallusDay) paper.Line {
	w := b.Weather[d.Date].What
	const most = 20 // columns of a day at the best temperature
	n := int(d.Callus*most + 0.5)
	l := paper.Line{{Text: fmt.Sprintf("  %-3s %-7s", d.Date.Weekday().String()[:3], d.Date.Short()), Ink: paper.Plain},
		{Text: fmt.Sprintf("%6s to %-6s ", b.Units.Temperature(w.Low.Temperature), b.Units.Temperature(w.High.Temperature)), Ink: paper.Plain}}
	l = append(l, part.Bar(most, most, x.Shaded(n, figure.Full, figure.Growth), x.Shaded(most-n, figure.Track, figure.Faint))...)
	l = l.Add(paper.Plain, fmt.Sprintf(" %.2f", d.Callus))
	if rain := w.RainWords(b.Units); rain != "" {
		l = l.Add(paper.Plain, "  "+rain)
	}
	switch {
	case w.High.Temperature >= trade.HeatPostpone-0.01:
		l = l.Add(paper.Warn, "  too hot: postpone, or paint white at once and shade")
	case w.High.Temperature >= trade.HeatCaution-0.01:
		l = l.Add(paper.Warn, "  hot: paint white in time")
	case w.Low.Temperature <= 0:
		l = l.Add(paper.Warn, "  frost: it kills soft shoots")
	}
	return l
}
