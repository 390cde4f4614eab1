package weather

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// mayDay is a day of May at 38.5 north.
func mayDay(t *testing.T, low, high unit.Temperature, wind unit.Speed) HeatDay {
	t.Helper()
	p := Place{Lat: 38.5, Lon: -121.8, Zone: zone(t, "America/Los_Angeles")}
	return NewHeatDay(p, unit.MakeDate(2027, 5, 5), low, high, wind)
}

func heat(t *testing.T, d HeatDay) HeatAnswer {
	t.Helper()
	a, err := Heat(d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Derived: a hot still clear day brings the dark side to the low sixties, the
// white side to about 41 and the dark scion to about 44 C.
func TestHotStillDay(t *testing.T) {
	a := heat(t, mayDay(t, 15, 35, 0.5))
	for _, c := range []struct {
		name      string
		got       unit.Temperature
		low, high unit.Temperature
	}{{"dark side", a.Black.Side.Peak, 60, 65}, {"white side", a.White.Side.Peak, 40, 42}, {"dark scion", a.Black.Scion.Peak, 43, 45}} {
		if c.got < c.low || c.got > c.high {
			t.Errorf("%s %.1f C, want %v to %v", c.name, c.got.C(), c.low, c.high)
		}
	}
	if a.WhiteBefore == nil || a.Black.Side.Over45 < 300 || a.White.Side.Over45 != 0 {
		t.Errorf("white before %v, minutes over 45 C %v dark and %v white", a.WhiteBefore, a.Black.Side.Over45, a.White.Side.Over45)
	}
}

// Derived: on a cool windy day nothing passes 36 C.
func TestCoolWindyDay(t *testing.T) {
	a := heat(t, mayDay(t, 4, 14, 6))
	for _, s := range []Spell{a.Black.Scion, a.Black.Side, a.Black.Top, a.White.Scion, a.White.Side, a.White.Top} {
		if s.Peak > 36 || s.Over45 != 0 {
			t.Errorf("%+v", s)
		}
	}
	if a.WhiteBefore != nil || a.DryFirst {
		t.Errorf("white before %v", a.WhiteBefore)
	}
	if !strings.Contains(a.Advice, "Paint it white once the sealer is dry") {
		t.Errorf("no limit must not read as no need: %q", a.Advice)
	}
}

// White before is an hour before the dark side crosses 45 C, found here
// on the curve that is drawn.
func TestWhiteBeforeAnHourAhead(t *testing.T) {
	a := heat(t, mayDay(t, 11, 33, 1.3))
	for i, at := range a.Curves.Times {
		if a.Curves.BlackSide[i] > 45 || a.Curves.BlackScion[i] > 45 {
			if ahead := at.Sub(*a.WhiteBefore); ahead < 60*time.Minute || ahead > 65*time.Minute {
				t.Errorf("white before %v, over 45 C by %v", a.WhiteBefore, at)
			}
			return
		}
	}
	t.Fatal("the dark side never passes 45 C; the case shows nothing")
}

func TestDryFirst(t *testing.T) {
	noon := unit.Clock(13 * 60)
	d := mayDay(t, 15, 38, 0.5)
	d.Sealed = &noon
	a := heat(t, d)
	if !a.DryFirst || a.WhiteBefore.Before(a.Sealed) || !strings.Contains(a.Advice, "shade") || !strings.Contains(a.Advice, "once the sealer is dry") {
		t.Errorf("sealed %v, white before %v, dry first %v: %q", a.Sealed, a.WhiteBefore, a.DryFirst, a.Advice)
	}
	if want := noon.On(d.Date, d.Place.Zone); !a.Sealed.Equal(want) || !a.Curves.Times[0].Equal(want) {
		t.Errorf("sealed %v, want %v", a.Sealed, want)
	}
}

// Where the sun does not rise the graft is taken as sealed at the start of the
// date, and the answer says so.
func TestDaysWithoutSunrise(t *testing.T) {
	for _, c := range []struct {
		lat  float64
		date unit.Date
	}{{80, unit.MakeDate(2027, 12, 21)}, {80, unit.MakeDate(2027, 6, 21)}, {90, unit.MakeDate(2027, 6, 21)}, {-90, unit.MakeDate(2027, 6, 21)}} {
		d := NewHeatDay(Place{Lat: c.lat, Zone: time.UTC}, c.date, 5, 20, 2)
		a := heat(t, d)
		why := "does not rise"
		if a.Sun.Top > 0 {
			why = "is up when this date begins"
		}
		said := strings.Contains(a.Advice, why) && strings.Contains(strings.Join(a.Work.Assumed, " "), why)
		if !a.Sealed.Equal(c.date.In(time.UTC)) || !said || a.Sun.Rise != nil {
			t.Errorf("lat %v: sealed %v, rise %v: %q", c.lat, a.Sealed, a.Sun.Rise, a.Advice)
		}
	}
}

// A mistaken sign of the longitude is told.
func TestOddClock(t *testing.T) {
	d := mayDay(t, 15, 35, 1)
	if a := heat(t, d); strings.Contains(a.Advice, "longitude") {
		t.Error(a.Advice)
	}
	d.Place.Lon = -d.Place.Lon
	if a := heat(t, d); !strings.Contains(a.Advice, "longitude") {
		t.Error(a.Advice)
	}
}

func someHeat(t *rapid.T) HeatDay {
	low := rapid.Float64Range(-20, 35).Draw(t, "low")
	high := low + rapid.Float64Range(0, 20).Draw(t, "range")
	d := NewHeatDay(anyClock(t, somewhere(t, 90)), someDate(t), unit.Temperature(low), unit.Temperature(high), unit.Speed(rapid.Float64Range(0, 15).Draw(t, "wind")))
	d.Cloud = rapid.Float64Range(0, 8).Draw(t, "oktas")
	d.Across = unit.Length(rapid.Float64Range(10, 300).Draw(t, "across"))
	d.Thick = unit.Length(rapid.Float64Range(1, 10).Draw(t, "thick"))
	if rapid.Bool().Draw(t, "by clock") {
		c := unit.Clock(rapid.IntRange(0, 1439).Draw(t, "sealed"))
		d.Sealed = &c
	}
	return d
}

func TestHeatHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := someHeat(t)
		a, err := Heat(d)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(a); err != nil { // NaN and infinities do not marshal
			t.Fatal(err)
		}
		midnight := d.Date.Add(1).In(d.Place.Zone)
		pairs := [][2]Spell{{a.Black.Scion, a.White.Scion}, {a.Black.Side, a.White.Side}, {a.Black.Top, a.White.Top}}
		for _, pair := range pairs {
			if pair[1].Peak > pair[0].Peak+1e-9 || pair[1].Over45 > pair[0].Over45+1e-9 {
				t.Fatalf("white %+v hotter than dark %+v", pair[1], pair[0])
			}
			for _, s := range pair {
				if s.PeakAt.Before(a.Sealed) || s.PeakAt.After(midnight) || (s.Peak > 45) != (s.Over45 > 0) {
					t.Fatalf("%+v, sealed %v", s, a.Sealed)
				}
			}
		}
		over := a.Black.Scion.Peak > 45 || a.Black.Side.Peak > 45
		if over != (a.WhiteBefore != nil) {
			t.Fatalf("white before %v with peaks %v and %v", a.WhiteBefore, a.Black.Scion.Peak, a.Black.Side.Peak)
		}
		if a.WhiteBefore != nil && (a.WhiteBefore.Before(a.Sealed) || a.DryFirst != a.WhiteBefore.Before(a.Sealed.Add(2*time.Hour))) {
			t.Fatalf("white before %v, sealed %v, dry first %v", a.WhiteBefore, a.Sealed, a.DryFirst)
		}
		if !strings.Contains(a.Advice, "once the sealer is dry") {
			t.Fatalf("advice without paint: %q", a.Advice)
		}
	})
}

