package girth

import (
	"errors"
	"math"
	"testing"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

func TestParseReadings(t *testing.T) {
	got, err := ParseReadings("2027-06-01=4.1in  2027-10-01=5 1/2 in 2028-06-01=150mm")
	want := []Reading{
		{unit.MakeDate(2027, 6, 1), 4.1 * unit.Inch},
		{unit.MakeDate(2027, 10, 1), 5.5 * unit.Inch},
		{unit.MakeDate(2028, 6, 1), 150},
	}
	if err != nil || len(got) != len(want) {
		t.Fatalf("%v, %v", got, err)
	}
	for i, r := range got {
		if r.On != want[i].On || math.Abs(float64(r.Girth-want[i].Girth)) > 1e-9 {
			t.Errorf("reading %d is %v, want %v", i+1, r, want[i])
		}
	}
	for _, given := range []string{"", "  ", "4in", "2027-06-01", "2027-06-01=", "2027-06-01=4", "2027-13-01=4in", "2027-06-01=0in", "=4in", "2027-06-01=4in=5in"} {
		if got, err := ParseReadings(given); err == nil {
			t.Errorf("%q was taken for %v", given, got)
		}
	}
}

func FuzzParseReadings(f *testing.F) {
	for _, s := range []string{"2027-06-01=4.1in 2027-10-01=5.0in", "2027-06-01=4 1/8in", "2027-06-01=1ft 2in 2028-01-01=1m", "0001-01-01=1mm " +
		"9999-12-31=1m", "="} {
		f.Add(s)
	}
	rate := 3 * unit.Inch
	f.Fuzz(func(t *testing.T, s string) {
		readings, err := ParseReadings(s)
		if err != nil {
			return
		}
		for _, plan := range []TwinePlan{{400, readings, nil}, {400, readings, &rate}} {
			out, err := Twine(plan)
			var cannot *trade.Impossible
			if err != nil && !errors.As(err, &cannot) {
				t.Errorf("%q: %v", s, err)
			}
			if err == nil && out.TightOn != nil && out.CutBefore >= *out.TightOn {
				t.Errorf("%q: cut before %v, tight on %v", s, out.CutBefore, out.TightOn)
			}
		}
	})
}
