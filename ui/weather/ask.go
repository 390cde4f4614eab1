package weather

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// notKnown is what Enter takes where a thing need not be known.
const notKnown = "not known"

// field is one thing of a day's weather: how it is asked, what Enter takes, and how
// it is read into the day.
type field struct {
	asks   func(sys unit.System) string
	likely func(w *record.DayWeather, before bool, sys unit.System) string
	read   func(w *record.DayWeather, text string, sys unit.System) error
}

// fields are the things of a day's weather in the order in which they are asked. A
// day is put down with its high, and anew with each thing behind it.
var fields = []field{
	{func(sys unit.System) string { return "low in " + string(sys.BareTemperature()) },
		func(w *record.DayWeather, before bool, sys unit.System) string {
			return ifSaid(before, sys.Temperature(w.Low.Temperature))
		},
		func(w *record.DayWeather, text string, sys unit.System) error { return readDegrees(&w.Low, text, sys) }},
	{func(sys unit.System) string { return "high in " + string(sys.BareTemperature()) },
		func(w *record.DayWeather, before bool, sys unit.System) string {
			return ifSaid(before, sys.Temperature(w.High.Temperature))
		},
		func(w *record.DayWeather, text string, sys unit.System) error { return readDegrees(&w.High, text, sys) }},
	{func(sys unit.System) string { return "wind in " + unitOf(sys.Speed(0)) },
		func(w *record.DayWeather, before bool, sys unit.System) string {
			if !before || w.WindAssumed {
				return notKnown
			}
			return sys.Speed(unit.Speed(w.Wind))
		}, readWind},
	{func(unit.System) string { return "cloud in eighths, 0 clear, 8 overcast" },
		func(w *record.DayWeather, _ bool, _ unit.System) string { return strconv.Itoa(w.Cloud) }, readCloud},
	{func(sys unit.System) string { return "rain (none, showers, rain, or " + rainExample(sys) + ")" },
		func(w *record.DayWeather, _ bool, sys unit.System) string {
			if said := w.RainWords(sys); said != "" {
				return said
			}
			return notKnown
		}, readRain},
}

func ifSaid(said bool, words string) string {
	if !said {
		return ""
	}
	return words
}

// unitOf is the unit of a quantity in words.
func unitOf(words string) string {
	_, name, _ := strings.Cut(words, " ")
	return name
}

func rainExample(sys unit.System) string {
	if sys == unit.Metric {
		return "5 mm"
	}
	return "0.2 in"
}

// putDown is the day as it was put down before, or one of which only the usual is
// known; before says which.
func putDown(b *record.Block, d unit.Date) (w record.DayWeather, before bool) {
	if old, ok := b.Weather[d]; ok {
		w = old.What
		w.Block = b.ID
		return w, true
	}
	return record.DayWeather{Block: b.ID, Day: d, Wind: trade.UsualWind.MS(), WindAssumed: true}, false
}

// dayNamed names a day, and says where it is today.
func dayNamed(d, today unit.Date) string {
	name := d.Weekday().String()[:3] + " " + d.Short()
	if d == today {
		return "Today, " + name
	}
	return name
}

func askToday(x *part.Session) part.Msgs {
	b := x.Site()
	w, before := putDown(b, b.Day(x.Time()))
	return askField(x, 0, w, before)
}

func askOther(x *part.Session) part.Msgs {
	b := x.Site()
	return x.Asks("Which day (such as "+b.Day(x.Time()).Add(1).Short()+", tomorrow):", "", true, func(text string) (part.Msgs, error) {
		d, err := unit.ReadDate(text, b.Day(x.Time()), b.Units)
		if err != nil {
			return nil, err
		}
		w, before := putDown(b, d)
		return askField(x, 0, w, before), nil
	})
}

