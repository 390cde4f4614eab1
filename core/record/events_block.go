package record

import (
	"errors"
	"fmt"
	"strings"

	"barkslip/core/unit"
)

// BlockMade begins a block. Its id is random and made once.
type BlockMade struct {
	Block ID
	Name  string
}

// Kind is block-made.
func (*BlockMade) Kind() string { return "block-made" }

// Say is the answer in a few words.
func (b *BlockMade) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (b *BlockMade) fields(f fields) {
	f.id("block", &b.Block)
	f.text("name", &b.Name)
}

func (b *BlockMade) question() string { return "block/" + b.Block.String() + "/name" }

func (b *BlockMade) check() error {
	if b.Block == None || b.Name == "" {
		return errors.New("block-made needs a block and a name")
	}
	return nil
}

func (b *BlockMade) applyBook(book *Book, e Event) {
	book.names[b.Block] = true
	book.block(b.Block).made(b.Name, e.At)
}

// BlockSet sets one setting of a block; the settings are listed in setting.go.
type BlockSet struct {
	Block   ID
	Setting string
	Value   string
}

// Kind is block-set.
func (*BlockSet) Kind() string { return "block-set" }

// Say is the answer in a few words.
func (b *BlockSet) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (b *BlockSet) fields(f fields) {
	f.id("block", &b.Block)
	f.text("setting", &b.Setting)
	f.text("value", &b.Value)
}

func (b *BlockSet) question() string { return "block/" + b.Block.String() + "/" + b.Setting }

func (b *BlockSet) check() error {
	if b.Block == None || b.Setting == "" {
		return errors.New("block-set needs a block and a setting")
	}
	if s, ok := settings[b.Setting]; ok {
		return s(&Block{}, b.Value)
	}
	return nil
}

func (b *BlockSet) applyBook(book *Book, _ Event) {
	if set, ok := settings[b.Setting]; ok {
		_ = set(book.block(b.Block), b.Value) // a value that does not hold was refused on entry
	}
}

// Same says that two blocks, two lots or two hands are one. The lower id, or
// the initials first in the alphabet, is the one that goes on.
type Same struct {
	What string // block, lot or hand
	A, B string // ids, or initials
}

// Kind is same.
func (*Same) Kind() string { return "same" }

// Say is the answer in a few words.
func (b *Same) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (s *Same) fields(f fields) {
	f.text("what", &s.What)
	f.text("a", &s.A)
	f.text("b", &s.B)
}

func (s *Same) check() error {
	if err := oneOf("what", s.What, false, "block", "lot", "hand"); err != nil {
		return err
	}
	if s.A == "" || s.B == "" || s.A == s.B {
		return errors.New("same needs two different names")
	}
	if s.What == "hand" {
		return nil
	}
	_, errA := ParseID(s.A)
	_, errB := ParseID(s.B)
	return errors.Join(errA, errB)
}

// applyBook does nothing: what is one is known before anything is said of it.
func (*Same) applyBook(*Book, Event) {}

func (s *Same) join(book *Book, e Event) {
	book.joined = append(book.joined, said(e, *s))
	book.join(s.What, s.A, s.B)
}

// DayWeather is the weather of one day on a block, forecast or seen.
type DayWeather struct {
	Block       ID
	Day         unit.Date
	Low         Degrees
	High        Degrees
	Wind        float64 // m/s
	Cloud       int     // oktas, 0 to 8
	WindAssumed bool    // no wind was given: Wind is the usual one
	Rain        Rain    // in a word; "" where it was not said
	RainDepth   Measure // how much fell or is forecast, where that was said
}

// Kind is weather.
func (*DayWeather) Kind() string { return "weather" }

// Say is the answer in a few words.
func (b *DayWeather) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (b *DayWeather) fields(f fields) {
	f.id("block", &b.Block)
	f.date("day", &b.Day)
	f.degrees("low", &b.Low)
	f.degrees("high", &b.High)
	f.real("wind_ms", &b.Wind)
	f.number("cloud", &b.Cloud)
	f.flag("wind_assumed", &b.WindAssumed)
	word(f, "rain", &b.Rain)
	f.length("rain_depth", &b.RainDepth)
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
	case b.RainDepth.Length < 0 || b.RainDepth.Length > MostRain:
		return errors.New("rain is 0 to 500 mm")
	}
	return oneOf("rain", b.Rain, true, Rains...)
}

// MostRain is more than a day brings.
const MostRain = 500 * unit.Millimetre

// Wet says whether rain was put down for the day.
func (b *DayWeather) Wet() bool {
	return b.RainDepth.Length > 0 || b.Rain == Showers || b.Rain == Rainy
}

// RainWords is the day's rain in words, "" where it was not said.
func (b *DayWeather) RainWords(sys unit.System) string {
	switch {
	case b.RainDepth.Length > 0:
		return sys.Exact(b.RainDepth.Length) + " of rain"
	case b.Rain == NoRain:
		return "no rain"
	}
	return string(b.Rain)
}

func (b *DayWeather) applyBook(book *Book, e Event) { book.block(b.Block).Weather[b.Day] = said(e, *b) }
