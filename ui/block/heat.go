package block

import (
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
)

// heat is tomorrow's heat in a graft sealed at sunrise.
type heat struct {
	site        *record.Block
	day         unit.Date
	whiteBefore *time.Time // nil where the sealer stays below harm
	dryFirst    bool
	known       bool
}

// tomorrow reckons it once a day, and anew where the block is set up otherwise or its
// weather is: the book makes another value of it then.
func (b *Screen) tomorrow() *heat {
	site := b.x.Site()
	if day := site.Day(b.x.Time()).Add(1); b.heat == nil || b.heat.site != site || b.heat.day != day {
		before, dryFirst, known := due.WhiteOn(site, day)
		b.heat = &heat{site, day, before, dryFirst, known}
	}
	return b.heat
}

// heatWords is tomorrow's heat in a line, or what is to be put down for it.
func (b *Screen) heatWords() (string, paper.Ink) {
	site, h := b.x.Site(), b.tomorrow()
	w, forecast := site.Weather[h.day]
	switch {
	case !forecast:
		return "Tomorrow's heat: no forecast; d records one.", paper.Faint
	case !site.Placed:
		return "Tomorrow's heat: the block has no place; o sets it.", paper.Faint
	case !h.known:
		return "Tomorrow's heat: not known from what d shows.", paper.Faint
	}
	high := site.Units.Temperature(w.What.High.Temperature)
	if h.whiteBefore == nil {
		return fmt.Sprintf("Tomorrow %s: sealer stays below harm; still paint it.", high), paper.Plain
	}
	words := fmt.Sprintf("Tomorrow %s: sealed at sunrise, it must be white by %s", high, h.whiteBefore.In(site.Zone).Format("15:04"))
	if h.dryFirst {
		words += "; shade it until it is dry"
	}
	return words + ".", paper.Warn
}