// askField asks one thing of a day, then the next; the whole day may be typed at
// the first. What was told is on disk before the next is asked, from the high on.
func askField(x *part.Session, n int, w record.DayWeather, before bool) part.Msgs {
	b, f := x.Site(), fields[n]
	likely := f.likely(&w, before, b.Units)
	asks := fmt.Sprintf("%s: %s:", dayNamed(w.Day, b.Day(x.Time())), f.asks(b.Units))
	return x.Asks(asks, likely, true, func(text string) (part.Msgs, error) {
		text = strings.TrimSpace(text)
		if n == 0 && whole(text) {
			day, err := readDay(text, w, b.Units)
			if err != nil {
				return nil, err
			}
			return keep(x, []*record.DayWeather{day})
		}
		day := w
		if text != likely || text == "" {
			if err := f.read(&day, text, b.Units); err != nil {
				return nil, err
			}
		}
		if n == 0 {
			return askField(x, 1, day, before), nil
		}
		said, err := keep(x, []*record.DayWeather{&day})
		if err != nil || n == len(fields)-1 {
			return said, err
		}
		return append(part.Msgs{part.Reload{}}, askField(x, n+1, day, before)...), nil
	})
}

// whole says whether a text is more than one temperature: the whole day.
func whole(text string) bool {
	_, err := unit.ParseTemperature(text, 'C')
	return err != nil && len(strings.Fields(text)) > 1
}

// readDay reads low and high, then wind, cloud and rain, which may be left out.
func readDay(text string, day record.DayWeather, sys unit.System) (*record.DayWeather, error) {
	words := strings.Fields(text)
	if len(words) < 2 || len(words) > 6 {
		return nil, &unit.Error{Given: text, Accepted: "low and high, then wind, cloud in eighths and rain if known: 52 91 3 0 none"}
	}
	if len(words) == 6 { // how much rain, with its unit apart
		words = append(words[:4], words[4]+words[5])
	}
	for i, word := range words {
		if err := fields[i].read(&day, word, sys); err != nil {
			return nil, err
		}
	}
	return &day, record.Check(record.Event{Body: &day})
}

func readDegrees(into *record.Degrees, text string, sys unit.System) error {
	t, err := unit.ParseTemperature(text, sys.BareTemperature())
	if err != nil {
		return err
	}
	*into = record.Degrees{Temperature: t, Typed: sys.Temperature(t)}
	return nil
}

func readWind(w *record.DayWeather, text string, sys unit.System) error {
	if text == notKnown {
		w.Wind, w.WindAssumed = trade.UsualWind.MS(), true
		return nil
	}
	v, err := unit.ParseSpeed(text, sys.BareSpeed())
	if err != nil {
		return err
	}
	w.Wind, w.WindAssumed = v.MS(), false
	return nil
}

func readCloud(w *record.DayWeather, text string, _ unit.System) error {
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > 8 {
		return &unit.Error{Given: text, Accepted: "cloud from 0, clear, to 8, overcast"}
	}
	w.Cloud = n
	return nil
}

func readRain(w *record.DayWeather, text string, sys unit.System) error {
	w.Rain, w.RainDepth = "", record.Measure{}
	if text == notKnown {
		return nil
	}
	word := record.Rain(strings.ToLower(strings.TrimPrefix(text, "no ")))
	switch {
	case word == record.Rainy && strings.HasPrefix(text, "no "), word == record.NoRain:
		w.Rain = record.NoRain
		return nil
	case word == record.Showers, word == record.Rainy:
		w.Rain = word
		return nil
	}
	bare := unit.Inch
	if sys == unit.Metric {
		bare = unit.Millimetre
	}
	bad := &unit.Error{Given: text, Accepted: "none, showers, rain, or how much fell: " + rainExample(sys)}
	m, err := record.ReadMeasure(strings.TrimSuffix(text, " of rain"), bare)
	if err != nil || m.Length < 0 || m.Length > record.MostRain {
		return bad
	}
	if m.Length == 0 {
		w.Rain = record.NoRain
		return nil
	}
	w.RainDepth = m
	return nil
}

// dayWords is a day's weather in words, as it was put down.
func dayWords(w *record.DayWeather, now time.Time, b *record.Block) string {
	sys := b.Units
	words := fmt.Sprintf("%s: %s to %s", dayNamed(w.Day, b.Day(now)), sys.Temperature(w.Low.Temperature), sys.Temperature(w.High.Temperature))
	if !w.WindAssumed {
		words += ", wind " + sys.Speed(unit.Speed(w.Wind))
	}
	words += fmt.Sprintf(", cloud %d/8", w.Cloud)
	if rain := w.RainWords(sys); rain != "" {
		words += ", " + rain
	}
	return words
}
