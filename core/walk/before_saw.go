package walk

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// nearNails is how near old nails a cut is warned of them; from memory.
const nearNails = 2 * unit.Inch

// beforeCut puts before a cut what is to be minded of the season and the weather,
// in one sentence: a season of slip that is over or not begun, today's heat, wind
// and rain, and heat to come. It is said once a stump, before the first cut of the
// day; again only if the weather was put down since. early is how many days
// before the season the cut belongs.
func (c *Case) beforeCut(a *Ask, early int) {
	last := c.lastCutToday()
	var bad []string
	if last.IsZero() {
		bad = append(bad, c.slipMissed(early))
	}
	today, harm := c.todayWords(last)
	if !harm && today != "" {
		a.Because = strings.TrimSpace(a.Because + " " + sentence(today))
		today = ""
	}
	bad = append(bad, today, c.hotterDay(last))
	a.Warn = joined(a.Warn, sentence(bad...))
}

// joined sets one sentence behind another, either of which may be missing.
func joined(first, then string) string { return strings.TrimSpace(first + " " + then) }

// sentence makes one of its parts, "" where there is none.
func sentence(parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	words := strings.Join(some, "; ")
	if words == "" {
		return ""
	}
	return strings.ToUpper(words[:1]) + words[1:] + "."
}

// lastCutToday is when a saw or knife was last put to the stump today, but for the
// cut that is corrected; zero before.
func (c *Case) lastCutToday() (last time.Time) {
	cut := func(at time.Time) {
		if c.today(at) && at.After(last) {
			last = at
		}
	}
	for _, l := range c.A.LimbsOff {
		cut(l.At)
	}
	if c.A.CutBack != nil {
		cut(c.A.CutBack.At)
	}
	for _, g := range c.A.Gashes {
		cut(g.At)
	}
	for _, f := range c.A.FreshCuts {
		cut(f.At)
	}
	return last
}

// slipMissed says that bark does not slip today: the season is over, or is more
// than some days off.
func (c *Case) slipMissed(early int) string {
	today := c.B.Day(c.Now)
	next, ok := c.B.SlipOn(today)
	if !ok || today >= next.From.Add(-early) {
		return ""
	}
	if last, _ := c.B.SlipOn(next.From.Add(-360)); last.To < today && today-last.To < next.From-today {
		return "bark stopped slipping on " + last.To.Short()
	}
	return "bark does not slip before " + next.From.Short()
}

// todayWords is today's heat, wind and rain, where they were put down and not said
// before a cut already, and whether they can harm.
func (c *Case) todayWords(said time.Time) (words string, harm bool) {
	w, ok := c.B.Weather[c.B.Day(c.Now)]
	if !ok || !said.IsZero() && !w.At.After(said) {
		return "", false
	}
	day := &w.What
	words = "today up to " + c.B.Units.Temperature(day.High.Temperature)
	if !day.WindAssumed {
		words += ", wind " + c.B.Units.Speed(unit.Speed(day.Wind))
	}
	if rain := day.RainWords(c.B.Units); rain != "" {
		words += ", " + rain
	}
	hot := day.High.Temperature >= trade.HeatCaution-0.01
	switch {
	case day.High.Temperature >= trade.HeatPostpone-0.01:
		words += ": postpone, or shade it and paint it white"
	case hot && day.Wet():
		words += ": shade it and paint it white in time; sealer does not hold on a wet face"
	case hot:
		words += ": shade it and paint it white in time"
	case day.Wet():
		words += ": sealer does not hold on a wet face"
	}
	return words, hot || day.Wet()
}

// hotterDay is a day to come within the week that is hot, and hotter than today,
// where it was not said before a cut already.
func (c *Case) hotterDay(said time.Time) string {
	hottest, ok := hottestFrom(c.B, c.B.Day(c.Now))
	if !ok || hottest.What.Day == c.B.Day(c.Now) || !said.IsZero() && !hottest.At.After(said) {
		return ""
	}
	words := hottest.What.Day.Short() + " " + c.B.Units.Temperature(hottest.What.High.Temperature) + " forecast"
	if hottest.What.High.Temperature >= trade.HeatPostpone-0.01 {
		return words + ": postpone, or shade it and paint it white"
	}
	return words + ": shade it and paint it white in time"
}

// stillHelps is what still helps against the heat once the top is off, said where
// the graft is sealed: shade, and white by when. What the sun does today stands in
// the sun's own words where it could be reckoned.
func (c *Case) stillHelps() string {
	hottest, ok := hottestFrom(c.B, c.B.Day(c.Now))
	if !ok {
		return ""
	}
	day := hottest.What.Day.Short()
	if hottest.What.Day == c.B.Day(c.Now) {
		day = "today"
	}
	return sentence(fmt.Sprintf("%s up to %s: shade it, and paint it white by %s", day, c.B.Units.Temperature(hottest.What.High.Temperature), c.when(c.whiteBy())))
}

// nearOldNails says where nails of an earlier graft stand, if a cut comes near
// them: along the long cut under the height at which it was made.
func (c *Case) nearOldNails(at unit.Length) string {
	for _, a := range c.earlier() {
		if from, to, ok := nailsOf(a); ok && at > from-nearNails && at < to+nearNails {
			return sentence(fmt.Sprintf("old nails stand from %s to %s", c.length(from), c.length(to)))
		}
	}
	return ""
}

// earlier is the attempts before the one in hand, oldest first.
func (c *Case) earlier() (out []*record.Attempt) {
	for _, a := range c.S.Attempts {
		if a != c.A || c.over() {
			out = append(out, a)
		}
	}
	return out
}

// nailsOf is between which heights the nails of an attempt stand; ok is false where
// none were driven or the height of their cut was not put down.
func nailsOf(a *record.Attempt) (from, to unit.Length, ok bool) {
	cut := record.LastOf(a.FreshCuts)
	if len(a.Grafts) == 0 || cut == nil || !cut.What.Height.Given() {
		return 0, 0, false
	}
	to = cut.What.Height.Length
	return max(to-trade.LongCut, 0), to, true
}

// mindNails doubts a cut at a height that comes near old nails.
func (c *Case) mindNails(at unit.Length, bodies ...record.Body) error {
	says := c.nearOldNails(at)
	if says == "" {
		return nil
	}
	return &Doubt{Says: says + " A cut there runs into them.", Ways: []Choice{{Key: "1", Word: "cut there", Meaning: "mind the saw", Bodies: bodies}}}
}

// belowNails is a height, or one below the old nails that a cut there would come
// near.
func (c *Case) belowNails(at unit.Length) unit.Length {
	for _, a := range c.earlier() {
		if from, to, ok := nailsOf(a); ok && at > from-nearNails && at < to+nearNails {
			at = from - nearNails
		}
	}
	return at
}

// nailsToo is where the old nails stand, as the end of a sentence about the stem.
func (c *Case) nailsToo() (words string) {
	for _, a := range c.earlier() {
		if from, to, ok := nailsOf(a); ok {
			words = fmt.Sprintf(", with old nails from %s to %s", c.length(from), c.length(to))
		}
	}
	return words
}
