package practice

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// tale is a made-up stump whose record is told answer by answer, on a made-up
// block. Days count from the one on which it is grafted.
type tale struct {
	dice
	b      *record.Block
	day    unit.Date // of the graft
	now    time.Time
	events []record.Event
	told   []string
}

var (
	tellsBlock = record.ID{0xb1}
	tellsStump = record.StumpID{Block: tellsBlock, Row: 4, Tree: 17}
)

// newTale begins a tale on a block that the seed settles: north or south, inches
// or millimetres, mild or frosty. Its zone is an offset without a summer time.
func newTale(seed uint64) *tale {
	t := &tale{dice: dice(seed*0x2545f4914f6cdd1d + 7)}
	t.b = &record.Block{ID: tellsBlock, Name: "Hollow Lane", Placed: true, Lat: 42.7, Lon: -77.2, Zone: time.FixedZone("", -4*3600), Variety: "Lantern",
		Species: "black walnut", Frosty: t.chance(2)}
	t.day = unit.MakeDate(2027, time.May, t.of(18, 28))
	if t.chance(3) {
		t.b.Lat, t.b.Lon, t.b.Zone = -43.5, 172.6, time.FixedZone("", 12*3600)
		t.day = unit.MakeDate(2027, time.October, t.of(18, 28))
	}
	if t.chance(2) {
		t.b.Units = unit.Metric
	} else {
		t.b.Units = unit.US
	}
	return t
}

// at moves the clock to a time of a day, counted from the graft.
func (t *tale) at(days, hour, minute int) *tale {
	t.now = t.day.Add(days).At(hour, minute, t.b.Zone)
	return t
}

// on puts down what was done on a day, a minute apart, and leaves the clock there.
func (t *tale) on(days, hour, minute int, bodies ...record.Body) *tale {
	t.at(days, hour, minute)
	return t.did(bodies...)
}

// did puts down what was done now, and moves the clock on by a minute each.
func (t *tale) did(bodies ...record.Body) *tale {
	for _, b := range bodies {
		n := len(t.events) + 1
		id := record.ID{0xe0, byte(n >> 8), byte(n)}
		e := record.Event{ID: id, Act: id, Clock: uint64(n), At: t.now, Hand: "MK", Body: b}
		if record.OfStump(b) {
			e.Stump = tellsStump
		}
		t.events = append(t.events, e)
		t.now = t.now.Add(time.Minute)
	}
	return t
}

// later moves the clock on.
func (t *tale) later(minutes int) *tale {
	t.now = t.now.Add(time.Duration(minutes) * time.Minute)
	return t
}

// inSeason moves the clock to a day of a month of the north, counted in seasons from
// the first; in the south it is half a year on.
func (t *tale) inSeason(season int, month time.Month, day, hour int) *tale {
	d := t.b.InSeason(t.b.SeasonOf(t.day)+season, month, day)
	t.now = d.At(hour, 0, t.b.Zone)
	return t
}

// stump is the record as told so far.
func (t *tale) stump() *record.Stump { return record.Fold(tellsStump, t.events) }

// walk is the stump at the clock, as the walk sees it.
func (t *tale) walk() *walk.Case {
	return walk.NewCase(t.stump(), t.b, record.FoldBook(nil, noZones), t.now, walk.Habit{})
}

func noZones(string) (*time.Location, error) { return time.UTC, nil }

// say tells a sentence.
func (t *tale) say(format string, args ...any) *tale {
	t.told = append(t.told, fmt.Sprintf(t.here(format), args...))
	return t
}

// sayNow tells the day and the clock, and where on the earth that is.
func (t *tale) sayNow() *tale {
	where := "In the north"
	if t.b.South() {
		where = "In the south"
	}
	return t.say("%s, %s, %s.", where, t.b.Day(t.now).Long(), t.now.In(t.b.Zone).Format("15:04"))
}

// sayDone tells what was done, a sentence for each of the last days.
func (t *tale) sayDone(days int) *tale {
	var lines []string
	var last unit.Date
	for _, e := range t.events {
		words := record.Say(e.Body, t.b.Units)
		if d := t.b.Day(e.At); d != last {
			lines, last = append(lines, t.dayWords(e.At)+": "+words), d
			continue
		}
		lines[len(lines)-1] += "; " + words
	}
	for _, l := range lines[max(0, len(lines)-days):] {
		t.say("%s.", l)
	}
	return t
}

// dayWords is a day as people say it beside the stump.
func (t *tale) dayWords(at time.Time) string {
	switch d := t.b.Day(at); t.b.Day(t.now) - d {
	case 0:
		return "Today"
	case 1:
		return "Yesterday"
	default:
		if d.Year() != t.b.Day(t.now).Year() {
			return d.Long()
		}
		return d.Short()
	}
}

// clock is a time of day.
func (t *tale) clock(at time.Time) string { return at.In(t.b.Zone).Format("15:04") }

// inches is a length as it would be measured here: a figure in inches, or the whole
// millimetres nearest to it.
func (t *tale) inches(n float64) record.Measure {
	l := unit.Length(n) * unit.Inch
	if t.b.Units == unit.Metric {
		l = unit.Length(int(l.MM()/5+0.5)) * 5 * unit.Millimetre
	}
	return record.Measured(l, t.b.Units)
}

// fine is a small length as it would be measured here: a figure in inches, or the
// whole millimetres nearest to it.
func (t *tale) fine(n float64) record.Measure {
	l := unit.Length(n) * unit.Inch
	if t.b.Units == unit.Metric {
		l = unit.Length(int(l.MM()+0.5)) * unit.Millimetre
	}
	return record.Measured(l, t.b.Units)
}

// words prints a length.
func (t *tale) words(l unit.Length) string { return t.b.Units.Length(l) }

// figure prints a figure of the trade in the units of the block.
func (t *tale) figure(l unit.Length) string { return t.b.Units.Figure(l) }

// list joins words as people do.
func list(words ...string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