// Where the sun warms the dark side well over the air, wind cools it; under a
// weak sun and a cold sky wind may warm it instead.
func TestMoreWindNeverHeats(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := someHeat(t)
		windy := d
		windy.Wind = max(0.3, d.Wind) + unit.Speed(rapid.Float64Range(0.5, 10).Draw(t, "more wind"))
		calm, err := Heat(d)
		if err != nil {
			t.Fatal(err)
		}
		blown, err := Heat(windy)
		if err != nil {
			t.Fatal(err)
		}
		if calm.Black.Side.Peak > d.High+5 && blown.Black.Side.Peak >= calm.Black.Side.Peak {
			t.Fatalf("%v calm, %v blown", calm.Black.Side.Peak, blown.Black.Side.Peak)
		}
	})
}

// The stepping against a plain sum of the balance in steps of a second, for the
// dark side of a hot day.
func TestStepsAreShortEnough(t *testing.T) {
	d := mayDay(t, 15, 35, 0.5)
	a := heat(t, d)
	air := airThrough(d.Place, []Extremes{{d.Date, d.Low, d.High}})[0]
	store, across, peak := 2.2e6*0.01905, 0.0762, -273.0
	c := air(a.Sealed).C()
	for at := a.Sealed; at.Before(d.Date.Add(1).In(d.Place.Zone)); at = at.Add(time.Second) {
		m := d.momentAt(at, air(at).C())
		forced := windCooling(0.5, across, airOf((c+m.air)/2+273.15))
		h := math.Pow(math.Pow(forced, 3)+math.Pow(1.31*math.Cbrt(math.Abs(c-m.air)), 3), 1.0/3)
		surroundings := (math.Pow(m.air+273.15, 4) + math.Pow(m.air-10+273.15, 4)) / 2
		c += (0.94*m.light[1] - h*(c-m.air) - 0.9*5.670374419e-8*(math.Pow(c+273.15, 4)-surroundings)) / store
		peak = max(peak, c)
	}
	if math.Abs(peak-a.Black.Side.Peak.C()) > 0.02 {
		t.Errorf("peak %.3f C, by the second %.3f C", a.Black.Side.Peak.C(), peak)
	}
}

