package ui

import (
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// dayOf is the weather put down for the day of the driver's clock.
func (d *driver) dayOf() (record.DayWeather, bool) {
	b := d.root.x.Site()
	w, ok := b.Weather[b.Day(d.now)]
	return w.What, ok
}

// TestWeatherIsAskedFieldByField: each thing with its unit and the day, each on disk
// before the next is asked, rain among them; what is wrong is said at its field and
// goes with it; Esc keeps what was told.
func TestWeatherIsAskedFieldByField(t *testing.T) {
	d := newDriver(t, "2027-05-20 09:30")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.open()
	d.press("d")
	d.pickWord("record today")
	d.sees("Today, Thu 20 May: low in F:")
	d.press("52", "enter")
	d.sees("high in F:")
	d.press("40", "enter")
	d.sees("the low is above the high")
	d.press("backspace", "backspace")
	d.lacks("the low is above the high")
	d.press("91", "enter")
	d.sees("wind in mph:", "Enter takes not known")
	if w, ok := d.dayOf(); !ok || w.High.Temperature != unit.Fahrenheit(91) || !w.WindAssumed {
		t.Fatalf("%+v, %v", w, ok)
	}
	d.press("10", "enter")
	d.wait(time.Second)
	d.press("enter")
	d.sees("rain (none, showers, rain, or 0.2 in):")
	d.press("showers", "enter")
	d.sees("52 F to 91 F, wind 10 mph, cloud 0/8, showers")
	if w, _ := d.dayOf(); w.Rain != record.Showers || w.WindAssumed {
		t.Fatalf("%+v", w)
	}
	d.press("d")
	d.pickWord("record today")
	d.sees("Enter takes 52 F")
	d.press("esc")
	if w, _ := d.dayOf(); w.Rain != record.Showers {
		t.Fatalf("%+v", w)
	}
}
