package weather

import (
	"errors"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

func zone(t *testing.T, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// somewhere draws a place that keeps about its own solar time.
func somewhere(t *rapid.T, most float64) Place {
	lon := rapid.Float64Range(-180, 180).Draw(t, "lon")
	return Place{
		Lat: rapid.Float64Range(-most, most).Draw(t, "lat"), Lon: lon,
		Altitude: unit.Length(rapid.Float64Range(-400, 4000).Draw(t, "altitude")) * unit.Metre,
		Zone:     time.FixedZone("", int(math.Round(lon/15))*3600),
	}
}

// anyClock puts a place under a clock that need not suit it.
func anyClock(t *rapid.T, p Place) Place {
	p.Zone = time.FixedZone("", rapid.IntRange(-12, 14).Draw(t, "zone")*3600)
	return p
}

func someDate(t *rapid.T) unit.Date {
	return unit.MakeDate(2020, 1, 1).Add(rapid.IntRange(0, 20000).Draw(t, "day"))
}

func TestSunDayIsOfTheLocalDate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := somewhere(t, 60), someDate(t)
		day := SunDay(p, d)
		for name, at := range map[string]*time.Time{"rise": day.Rise, "noon": &day.Noon, "set": day.Set} {
			if at == nil || unit.DateOf(*at) != d {
				t.Fatalf("%s of %v is %v", name, d, at)
			}
		}
		for _, edge := range []time.Time{*day.Rise, *day.Set} {
			if z := SunAt(p, edge).TrueZenith; math.Abs(z-90.833) > 0.01 {
				t.Fatalf("zenith %v at %v", z, edge)
			}
		}
		if SunAt(p, day.Rise.Add(-time.Minute)).TrueZenith < 90.833 || SunAt(p, day.Set.Add(time.Minute)).TrueZenith < 90.833 {
			t.Fatalf("up before %v or after %v", day.Rise, day.Set)
		}
		highest := SunAt(p, day.Noon).TrueZenith
		for _, shift := range []time.Duration{-10 * time.Minute, 10 * time.Minute} {
			if SunAt(p, day.Noon.Add(shift)).TrueZenith < highest {
				t.Fatalf("higher %v from noon", shift)
			}
		}
	})
}

// West of Greenwich the sun sets on the next UTC date, east of it it rises on
// the one before.
func TestLocalDateWhereUTCDiffers(t *testing.T) {
	d := unit.MakeDate(2027, 5, 5)
	for _, p := range []Place{
		{Lat: 38.5, Lon: -121.8, Zone: zone(t, "America/Los_Angeles")},
		{Lat: -36, Lon: 146, Zone: zone(t, "Australia/Melbourne")},
		{Lat: 44, Lon: 87, Zone: zone(t, "Asia/Shanghai")},
	} {
		day := SunDay(p, d)
		if unit.DateOf(*day.Rise) != d || unit.DateOf(day.Noon) != d || unit.DateOf(*day.Set) != d {
			t.Errorf("%v: %v %v %v", p.Zone, day.Rise, day.Noon, day.Set)
		}
		if unit.DateOf(day.Rise.UTC()) == d && unit.DateOf(day.Set.UTC()) == d {
			t.Errorf("%v: the UTC date is the local one; the case shows nothing", p.Zone)
		}
	}
}

func TestPolarDays(t *testing.T) {
	north := Place{Lat: 78, Lon: 15, Zone: time.UTC}
	south := Place{Lat: -78, Lon: 15, Zone: time.UTC}
	june, december := unit.MakeDate(2027, 6, 21), unit.MakeDate(2027, 12, 21)
	for _, c := range []struct {
		p        Place
		d        unit.Date
		up, down bool
		hours    float64
	}{{north, june, true, false, 24}, {north, december, false, true, 0}, {south, june, false, true, 0}, {south, december, true, false, 24}} {
		day := SunDay(c.p, c.d)
		if day.AlwaysUp != c.up || day.AlwaysDown != c.down || day.Rise != nil || day.Set != nil || day.Length().Hours() != c.hours {
			t.Errorf("lat %v on %v: %+v", c.p.Lat, c.d, day)
		}
	}
	for day, d := 0, unit.MakeDate(2027, 1, 1); day < 365; day++ {
		for _, lat := range []float64{90, -90, 66.6, 65.8} {
			got := SunDay(Place{Lat: lat, Zone: time.UTC}, d.Add(day))
			if hours := got.Length().Hours(); hours < 0 || hours > 24 || got.AlwaysUp && got.AlwaysDown {
				t.Fatalf("lat %v on %v: %+v", lat, got.Date, got)
			}
		}
	}
}

func TestValidatePlace(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		p      Place
		option string
	}{
		{Place{Lat: 99, Zone: time.UTC}, "lat"}, {Place{Lat: nan, Zone: time.UTC}, "lat"},
		{Place{Lon: -181, Zone: time.UTC}, "lon"}, {Place{Lon: nan, Zone: time.UTC}, "lon"},
		{Place{Altitude: 10000 * unit.Metre, Zone: time.UTC}, "altitude"}, {Place{}, "zone"},
	} {
		var impossible *trade.Impossible
		if err := Validate(c.p); !errors.As(err, &impossible) || impossible.Option != c.option {
			t.Errorf("%+v: %v, want a refusal of %s", c.p, err, c.option)
		}
	}
	if err := Validate(Place{Lat: 90, Lon: 180, Zone: time.UTC}); err != nil {
		t.Error(err)
	}
}
