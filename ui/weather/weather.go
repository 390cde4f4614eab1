// Package weather is the screen of a block's weather: a day put down, a list of
// coming days read, the days seen. It may import core and ui/part with its
// leaves, and no other screen.
package weather

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/weather"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Ways are what can be done about the block's weather.
func Ways(x *part.Session) *part.List {
	on := func(does func(*part.Session) part.Msgs) func() part.Msgs { return func() part.Msgs { return does(x) } }
	return part.NewList(x, "The block's weather", "It tells how hot dark sealer gets in the sun, and which day is good to graft.", []part.Item{
		{Word: "record today", Meaning: "low, high, wind, cloud, rain", Take: on(askToday)},
		{Word: "record another day", Meaning: "one to come, or one gone", Take: on(askOther)},
		{Word: "read a list", Meaning: "a CSV file of coming days: date, low_f, high_f", Take: on(askList)},
		{Word: "see the days", Meaning: "callus, heat and frost of the coming fortnight", Take: on(seeDays)},
	})
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
			day, _ := putDown(x.Site(), e.Date) // its wind, cloud and rain stay as they were put down
			day.Low = record.Degrees{Temperature: e.Low, Typed: sys.Temperature(e.Low)}
			day.High = record.Degrees{Temperature: e.High, Typed: sys.Temperature(e.High)}
			days = append(days, &day)
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
		if err := record.Check(e); err != nil {
			return nil, err
		}
		e.Replaces = x.Book.Folded().Answers(e.Question())
		events = append(events, e)
	}
	if _, err := x.Write(events...); err != nil {
		return nil, err
	}
	said := "Recorded: weather of " + part.Counted(len(days), "day") + "."
	if len(days) == 1 {
		said = "Recorded: weather. " + dayWords(days[0], x.Time(), x.Site()) + "."
	}
	return part.Msgs{part.Say{Text: said}, part.Reload{}}, nil
}
