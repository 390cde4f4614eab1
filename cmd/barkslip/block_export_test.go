package main

import (
	"bytes"
	"encoding/csv"
	"math"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/geojson"

	"barkslip/core/record"
	"barkslip/store"
)

// mapped makes a book of one block of 12 by 20 with these settings.
func mapped(t *testing.T, settings map[string]string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "map.bark")
	book, err := store.Create(path, store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	block := record.ID{7}
	at := time.Date(2027, 4, 20, 8, 0, 0, 0, time.UTC)
	events := []record.Event{{At: at, Body: &record.BlockMade{Block: block, Name: "=Hollow Lane"}}}
	for name, value := range settings {
		events = append(events, record.Event{At: at, Body: &record.BlockSet{Block: block, Setting: name, Value: value}})
	}
	for row := uint16(1); row <= 12; row++ {
		for tree := uint16(1); tree <= 20; tree++ {
			events = append(events, record.Event{At: at, Stump: record.StumpID{Block: block, Row: row, Tree: tree}, Body: &record.StumpAdded{Note: "@1"}})
		}
	}
	if _, err := book.Append(events...); err != nil {
		t.Fatal(err)
	}
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

func outputOf(t *testing.T, code int, args ...string) (string, string) {
	t.Helper()
	var out, errs bytes.Buffer
	if got := run(args, &out, &errs); got != code {
		t.Fatalf("%v: exit %d, want %d: %s", args, got, code, errs.String())
	}
	return out.String(), errs.String()
}

// TestAnotherReaderTakesTheMap reads the map by a parser that is not ours, and
// finds the far corner, 95 m along the rows and 88 m beside, where the radii of
// curvature of the ellipsoid put it; that these meet Vincenty is tested in
// core/ground.
func TestAnotherReaderTakesTheMap(t *testing.T) {
	base := map[string]string{"row-bearing": "30", "row-spacing": "8m", "tree-spacing": "5m", "latitude": "42.7", "longitude": "-77.2"}
	for _, c := range []struct {
		corner, side string
		far          orb.Point // flat about the corner, good to a millimetre at this size and latitude
	}{
		{"42.70013 -77.20041", "right", flat(42.70013, -77.20041, 30, 95, 88)},
		{"42.70013 -77.20041", "left", flat(42.70013, -77.20041, 30, 95, -88)},
		{"-38.1 180", "right", flat(-38.1, 180, 30, 95, 88)},
		{"-38.1 -180", "left", flat(-38.1, -180, 30, 95, -88)},
	} {
		base["corner"], base["next-row"] = c.corner, c.side
		text, errs := outputOf(t, 0, "block", "export", "--geojson", "--book", mapped(t, base))
		read, err := geojson.UnmarshalFeatureCollection([]byte(text))
		if err != nil || len(read.Features) != 240 || errs != "" {
			t.Fatalf("%v, %q", err, errs)
		}
		last := read.Features[239]
		got := last.Point()
		east := math.Remainder(got.Lon()-c.far.Lon(), 360) * 111320 * math.Cos(got.Lat()*math.Pi/180)
		if d := math.Hypot((got.Lat()-c.far.Lat())*111320, east); d > 0.1 || got.Lon() < -180 || got.Lon() > 180 {
			t.Errorf("%s %s: %v is %g m off %v", c.corner, c.side, got, d, c.far)
		}
		if last.Properties["row"] != 12.0 || last.Properties["tree"] != 20.0 || last.Properties["note"] != "@1" || last.Properties["limb"] != nil {
			t.Errorf("%v", last.Properties)
		}
	}
}

// flat is the point so many metres along a bearing and aside of it to the right, by
// the radii of curvature of WGS 84 at the corner.
func flat(lat, lon, bearing, along, aside float64) orb.Point {
	const a, e2 = 6378137.0, 0.00669437999014
	sin, cos := math.Sincos(lat * math.Pi / 180)
	w := 1 - e2*sin*sin
	n, m := a/math.Sqrt(w), a*(1-e2)/math.Pow(w, 1.5)
	s, c := math.Sincos(bearing * math.Pi / 180)
	north, east := along*c-aside*s, along*s+aside*c
	return orb.Point{lon + east/(n*cos)*180/math.Pi, lat + north/m*180/math.Pi}
}

// TestMapSaysWhatItLacks: a block without a place, at a pole, or without spacings.
func TestMapSaysWhatItLacks(t *testing.T) {
	whole := map[string]string{"row-bearing": "30", "row-spacing": "8m", "tree-spacing": "5m", "corner": "42.7 -77.2"}
	for setting, c := range map[string][2]string{
		"corner": {"", "a corner or a latitude"}, "row-bearing": {"", "the bearing"}, "row-spacing": {"", "between rows"}, "tree-spacing": {"", "between trees"},
		"next-row": {"left", ""},
	} {
		some := map[string]string{}
		for k, v := range whole {
			some[k] = v
		}
		if some[setting] = c[0]; c[0] == "" {
			delete(some, setting)
		}
		code := 2
		if c[1] == "" {
			code = 0
		}
		if _, errs := outputOf(t, code, "block", "export", "--geojson", "--book", mapped(t, some)); !strings.Contains(errs, c[1]) {
			t.Errorf("%s: %s", setting, errs)
		}
	}
	whole["corner"] = "-90 0"
	if _, errs := outputOf(t, 2, "block", "export", "--geojson", "--book", mapped(t, whole)); !strings.Contains(errs, "pole") {
		t.Error(errs)
	}
}

// TestCellsDoNotRun: what came from a user is no formula, what the program wrote is
// left as it is; and another reader finds all lines.
func TestCellsDoNotRun(t *testing.T) {
	text, _ := outputOf(t, 0, "block", "export", "--book", mapped(t, nil))
	lines, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(lines) != 241 {
		t.Fatalf("%d lines, %v", len(lines), err)
	}
	first := lines[1]
	if first[0] != "'=Hollow Lane" || first[len(first)-1] != "'@1" || first[1] != "1" {
		t.Errorf("%q", first)
	}
}
