package weather

import (
	"math"
	"strconv"
	"testing"
	"time"

	"pgregory.net/rapid"

	"barkslip/core/unit"
)

// someDays draws dates in a row at a place.
func someDays(t *rapid.T, n int) []Extremes {
	first := someDate(t)
	list := make([]Extremes, n)
	for i := range list {
		low := rapid.Float64Range(-20, 30).Draw(t, "low")
		list[i] = Extremes{first.Add(i), unit.Temperature(low), unit.Temperature(low + rapid.Float64Range(0, 25).Draw(t, "range"))}
	}
	return list
}

func TestAirIsContinuousAndMeetsEveryExtreme(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, list := somewhere(t, 90), someDays(t, 3)
		curves := airThrough(p, list)
		day, curve := newAirDay(p, list[1]), curves[1]
		high := day.least.Add(span(day.half / 2))
		if low := curve(day.least).C(); math.Abs(low-list[1].Low.C()) > 1e-6 {
			t.Fatalf("low %v, want %v", low, list[1].Low)
		}
		if got := curve(high).C(); math.Abs(got-list[1].High.C()) > 1e-6 {
			t.Fatalf("high %v, want %v", got, list[1].High)
		}
		for _, joint := range []time.Time{day.least, day.set} {
			before, after := curve(joint.Add(-time.Second)).C(), curve(joint.Add(time.Second)).C()
			if math.Abs(before-after) > 0.05 {
				t.Fatalf("a jump from %v to %v at %v", before, after, joint)
			}
		}
		midnight := list[1].Date.In(p.Zone)
		if a, b := curves[0](midnight).C(), curve(midnight).C(); math.Abs(a-b) > 1e-6 {
			t.Fatalf("%v at the end of a date, %v at the start of the next", a, b)
		}
	})
}

func TestHoursStayWithinTheExtremes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, list := anyClock(t, somewhere(t, 90)), someDays(t, 1)
		for h, got := range hourly(p, list[0].Date, airThrough(p, list)[0]) {
			if !(got >= list[0].Low-1e-9 && got <= list[0].High+1e-9) {
				t.Fatalf("hour %d: %v outside %v", h, got, list[0])
			}
		}
	})
}

// On days of a clock change hours are counted as they pass.
func TestElapsedHoursOnClockChanges(t *testing.T) {
	p := Place{Lat: 38.5, Lon: -121.8, Zone: zone(t, "America/Los_Angeles")}
	for _, c := range []struct {
		date  string
		hours time.Duration
	}{{"2027-03-14", 23}, {"2027-11-07", 25}, {"2027-05-05", 24}} {
		d, _ := unit.ParseDate(c.date)
		if got := d.Add(1).In(p.Zone).Sub(d.In(p.Zone)); got != c.hours*time.Hour {
			t.Fatalf("%s has %v", c.date, got)
		}
		air := hourly(p, d, airThrough(p, []Extremes{{d, 5, 25}})[0])
		coldest := 0
		for h := range air[:12] {
			if air[h] < air[coldest] {
				coldest = h
			}
		}
		want := SunDay(p, d).Rise.Sub(d.In(p.Zone)).Hours() + lagLow
		if math.Abs(float64(coldest)-want) > 1 {
			t.Errorf("%s: coldest at hour %d, want about %.1f", c.date, coldest, want)
		}
	}
}

// Hourly normals of Seattle (NOAA): from each day's extremes, March to October,
// the 24 hours come within 0.6 C root mean square. The normals keep standard
// time all year.
func TestSeattleNormals(t *testing.T) {
	hours, list := seattle(t)
	p := Place{Lat: 47.45, Lon: -122.31, Altitude: 130 * unit.Metre, Zone: time.FixedZone("PST", -8*3600)}
	if len(list) != 245 {
		t.Fatalf("%d days, want March to October", len(list))
	}
	all := 0.0
	for i, air := range airThrough(p, list) {
		squares := 0.0
		for h, got := range hourly(p, list[i].Date, air) {
			off := got.C() - hours[list[i].Date][h]
			squares += off * off
		}
		if off := math.Sqrt(squares / 24); off > 1 {
			t.Errorf("%v: off by %.2f C", list[i].Date, off)
		}
		all += squares
	}
	if off := math.Sqrt(all / float64(24*len(list))); off > 0.6 {
		t.Errorf("off by %.2f C, want 0.6 or less", off)
	}
}

func seattle(t *testing.T) (map[unit.Date]*[24]float64, []Extremes) {
	hours := map[unit.Date]*[24]float64{}
	var list []Extremes
	for _, row := range readTable(t, "seattle-hourly-normals.csv")[1:] {
		d, err := unit.ParseDate(row[0][:10])
		if err != nil {
			t.Fatal(err)
		}
		h, err := strconv.Atoi(row[0][11:13])
		if err != nil {
			t.Fatal(err)
		}
		c := unit.Temperature(figure(t, row[1]))
		if hours[d] == nil {
			hours[d] = new([24]float64)
			list = append(list, Extremes{d, c, c})
		}
		hours[d][h] = c.C()
		day := &list[len(list)-1]
		day.Low, day.High = min(day.Low, c), max(day.High, c)
	}
	return hours, list
}
