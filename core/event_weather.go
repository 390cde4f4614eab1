package core

import (
	"errors"
	"fmt"

	"barkslip/core/unit"
)

// DayWeather is the weather of one day on a block, forecast or seen.
type DayWeather struct {
	Block       ID
	Day         unit.Date
	Low         Degrees
	High        Degrees
	Wind        float64 // m/s
	Cloud       int     // oktas, 0 to 8
	WindAssumed bool    // no wind was given: Wind is the usual one
}

// Kind is weather.
func (*DayWeather) Kind() string { return "weather" }

func (b *DayWeather) fields(f fields) {
	f.id("block", &b.Block)
	f.date("day", &b.Day)
	f.degrees("low", &b.Low)
	f.degrees("high", &b.High)
	f.real("wind_ms", &b.Wind)
	f.number("cloud", &b.Cloud)
	f.flag("wind_assumed", &b.WindAssumed)
}

func (b *DayWeather) question() string { return fmt.Sprint("weather/", b.Block, "/", b.Day) }

func (b *DayWeather) check() error {
	switch {
	case b.Block == None || b.Day == 0 || !b.Low.Given() || !b.High.Given():
		return errors.New("weather needs a block, a day, a low and a high")
	case b.Low.Temperature > b.High.Temperature:
		return errors.New("the low is above the high")
	case b.Cloud < 0 || b.Cloud > 8:
		return errors.New("cloud is 0 to 8 oktas")
	case b.Wind < 0 || b.Wind > 100:
		return errors.New("wind is 0 to 100 m/s")
	}
	return nil
}

func (b *DayWeather) applyBook(book *Book, e Event) { book.block(b.Block).Weather[b.Day] = said(e, *b) }
