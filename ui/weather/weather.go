// Package weather is the screen of a block's weather: a day put down, a list of
// coming days read, the days seen. It may import core and ui/part with its
// leaves, and no other screen.
package weather

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Ways are what can be done about the block's weather.
func Ways(x *part.Session) *part.List {
	on := func(does func(*part.Session) part.Msgs) func() part.Msgs { return func() part.Msgs { return does(x) } }
	return part.NewList(x, "The block's weather", "From it the white clock knows the sun, and a day to graft can be chosen.", []part.Item{
		{Word: "put a day down", Meaning: "low, high, wind, cloud", Take: on(askDay)},
		{Word: "read a list", Meaning: "a CSV file of coming days: date, low_f, high_f", Take: on(askList)},
		{Word: "see the days", Meaning: "callus, heat and frost of the coming fortnight", Take: on(seeDays)},
	})
}

func askDay(x *part.Session) part.Msgs {
	example := "52 91 3 0"
	if x.Site().Units == unit.Metric {
		example = "11 33 1.5 0"
	}
	return x.Asks("[day] low high wind cloud in eighths ("+example+"):", "", true, func(text string) (part.Msgs, error) {
		w, err := readDay(text, x.Site(), x.Time())
		if err != nil {
			return nil, err
		}
		return keep(x, []*record.DayWeather{w})
	})
}

// readDay reads low, high, wind and cloud; the last two may be left out,
// and a date other than today may stand first, though not as -2: that is a low.
func readDay(text string, b *record.Block, now time.Time) (*record.DayWeather, error) {
	bad := &unit.Error{Given: text, Accepted: "low and high, then wind and cloud in eighths if known: 52 91 3 0; a day may stand in front: 4 May 52 91"}
	words := strings.Fields(text)
	w := &record.DayWeather{Block: b.ID, Day: b.Day(now), Wind: trade.UsualWind.MS(), WindAssumed: true}
	if len(words) > 0 {
		d, rest, err, dated := unit.LeadingDate(words, w.Day, b.Units)
		if err != nil {
			return nil, err
		}
		if dated {
			w.Day, words = d, rest
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

func askList(x *part.Session) part.Msgs {
	return x.Asks("Path of the list:", "", true, func(path string) (part.Msgs, error) {
		file, err := x.OpenFile(strings.TrimSpace(path))
		if err != nil {
			return nil, fmt.Errorf("the list cannot be opened: %s", paper.Shorten(path, 50))
		}
		defer file.Close()
		list, err := weather.ReadTemps(file)
		if err != nil {
			return nil, err
		}
		sys := x.Site().Units
		var days []*record.DayWeather
		for _, e := range list {
			days = append(days, &record.DayWeather{Block: x.Block, Day: e.Date, Wind: trade.UsualWind.MS(), WindAssumed: true,
				Low:  record.Degrees{Temperature: e.Low, Typed: sys.Temperature(e.Low)},
				High: record.Degrees{Temperature: e.High, Typed: sys.Temperature(e.High)}})
		}
		return keep(x, days)
	})
}

// keep writes days of weather in one transaction, each in place of what was put
// down for it before.
func keep(x *part.Session, days []*record.DayWeather) (part.Msgs, error) {
	var events []record.Event
	for _, w := range days {
		e := record.Event{At: x.Now(), Body: w}
		e.Replaces = x.Book.Folded().Answers(e.Question())
		events = append(events, e)
	}
	if _, err := x.Write(events...); err != nil {
		return nil, err
	}
	return part.Msgs{part.Say{Text: "Recorded: weather of " + part.Counted(len(days), "day") + "."}, part.Reload{}}, nil
}
