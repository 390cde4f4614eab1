package unit

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// Conversion factors: NIST SP 811 (2008), appendix B.8: inch 25.4 mm, foot
// 0.3048 m, mile an hour 0.44704 m/s; degree Fahrenheit (t-32)/1.8.
func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		given string
		bare  Length
		mm    float64
	}{
		{"4in", 0, 101.6}, {"10.2cm", 0, 102}, {"100mm", 0, 100}, {"3ft", 0, 914.4}, {"1.2m", 0, 1200},
		{"3", Inch, 76.2}, {"3.5", Inch, 88.9}, {"3 1/2", Inch, 88.9}, {"3-1/2", Inch, 88.9}, {"3in", Centimetre, 76.2},
		{"9cm", Inch, 90}, {"90mm", Inch, 90}, {"9", Centimetre, 90}, {".5in", 0, 12.7}, {"1/2 in", 0, 12.7},
		{"5ft 6in", 0, 1676.4}, {"5' 6\"", 0, 1676.4}, {"5ft 6 1/2in", 0, 1689.1}, {"3 IN", 0, 76.2}, {"0", Inch, 0},
	} {
		got, err := ParseLength(c.given, c.bare)
		if err != nil || math.Abs(got.MM()-c.mm) > 1e-9 {
			t.Errorf("ParseLength(%q) = %v, %v; want %v mm", c.given, got, err, c.mm)
		}
	}
	for _, bad := range []string{"", "4", "in", "-3in", "4 furlongs", "NaN", "1e3in", "3/0in", "1 2in 3", "4in 3", "9cm 3in", "5ft6", "99999999m", "3in 2ft", "Inf", "1..2in"} {
		if got, err := ParseLength(bad, 0); err == nil {
			t.Errorf("ParseLength(%q) = %v, want an error", bad, got)
		}
	}
}

func TestTemperatureAndSpeed(t *testing.T) {
	for given, c := range map[string]float64{"88F": 31.1111, "31C": 31, "-40F": -40, "-40 c": -40, "50°F": 10} {
		if got, err := ParseTemperature(given, 0); err != nil || math.Abs(got.C()-c) > 1e-3 {
			t.Errorf("ParseTemperature(%q) = %v, %v", given, got, err)
		}
	}
	for given, ms := range map[string]float64{"5mph": 2.2352, "2m/s": 2, "36km/h": 10} {
		if got, err := ParseSpeed(given, 0); err != nil || math.Abs(got.MS()-ms) > 1e-12 {
			t.Errorf("ParseSpeed(%q) = %v, %v", given, got, err)
		}
	}
	for _, bad := range []string{"", "88", "F", "1e400F", "-500C", "9999F"} {
		if _, err := ParseTemperature(bad, 0); err == nil {
			t.Errorf("ParseTemperature(%q): no error", bad)
		}
	}
	for _, bad := range []string{"", "5", "-1mph", "9999mph", "fast"} {
		if _, err := ParseSpeed(bad, 0); err == nil {
			t.Errorf("ParseSpeed(%q): no error", bad)
		}
	}
	if got := US.Length(7.99 * Inch); got != "8 in" {
		t.Errorf("7.99 in in a sentence is %q", got)
	}
	if got := US.Show(Warmth(5)); got != "9 F" {
		t.Errorf("5 K in US units is %q, want 9 F with no 32 in it", got)
	}
}

func TestShow(t *testing.T) {
	for _, c := range []struct {
		sys  System
		v    any
		want string
	}{
		{US, 3.625 * Inch, "3 5/8 in"}, {US, Inch / 2, "1/2 in"}, {US, 4 * Inch, "4 in"}, {US, 42 * Inch, "42 in"},
		{US, 36.5 * Inch, "36 1/2 in"}, {US, 12 * Foot, "12 ft"}, {Metric, 92 * Millimetre, "92 mm"}, {Metric, 3.4 * Millimetre, "3.4 mm"},
		{Metric, 1.07 * Metre, "1.07 m"}, {US, Fahrenheit(88), "88 F"}, {Metric, Temperature(31), "31 C"}, {US, 5 * MileAnHour, "5 mph"},
		{US, Bearing(30), "30°, NNE"}, {US, Bearing(359.7), "0°, N"}, {US, 0.25, "0.25"}, {US, MakeDate(2027, 5, 4), "4 May 2027"},
		{US, 7.99 * Inch, "7.99 in"},
	} {
		if got := c.sys.Show(c.v); got != c.want {
			t.Errorf("%v.Show(%v) = %q, want %q", c.sys, c.v, got, c.want)
		}
	}
}

func TestBearing(t *testing.T) {
	if got := Bearing(350).From(10); got != 20 {
		t.Errorf("350 from 10 is %v", got)
	}
	for given, want := range map[string]Bearing{"ne": 45, "360": 0, "12.5": 12.5} {
		if got, err := ParseBearing(given); err != nil || got != want {
			t.Errorf("ParseBearing(%q) = %v, %v", given, got, err)
		}
	}
	for _, bad := range []string{"", "-1", "361", "x"} {
		if _, err := ParseBearing(bad); err == nil {
			t.Errorf("ParseBearing(%q): no error", bad)
		}
	}
}

func TestDate(t *testing.T) {
	d, err := ParseDate("2027-05-04")
	if err != nil || d.String() != "2027-05-04" || d.Add(28).String() != "2027-06-01" || d.Weekday() != time.Tuesday {
		t.Errorf("date %v %v", d, err)
	}
	if got := MakeDate(2028, 2, 29).AddYears(1).String(); got != "2029-03-01" {
		t.Errorf("29 February a year on is %v", got)
	}
	if _, err := ParseDate("2027-02-30"); err == nil {
		t.Error("30 February: no error")
	}
}

func TestPrintedLengthsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Float64Range(0, 3000).Draw(t, "mm"))
		sys := System(rapid.IntRange(0, 1).Draw(t, "system"))
		text := sys.Length(l)
		back, err := ParseLength(text, 0)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if sys.Length(back) != text {
			t.Fatalf("%v prints %q, which reads back as %q", l, text, sys.Length(back))
		}
	})
}

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{"4in", "3 1/2", "5ft 6in", "90mm", "", "1/0", "9e9m"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := ParseLength(s, Inch)
		if err == nil && (l < 0 || l > maxLength || math.IsNaN(l.MM())) {
			t.Fatalf("%q gave %v", s, l)
		}
	})
}
