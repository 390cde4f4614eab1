package zone

import (
	"slices"
	"testing"
	"time"
	_ "time/tzdata"
)

func TestEveryZoneIsKnown(t *testing.T) {
	if len(zones) < 300 || len(countries) < 240 {
		t.Fatalf("%d zones, %d countries", len(zones), len(countries))
	}
	names := []string{}
	for _, z := range zones {
		names = append(names, z.Name)
		if z.Lat < -90 || z.Lat > 90 || z.Lon < -180 || z.Lon > 180 || countries[z.Countries[0]] == "" {
			t.Errorf("%+v", z)
		}
	}
	for _, r := range regions {
		names = append(names, r.zone)
		if _, ok := named(r.zone); !ok {
			t.Errorf("%s lies in %s, which the table lacks", r.name, r.zone)
		}
	}
	for _, name := range names {
		if _, err := time.LoadLocation(name); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Places where the tables say they are: the clock of a region is within reach of
// its sun.
func TestRegionsAgreeWithTheirZones(t *testing.T) {
	for _, r := range regions {
		z, err := time.LoadLocation(r.zone)
		if err != nil || r.placed() && Apart(r.lon, z) > MostApart {
			t.Errorf("%s, %s: %.1f hours apart, %v", r.name, r.zone, Apart(r.lon, z), err)
		}
	}
}

func TestFind(t *testing.T) {
	for text, want := range map[string]string{
		"California": pacific, "Los Angeles": pacific, "los_angeles": pacific, "Pacific": pacific, "pacific time": pacific, "Yolo": pacific,
		"Yolo County": pacific, "Yolo, California": pacific, "america/los_angeles": pacific, "calif": pacific, "New York": eastern, "Eastern": eastern,
		"Chile": "America/Santiago", "Isère": "Europe/Paris", "France": "Europe/Paris", "Iowa": central, "Norway": "Europe/Berlin", "Tasmania": "Australia/Hobart",
		"Willamette Valley": pacific, "Hamadan": "Asia/Tehran",
	} {
		if got := Find(text); len(got) == 0 || got[0] != want {
			t.Errorf("%q: %v, want %s", text, got, want)
		}
	}
	for _, text := range []string{"USA", "United States"} {
		if got := Find(text); len(got) < 20 || !slices.Contains(got, pacific) {
			t.Errorf("%q: %v", text, got)
		}
	}
	for _, text := range []string{"", "EST", "est", "nowhere at all", "-", "42.7 -77.2", ","} {
		if got := Find(text); got != nil {
			t.Errorf("%q: %v", text, got)
		}
	}
}

func TestNear(t *testing.T) {
	for _, c := range []struct {
		lat, lon float64
		want     string
	}{{38.5, -121.8, pacific}, {42.7, -77.2, eastern}, {41.9, -93.6, central}, {45.2, 5.6, "Europe/Paris"}, {-34.9, -71.2, "America/Santiago"},
		{-41.5, 147, "Australia/Hobart"}} {
		if got := Near(c.lat, c.lon); got != c.want {
			t.Errorf("%v %v: %s, want %s", c.lat, c.lon, got, c.want)
		}
	}
	if got := Beside(eastern); got[0] != eastern || !slices.Contains(got, pacific) || slices.Contains(got, "America/Toronto") {
		t.Errorf("beside %s: %v", eastern, got)
	}
	if got := Beside(eastern); slices.Index(got, pacific) > slices.Index(got, "America/Indiana/Knox") {
		t.Errorf("a part of a state before the west coast: %v", got)
	}
	if got := Beside("America/Argentina/Mendoza"); got[0] != "America/Argentina/Mendoza" || len(got) < 10 {
		t.Errorf("beside Mendoza: %v", got)
	}
	if Beside("UTC") != nil {
		t.Error("UTC lies in no country")
	}
}

func TestApart(t *testing.T) {
	for _, c := range []struct {
		zone     string
		lon      float64
		disagree bool
	}{{pacific, -121.8, false}, {eastern, -77.2, false}, {pacific, -77.2, true}, {eastern, 77.2, true},
		{"Europe/Paris", -4, false}, {"Pacific/Auckland", 178, false},
		{"Pacific/Auckland", -176, false}, {"Australia/Sydney", -151, true}, {"UTC", 0, false}} {
		z, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		if got := Apart(c.lon, z); got > MostApart != c.disagree {
			t.Errorf("%s at %v: %.1f hours", c.zone, c.lon, got)
		}
	}
}
