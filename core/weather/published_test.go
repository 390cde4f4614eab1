package weather

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"barkslip/core/unit"
	publishedtable "barkslip/testdata/published"
)

// inputs are the named inputs of one published figure.
type inputs map[string]string

func (in inputs) number(t *testing.T, name string) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(in[name], 64)
	if err != nil {
		t.Fatalf("input %s: %v", name, err)
	}
	return n
}

// published runs every row of a table of published figures. A new figure of a
// known check is a new row of the table.
func published(t *testing.T, file string, checks map[string]func(*testing.T, inputs) float64) {
	rows := readTable(t, file)
	used := map[string]bool{}
	for _, row := range rows[1:] {
		name, source := row[0], row[4]
		check, ok := checks[name]
		if !ok || source == "" {
			t.Errorf("row %q: unknown check or no source", row)
			continue
		}
		used[name] = true
		in := inputs{}
		for _, word := range strings.Fields(row[1]) {
			key, value, _ := strings.Cut(word, "=")
			in[key] = value
		}
		want, tolerance := figure(t, row[2]), figure(t, row[3])
		t.Run(publishedtable.Title(name, row[1], source), func(t *testing.T) {
			if got := check(t, in); !(math.Abs(got-want) <= tolerance) {
				t.Errorf("%s %s: %.9g, want %s within %s (%s)", name, row[1], got, row[2], row[3], source)
			}
		})
	}
	for name := range checks {
		if !used[name] {
			t.Errorf("%s has no row for %s", file, name)
		}
	}
}

