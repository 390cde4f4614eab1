package part

import (
	"testing"
	"time"
)

func TestPosition(t *testing.T) {
	for text, want := range map[string][2]string{
		"42.7 -77.2": {"42.7", "-77.2"}, "42.7N 77.2W": {"42.7", "-77.2"}, "42.7 n, 77.2 w": {"42.7", "-77.2"},
		"37.9S 144.4E": {"-37.9", "144.4"}, "42.7° -77.2°": {"42.7", "-77.2"}, "-": {}, "": {},
	} {
		if lat, lon, err := ReadPosition(text); err != nil || lat != want[0] || lon != want[1] {
			t.Errorf("%q is %s %s, %v; want %v", text, lat, lon, err, want)
		}
	}
	for _, text := range []string{"42.7", "99 10", "42.7W 77.2N", "42 181", "-42S 10", "a b", "NaN 10"} {
		if _, _, err := ReadPosition(text); err == nil {
			t.Errorf("%q was taken", text)
		}
	}
}

func TestReadZone(t *testing.T) {
	for text, want := range map[string]string{"America/New_York": "America/New_York", "america/new_york": "America/New_York", "UTC": "UTC",
		"EUROPE/ZURICH": "Europe/Zurich", "Etc/UTC": "Etc/UTC", "New York": "America/New_York", "california": "America/Los_Angeles",
		"Yolo": "America/Los_Angeles", "Europe/Oslo": "Europe/Oslo", "42.7 -77.2": "America/New_York"} {
		if got, err := ReadZone(time.LoadLocation, text); err != nil || got != want {
			t.Errorf("%q is %q, %v; want %q", text, got, err, want)
		}
	}
	for _, text := range []string{"", "EST", "Local", "America/Nowhere", "USA"} {
		if got, err := ReadZone(time.LoadLocation, text); err == nil {
			t.Errorf("%q was taken as %q", text, got)
		}
	}
}
