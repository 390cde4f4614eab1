package sample

import (
	"strconv"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// settings is how the block is set up. Bark slips around today, so that there is
// work of each kind whenever in the season today is.
func (g *ground) settings() [][2]string {
	return [][2]string{
		{"units", "us"}, {"latitude", "42.7"}, {"longitude", "-77.2"}, {"altitude", "900ft"}, {"zone", "America/New_York"},
		{"species", "seedling black walnut"}, {"variety", varieties[0]}, {"graft-height", "6ft 3in"}, {"browse", "6ft"}, {"frosty", "yes"},
		{"earwigs", "yes"}, {"row-spacing", "24ft"}, {"tree-spacing", "16ft"}, {"wait-days", "7"}, {"pinch-until", "08-15"},
		{"slip-from", g.today.Add(-19).String()[5:]}, {"slip-to", g.today.Add(21).String()[5:]},
		{"corner", "42.70013 -77.20041"}, {"row-bearing", "8"}, {"next-row", "right"},
	}
}

// tellBlock is what is known apart from single stumps: the block with its
// settings, the wood and its store, and the weather.
func (g *ground) tellBlock(l *life) {
	l.beginBlock()
	made := unit.MakeDate(g.today.Year()-g.ages, time.February, 6).At(19, 30, g.Zone)
	l.say(made, office, &record.BlockMade{Block: g.block, Name: "Hollow Lane"})
	for i, s := range g.settings() {
		l.say(made.Add(time.Duration(i+1)*time.Minute), office, &record.BlockSet{Block: g.block, Setting: s[0], Value: s[1]})
	}
	for i := range g.lots {
		g.tellLot(l, &g.lots[i])
	}
	defer g.known(l)
	defer l.say(made, office, &record.BlockSet{Block: g.block, Setting: "made-up", Value: "yes"})
	for back := g.ages; back >= 0; back-- {
		from := g.today.AddYears(-back)
		for d := from.Add(-22); d <= from.Add(7); d++ {
			g.tellWeather(l, d, back == 0 && d > g.today)
		}
	}
}

// known folds what was told of the block, as the walk needs it: each lot as it
// was in its own season, when it was not yet put aside.
func (g *ground) known(l *life) {
	var events []record.Event
	for i, e := range l.entries {
		e.event.Clock = uint64(i + 1)
		if _, aside := e.event.Body.(*record.LotHeld); !aside {
			events = append(events, e.event)
		}
	}
	g.bookAs = record.FoldBook(events, func(string) (*time.Location, error) { return g.Zone, nil })
	g.blockAs = g.bookAs.Blocks[g.block]
	clear(g.blockAs.Weather) // the crew paints by the hour; reckoning the day's heat for each would take long
}

func (g *ground) tellLot(l *life, lot *lot) {
	received := lot.Cut.Add(l.between(1, 4)).At(16, l.between(0, 59), g.Zone)
	body := lot.LotReceived
	l.say(received, office, &body)
	day := unit.DateOf(received)
	for week := 1; week < 15; week++ {
		temp := l.between(33, 36)
		if lot.warm && week >= 8 && week <= 11 {
			temp = l.between(43, 48)
		}
		if l.odds(0.8) {
			l.say(day.Add(7*week).At(7, l.between(0, 40), g.Zone), office, &record.StoreRead{Lot: lot.Lot, Temp: degrees(temp)})
		}
	}
	if lot.year < g.today.Year() {
		l.say(unit.MakeDate(lot.year, time.July, 1).At(18, 0, g.Zone), office, &record.LotHeld{Lot: lot.Lot, Held: true, Why: "season over", Left: true})
	}
}

// tellWeather is a day as seen in the evening, or as forecast this morning.
func (g *ground) tellWeather(l *life, d unit.Date, forecast bool) {
	at := d.At(18, 30, g.Zone)
	if forecast || d == g.today {
		at = g.today.At(5, 30, g.Zone)
	}
	high := g.high(d)
	l.say(at, office, &record.DayWeather{
		Block: g.block, Day: d, Low: degrees(high - l.between(16, 26)), High: degrees(high), Wind: float64(l.between(2, 14)) / 2, Cloud: l.between(0, 8),
	})
}

func degrees(f int) record.Degrees {
	return record.Degrees{Temperature: unit.Fahrenheit(float64(f)), Typed: strconv.Itoa(f) + "F"}
}