func TestImpossibleHeat(t *testing.T) {
	late := unit.Clock(24 * 60)
	for option, spoil := range map[string]func(*HeatDay){
		"lat":    func(d *HeatDay) { d.Place.Lat = 99 },
		"zone":   func(d *HeatDay) { d.Place.Zone = nil },
		"low":    func(d *HeatDay) { d.Low = d.High + 1 },
		"high":   func(d *HeatDay) { d.High = 90 },
		"wind":   func(d *HeatDay) { d.Wind = -1 },
		"cloud":  func(d *HeatDay) { d.Cloud = 9 },
		"across": func(d *HeatDay) { d.Across = 0 },
		"thick":  func(d *HeatDay) { d.Thick = d.Across + 1 },
		"sealed": func(d *HeatDay) { d.Sealed = &late },
	} {
		d := mayDay(t, 15, 35, 1)
		spoil(&d)
		var impossible *trade.Impossible
		if _, err := Heat(d); !errors.As(err, &impossible) || impossible.Option != option || impossible.Given == "" {
			t.Errorf("%s: %v", option, err)
		}
	}
	for option, spoil := range map[string]func(*HeatDay){
		"low":    func(d *HeatDay) { d.Low = unit.Temperature(math.NaN()) },
		"wind":   func(d *HeatDay) { d.Wind = unit.Speed(math.Inf(1)) },
		"cloud":  func(d *HeatDay) { d.Cloud = math.NaN() },
		"across": func(d *HeatDay) { d.Across = unit.Length(math.NaN()) },
	} {
		d := mayDay(t, 15, 35, 1)
		spoil(&d)
		var impossible *trade.Impossible
		if _, err := Heat(d); !errors.As(err, &impossible) || impossible.Option != option {
			t.Errorf("%s: %v", option, err)
		}
	}
}

func TestHeatNamesItsFields(t *testing.T) {
	a := heat(t, mayDay(t, 11, 33, 1.3))
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	names := []string{"air", "sun", "black", "white", "white_before", "dry_first", "advice", "because"}
	for _, name := range names {
		if got[name] == nil {
			t.Errorf("no %s in %s", name, text)
		}
	}
	if len(got) != len(names) || len(got["air"].([]any)) != 24 || len(got["because"].([]any)) == 0 {
		t.Errorf("%s", text)
	}
	if !strings.Contains(string(text), `"peak_at":"2027-05-05T`) || !strings.Contains(string(text), `-07:00"`) {
		t.Errorf("instants must carry the offset of the zone: %s", text)
	}
	if len(a.Work.Inputs) == 0 || len(a.Work.Assumed) == 0 || a.Work.Formula == "" || len(a.Work.Answer) == 0 {
		t.Errorf("the working is not complete: %+v", a.Work)
	}
}

func TestHeatIsQuick(t *testing.T) {
	if raced {
		t.Skip("timing has no sense under the race detector")
	}
	d := mayDay(t, 15, 35, 0.5)
	best := time.Hour
	for range 5 {
		start := time.Now()
		heat(t, d)
		best = min(best, time.Since(start))
	}
	if best > 50*time.Millisecond {
		t.Errorf("%v for one answer", best)
	}
}

// The words of advice name the limits that the advice goes by.
func TestWordsNameTheLimits(t *testing.T) {
	for _, c := range []struct {
		limit unit.Temperature
		says  string
	}{{trade.InjuryFrom, "45 C (113 F)"}, {trade.HeatPostpone, "38 C (100 F)"}, {trade.HeatCaution, "32 C (90 F)"}} {
		if got := degrees(c.limit); got != c.says {
			t.Errorf("%v is said as %s, want %s", c.limit, got, c.says)
		}
	}
	d := NewHeatDay(valley, unit.MakeDate(2027, 5, 5), 15, trade.HeatPostpone, 3)
	if a := heat(t, d); !strings.Contains(a.Advice, degrees(trade.HeatPostpone)) || !strings.Contains(a.Work.Formula, degrees(trade.InjuryFrom)) {
		t.Errorf("%q, by %q", a.Advice, a.Work.Formula)
	}
}

// An altitude that is not told is not listed as one of nought.
func TestAltitudeIsListedWhereItIsTold(t *testing.T) {
	for _, altitude := range []unit.Length{0, 300 * unit.Metre} {
		p := valley
		p.Altitude = altitude
		a := heat(t, NewHeatDay(p, unit.MakeDate(2027, 5, 5), 15, 30, 3))
		listed := slices.ContainsFunc(a.Work.Inputs, func(in trade.Input) bool { return in.Name == "altitude" })
		assumed := strings.Contains(strings.Join(a.Work.Assumed, " "), "no higher than the sea")
		if listed != (altitude != 0) || assumed == listed {
			t.Errorf("altitude %v: listed %v, assumed %v", altitude, listed, assumed)
		}
	}
}
