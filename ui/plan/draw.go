package plan

import (
	"fmt"
	"strings"

	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

func (s *Screen) lines(width int) []paper.Line {
	wide, b := min(width-4, 96), s.x.Site()
	lines := []paper.Line{nil}
	say := func(ink paper.Ink, text string) {
		if text != "" {
			lines = append(lines, part.Indent(2, part.Wrapped(ink, text, wide))...)
		}
	}
	season := s.pace.Season
	if s.pace.Known {
		say(headInk(season), season.Words())
		say(paper.Plain, countWords(season))
		say(paper.Plain, season.Pace.Words()+s.needs())
		if off := b.Off.Words(); off != "" {
			say(paper.Faint, "Days off: "+off+".")
		}
	} else {
		say(paper.Strong, "When does bark slip here?")
		say(paper.Plain, "When bark slips at this latitude is not known. Give the first and the last day: o, then bark slips from and until.")
	}
	lines = append(lines, nil)
	for _, shares := range s.days {
		lines = append(lines, s.shareLines(shares, wide)...)
	}
	if s.pace.Known {
		lines = append(append(lines, nil), s.table(min(width-2, 110))...)
	}
	return lines
}

func headInk(s plan.Season) paper.Ink {
	if s.Short > 0 {
		return paper.Warn
	}
	return paper.Strong
}

// countWords is what there is to do, in a sentence.
func countWords(s plan.Season) string {
	if s.Left() == 0 {
		return ""
	}
	var words []string
	add := func(n int, what string) {
		if n > 0 {
			words = append(words, fmt.Sprintf("%d %s", n, what))
		}
	}
	add(s.Standing, "standing")
	add(s.Draining, fmt.Sprintf("draining (%d ready)", s.Ready))
	add(s.Regraft, "to graft again")
	cut := "none"
	if n := s.OnDay(s.On).CutBack; n > 0 {
		cut = fmt.Sprint(n)
	}
	return fmt.Sprintf("%s. Cut back %s today.", strings.Join(words, ", "), cut)
}

// needs says what keeps pace where the rate does not.
func (s *Screen) needs() string {
	p := s.pace
	if p.Needed == 0 || p.Season.Short == 0 || p.Needed <= p.Season.Rate {
		return ""
	}
	return fmt.Sprintf(" %d on each working day would keep pace.", p.Needed)
}

// farDays is how many days the table shows at the most.
const farDays = 62

// table is the coming days: what is cut back and grafted, in figures and as a bar,
// and the weather put down.
func (s *Screen) table(width int) []paper.Line {
	season, b := s.pace.Season, s.x.Site()
	if len(season.Days) == 0 {
		return nil
	}
	last, most := season.Days[len(season.Days)-1].Day, 1
	for _, d := range season.Days {
		most = max(most, d.Graft)
	}
	const label, counts, tail = 14, 12, 26
	room := max(width-label-counts-tail, 6)
	columns := min(room, 3*most) // of the day with the most
	lines := []paper.Line{paper.Line{}.Pad(label).Add(paper.Faint, " cut graft")}
	for day := season.On; day <= last && day <= season.On.Add(farDays); day++ {
		work := season.OnDay(day)
		if day < season.Slip.From && work == (plan.SeasonDay{Day: day}) && !season.Off(day) && s.weather(b, day) == "" {
			continue // nothing to say of it
		}
		mark := "  "
		if day == season.On {
			mark = " >"
		}
		l := paper.Line{{Text: mark + " " + day.Weekday().String()[:3] + " " + day.Short(), Ink: paper.Plain}}.Pad(label)
		switch {
		case season.Off(day):
			l = l.Add(paper.Faint, "  day off")
		default:
			l = l.Add(paper.Plain, number(work.CutBack)+"  "+number(work.Graft)+"  ")
			l = append(l, part.Bar(columns, float64(most), s.x.Shaded(work.Graft, figure.Full, figure.Growth))...)
			if day == season.On && season.Grafted > 0 {
				l = l.Add(paper.Faint, fmt.Sprintf(" %d grafted already", season.Grafted))
			}
			if day > season.Slip.To || day < season.Slip.From {
				l = l.Add(paper.Faint, "no slip")
			}
		}
		if words := s.weather(b, day); words != "" {
			l = l.Pad(label+counts+room+1).Add(s.heatInk(b, day), words)
		}
		lines = append(lines, l.Cut(width))
	}
	return lines
}

func number(n int) string {
	if n == 0 {
		return "   ."
	}
	return fmt.Sprintf("%4d", n)
}

// weather is the rain and heat that were put down for a day.
func (s *Screen) weather(b *record.Block, day unit.Date) string {
	w, known := b.Weather[day]
	if !known {
		return ""
	}
	words := b.Units.Temperature(w.What.High.Temperature)
	if hot(w.What) {
		words = "HOT " + words
	}
	if rain := w.What.RainWords(b.Units); rain != "" {
		words += ", " + rain
	}
	return words
}

func hot(w record.DayWeather) bool { return w.High.Temperature >= trade.HeatCaution }

func (s *Screen) heatInk(b *record.Block, day unit.Date) paper.Ink {
	if hot(b.Weather[day].What) {
		return paper.Warn
	}
	return paper.Plain
}

// shareLines is who has the work of a day, and what nobody has.
func (s *Screen) shareLines(shares plan.Shares, wide int) []paper.Line {
	day := s.dayName(shares.Day)
	switch {
	case len(shares.Hands)+len(shares.Idle) > 0:
	case len(shares.Nobody) > 0:
		return part.Indent(2, part.Wrapped(paper.Plain, fmt.Sprintf("Nothing is given for %s: work is due on %s.", day, unit.Count(len(shares.Nobody), "stump")), wide))
	default:
		return part.Indent(2, part.Wrapped(paper.Faint, "No work is due "+day+".", wide))
	}
	lines := []paper.Line{paper.Text(paper.Strong, "  Given for "+day)}
	add := func(label string, ink paper.Ink, text string) {
		lines = append(lines, part.Indent(2, part.Under(fmt.Sprintf("  %-4s", label), paper.Accent, ink, text, wide))...)
	}
	for _, h := range shares.Hands {
		add(h.Given.To, paper.Plain, shareWords(h))
	}
	if len(shares.Idle) > 0 {
		add("", paper.Faint, strings.Join(shares.Idle, ", ")+": nothing yet.")
	}
	for _, twice := range shares.Twice {
		add("!", paper.Warn, "Given twice: "+twice+".")
	}
	switch words := shares.NobodyWords(); {
	case words != "":
		add("", paper.Plain, words)
	case len(shares.Hands) > 0:
		add("", paper.Faint, "Nothing else is due.")
	}
	return lines
}

func shareWords(h plan.Share) string {
	g := h.Given
	what := unit.Count(len(g.Stumps), "stump")
	if len(g.Rows) > 0 {
		what = g.RowWords()
	} else if n := len(g.Stumps); n > 1 {
		first, last := g.Stumps[0], g.Stumps[n-1]
		what += fmt.Sprintf(" from %d/%d to %d/%d", first.Row, first.Tree, last.Row, last.Tree)
	}
	return fmt.Sprintf("%s; work is due on %s.", what, unit.Count(len(h.Calls), "stump"))
}
