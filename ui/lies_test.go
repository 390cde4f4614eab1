package ui

import (
	"testing"

	"barkslip/core/record"
	"barkslip/ui/block"
	"barkslip/ui/first"
)

// toPlace answers first use up to where the block lies.
func (d *driver) toPlace() {
	d.press("1", "Home block", "enter", "2", "enter", "3", "enter", "enter")
	if d.asked() != "place" {
		d.t.Fatalf("%s is asked, not the place", d.asked())
	}
}

func (d *driver) clear(text string) {
	for range text {
		d.press("backspace")
	}
}

// TestZoneComesFromThePlace: the zone offered is that of the place, named or by
// its degrees, with the others of the country beside it.
func TestZoneComesFromThePlace(t *testing.T) {
	for _, c := range []struct{ place, zone, beside string }{
		{"38.5 -121.8", "America/Los_Angeles", "America/Denver"}, {"Yolo, California", "America/Los_Angeles", ""}, {"42.7 -77.2", "America/New_York", "America/Detroit"},
		{"-34.9 -71.2", "America/Santiago", "America/Punta_Arenas"}, {"Isère", "Europe/Paris", ""},
	} {
		d := newDriver(t, "2027-05-04 09:00")
		d.root.x.LocalZone = "Asia/Tokyo"
		d.toPlace()
		d.press(c.place, "enter")
		d.sees("Enter takes "+c.zone, c.beside)
		d.press("enter", "enter", "enter")
		if b := d.root.x.Site(); b == nil || b.ZoneName != c.zone {
			t.Errorf("%s: %+v", c.place, b)
		}
	}
}

// TestZoneIsPickedByNumber: of a country with several zones one is picked.
func TestZoneIsPickedByNumber(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.toPlace()
	d.press("enter")
	d.sees("Enter takes America/New_York")
	d.press("New Zealand", "enter")
	d.sees("pick one", "1  Pacific/Auckland")
	d.clear("New Zealand")
	d.press("1", "enter", "enter", "enter")
	if b := d.root.x.Site(); b == nil || b.ZoneName != "Pacific/Auckland" {
		t.Errorf("%+v\n%s", b, d.screen())
	}
}

// TestPlaceAndZoneDisagree: more than two hours apart both are shown and it is
// asked; either can be typed again, or both kept.
func TestPlaceAndZoneDisagree(t *testing.T) {
	for _, c := range []struct{ keys, zone, lon string }{{"3", "America/Los_Angeles", "-77.2"}, {"1", "America/New_York", "-77.2"}, {"2", "America/Los_Angeles", "-121.8"}} {
		d := newDriver(t, "2027-05-04 09:00")
		d.toPlace()
		d.press("42.7 -77.2", "enter", "Pacific", "enter")
		if d.asked() != "agree" {
			t.Fatalf("%s is asked:\n%s", d.asked(), d.screen())
		}
		d.sees("do not agree", "42.7 -77.2", "America/Los_Angeles", "hours off")
		d.press("enter")
		if d.asked() != "agree" {
			t.Error("Enter passed it by")
		}
		d.press(c.keys, "enter")
		if c.keys == "2" {
			d.clear("42.7 -77.2")
			d.press("38.5 -121.8", "enter", "enter")
		}
		for range 4 {
			if is[*first.Screen](d) {
				d.press("enter")
			}
		}
		if b := d.root.x.Site(); b == nil || b.ZoneName != c.zone {
			t.Errorf("%s: %+v\n%s", c.keys, b, d.screen())
		}
	}
}

// TestSettingsAskWhereTheyDisagree: a zone or a longitude that would not agree with
// the other is asked about before it is written.
func TestSettingsAskWhereTheyDisagree(t *testing.T) {
	d := newDriver(t, "2027-05-04 09:00")
	d.plant("Hollow Lane", rows(1, 2)...)
	d.append(record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: "longitude", Value: "-77.2"}},
		record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: "latitude", Value: "42.7"}})
	d.open()
	zone := func() string { return d.book.Folded().Blocks[home].ZoneName }
	d.press("o")
	d.pickWord("time zone")
	d.press("California", "enter")
	d.sees("do not agree", "America/Los_Angeles", "42.7 -77.2")
	d.pickWord("leave it")
	if zone() != "America/New_York" {
		t.Errorf("%s was written", zone())
	}
	d.pickWord("time zone")
	d.press("California", "enter")
	d.pickWord("both are right")
	if zone() != "America/Los_Angeles" {
		t.Errorf("%s stands", zone())
	}
	d.pickWord("time zone")
	d.press("Chile", "enter")
	d.sees("Which time zone?", "America/Punta_Arenas")
	d.press("esc", "esc")
	if !is[*block.Screen](d) {
		t.Errorf("not back on the block:\n%s", d.screen())
	}
}

// TestFirstUseDefaultsPass takes what Enter takes on every question, in both
// systems: each default passes its own check.
func TestFirstUseDefaultsPass(t *testing.T) {
	for _, units := range []string{"us", "metric"} {
		d := newDriver(t, "2027-05-04 09:00")
		d.press("1", "Home block")
		for range 14 {
			if !is[*first.Screen](d) {
				break
			}
			if d.asked() == "units" {
				d.press(units)
			}
			d.press("enter")
			if d.root.said.Wrong {
				t.Fatalf("%s, %s: %s", units, d.asked(), d.root.said.Text)
			}
		}
		d.sees("Home block", "240 stumps")
	}
}
