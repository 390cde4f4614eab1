package weather

import (
	"strings"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func may(day int) unit.Date { return unit.MakeDate(2027, time.May, day) }

// TestReadDay reads a whole day's weather with what may be left out left out, and
// refuses what cannot be.
func TestReadDay(t *testing.T) {
	b := &record.Block{ID: record.ID{1}, Units: unit.US, Zone: time.UTC}
	day, _ := putDown(b, may(20))
	w, err := readDay("52 91", day, b.Units)
	if err != nil || w.Day != may(20) || w.Low.Temperature != unit.Fahrenheit(52) || !w.WindAssumed || w.Wind != trade.UsualWind.MS() || w.Rain != "" {
		t.Errorf("%+v, %v", w, err)
	}
	w, err = readDay("52 91 3 8 showers", day, b.Units)
	if err != nil || w.WindAssumed || w.Cloud != 8 || w.Rain != record.Showers {
		t.Errorf("%+v, %v", w, err)
	}
	if w, err = readDay("52 91 3 8 0.2 in", day, b.Units); err != nil || w.RainWords(unit.US) != "0.2 in of rain" {
		t.Errorf("%+v, %v", w, err)
	}
	for _, text := range []string{
		"", "52", "warm 91", "52 91 3 9", "52 91 3 -1", "52 91 3 0 wet", "91 52", "52 91 gale", "52 91 3 0 none 1 2", "52 91 3 0 30 in",
	} {
		if w, err := readDay(text, day, b.Units); err == nil {
			t.Errorf("%q was taken as %+v", text, w)
		}
	}
}

// Rain is a word, or how much with its unit; what Enter takes can be read again.
func TestReadRain(t *testing.T) {
	for _, c := range []struct {
		text string
		sys  unit.System
		says string
		wet  bool
	}{
		{"none", unit.US, "no rain", false}, {"no rain", unit.US, "no rain", false}, {"0", unit.US, "no rain", false},
		{"Showers", unit.US, "showers", true}, {"rain", unit.Metric, "rain", true}, {"0.25", unit.US, "1/4 in of rain", true},
		{"5", unit.Metric, "5 mm of rain", true}, {"5 mm of rain", unit.Metric, "5 mm of rain", true}, {notKnown, unit.US, "", false},
	} {
		var w record.DayWeather
		if err := readRain(&w, c.text, c.sys); err != nil || w.RainWords(c.sys) != c.says || w.Wet() != c.wet {
			t.Errorf("%q: %q, wet %v, %v", c.text, w.RainWords(c.sys), w.Wet(), err)
		}
		if err := readRain(&w, fields[4].likely(&w, true, c.sys), c.sys); err != nil || w.RainWords(c.sys) != c.says {
			t.Errorf("what Enter takes of %q: %q, %v", c.text, w.RainWords(c.sys), err)
		}
	}
}

// Each thing is asked with its unit.
func TestFieldsNameTheirUnits(t *testing.T) {
	for sys, units := range map[unit.System][]string{unit.US: {"F", "F", "mph", "eighths", "in"}, unit.Metric: {"C", "C", "m/s", "eighths", "mm"}} {
		for i, f := range fields {
			if asks := f.asks(sys); !strings.Contains(asks, units[i]) {
				t.Errorf("%q lacks %s", asks, units[i])
			}
		}
	}
}