func readTable(t *testing.T, file string) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/published/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// figure reads a number, or a time of day as seconds.
func figure(t *testing.T, text string) float64 {
	t.Helper()
	if clock, err := time.Parse(time.TimeOnly, text); err == nil {
		return secondsOfDay(clock)
	}
	n, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func secondsOfDay(t time.Time) float64 {
	return float64(t.Hour()*3600 + t.Minute()*60 + t.Second())
}

func (in inputs) place(t *testing.T) Place {
	p := Place{Lat: in.number(t, "lat"), Lon: in.number(t, "lon"), Zone: time.UTC}
	if in["altitude"] != "" {
		p.Altitude = unit.Length(in.number(t, "altitude")) * unit.Metre
	}
	if in["zone"] != "" {
		p.Zone = time.FixedZone("", int(in.number(t, "zone")*3600))
	}
	return p
}

func (in inputs) at(t *testing.T) time.Time {
	at, err := time.Parse(time.RFC3339, in["at"])
	if err != nil {
		t.Fatal(err)
	}
	return at
}

func (in inputs) day(t *testing.T) Day {
	d, err := unit.ParseDate(in["date"])
	if err != nil {
		t.Fatal(err)
	}
	return SunDay(in.place(t), d)
}

func (in inputs) clear(t *testing.T) Sunlight {
	return ineichen(in.number(t, "outside"), in.number(t, "zenith"), in.number(t, "mass"), in.number(t, "turbidity"), in.number(t, "altitude"))
}

func (in inputs) sunlight(t *testing.T) Sunlight {
	return Sunlight{Level: in.number(t, "level"), Beam: in.number(t, "beam"), Diffuse: in.number(t, "diffuse")}
}

// airDay is a day in hours after midnight of an arbitrary date.
func (in inputs) airDay(t *testing.T) (a airDay, at time.Time) {
	midnight := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	hour := func(h float64) time.Time { return midnight.Add(span(h)) }
	rise, set := in.number(t, "rise"), in.number(t, "set")
	return airDay{
		low: in.number(t, "low"), high: in.number(t, "high"),
		least: hour(rise + lagLow), set: hour(set), half: set - rise + 2*(lagPeak-lagLow),
	}, hour(in.number(t, "hour"))
}

func TestPublishedSky(t *testing.T) {
	published(t, "sky.csv", map[string]func(*testing.T, inputs) float64{
		"zenith":                func(t *testing.T, in inputs) float64 { return SunAt(in.place(t), in.at(t)).Zenith },
		"azimuth":               func(t *testing.T, in inputs) float64 { return SunAt(in.place(t), in.at(t)).Azimuth },
		"declination":           func(t *testing.T, in inputs) float64 { return SunAt(in.place(t), in.at(t)).Declination },
		"even-time-ascension":   func(t *testing.T, in inputs) float64 { return apparent(centuries(in.at(t))).ascension },
		"even-time-declination": func(t *testing.T, in inputs) float64 { return apparent(centuries(in.at(t))).declination },
		"even-time-equation":    func(t *testing.T, in inputs) float64 { return apparent(centuries(in.at(t))).equation.Seconds() },
		"rise":                  func(t *testing.T, in inputs) float64 { return secondsOfDay(*in.day(t).Rise) },
		"noon":                  func(t *testing.T, in inputs) float64 { return secondsOfDay(in.day(t).Noon) },
		"set":                   func(t *testing.T, in inputs) float64 { return secondsOfDay(*in.day(t).Set) },
		"outside":               func(t *testing.T, in inputs) float64 { return outside(int(in.number(t, "day"))) },
		"clear-level":           func(t *testing.T, in inputs) float64 { return in.clear(t).Level },
		"clear-beam":            func(t *testing.T, in inputs) float64 { return in.clear(t).Beam },
		"clear-diffuse":         func(t *testing.T, in inputs) float64 { return in.clear(t).Diffuse },
		"haurwitz":              func(t *testing.T, in inputs) float64 { return Haurwitz(in.number(t, "zenith")) },
		"cloud-level": func(t *testing.T, in inputs) float64 {
			return Sunlight{Level: 1, Beam: 1}.under(in.number(t, "oktas"), 1).Level
		},
		"cloud-diffuse-share": func(t *testing.T, in inputs) float64 {
			s := Sunlight{Level: 1, Beam: 1}.under(in.number(t, "oktas"), 1)
			return s.Diffuse / s.Level
		},
		"sky-on-tilted": func(t *testing.T, in inputs) float64 { return skyOn(in.number(t, "diffuse"), in.number(t, "tilt")) },
		"ground-on-tilted": func(t *testing.T, in inputs) float64 {
			return groundOn(in.number(t, "level"), in.number(t, "albedo"), in.number(t, "tilt"))
		},
		"round-a-cylinder":         func(t *testing.T, in inputs) float64 { return in.sunlight(t).round(in.number(t, "zenith")) },
		"sunny-half-of-a-cylinder": func(t *testing.T, in inputs) float64 { return in.sunlight(t).sunnyHalf(in.number(t, "zenith")) },
		"air-by-day": func(t *testing.T, in inputs) float64 {
			day, at := in.airDay(t)
			return day.daytime(at)
		},
		"air-by-night-unscaled": func(t *testing.T, in inputs) float64 {
			day, at := in.airDay(t)
			left := unscaledNight(at.Sub(day.set).Hours(), day.least.Add(24*time.Hour).Sub(day.set).Hours())
			return day.low + (day.daytime(day.set)-day.low)*left
		},
	})
}

func TestPublishedHeat(t *testing.T) {
	published(t, "heat.csv", map[string]func(*testing.T, inputs) float64{
		"reynolds": func(t *testing.T, in inputs) float64 {
			return in.number(t, "wind") * in.number(t, "across") / airOf(in.number(t, "film")).viscosity
		},
		"nusselt": func(t *testing.T, in inputs) float64 {
			air := airOf(in.number(t, "film"))
			return nusselt(in.number(t, "wind")*in.number(t, "across")/air.viscosity, air.prandtl)
		},
		"wind-cooling": func(t *testing.T, in inputs) float64 {
			return windCooling(in.number(t, "wind"), in.number(t, "across"), airOf(in.number(t, "film")))
		},
		"steady": func(t *testing.T, in inputs) float64 {
			air, h := in.number(t, "air"), in.number(t, "h")
			c := air
			for range 5000 {
				c = warm(c, in.number(t, "takes")*in.number(t, "sun"), h*(c-air), h, 40000, 30)
			}
			return c
		},
		"callus-rate": func(t *testing.T, in inputs) float64 {
			c := Cardinal{unit.Temperature(in.number(t, "least")), unit.Temperature(in.number(t, "best")), unit.Temperature(in.number(t, "most"))}
			if err := c.Check(); err != nil {
				t.Fatal(err)
			}
			return c.Rate(unit.Temperature(in.number(t, "at")))
		},
	})
}
