package girth

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

func readings(t *testing.T, s string) []Reading {
	t.Helper()
	r, err := ParseReadings(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func day(t *testing.T, s string) unit.Date {
	t.Helper()
	d, err := unit.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestTwineByRate(t *testing.T) {
	three, none := 3*unit.Inch, unit.Length(0)
	for _, c := range []struct {
		name, girth    string
		loop           unit.Length
		rate           *unit.Length
		tight, cutting string
	}{
		// 4 in at 3 in a year: a year and a third of 365.25 days is 487 days.
		{"thirty days before", "2027-06-01=4in", 8 * unit.Inch, &three, "2028-09-30", "2028-08-31"},
		{"on from the latest", "2026-06-01=2in 2027-06-01=4in", 8 * unit.Inch, &three, "2028-09-30", "2028-08-31"},
		{"three years at most", "2027-06-01=4in", 16 * unit.Inch, &three, "2031-06-01", "2030-06-01"},
		{"three years from the first", "2025-06-01=3in 2027-06-01=4in", 8 * unit.Inch, &three, "2028-09-30", "2028-06-01"},
		{"never", "2027-06-01=4in", 8 * unit.Inch, &none, "", "2030-06-01"},
		{"tight already", "2027-06-01=4in 2027-10-01=8in 2028-06-01=9in", 8 * unit.Inch, &three, "2027-10-01", "2027-09-01"},
	} {
		got, err := Twine(TwinePlan{c.loop, readings(t, c.girth), c.rate})
		if err != nil || got.Method != ByRate || got.CutBefore != day(t, c.cutting) {
			t.Errorf("%s: cut before %v by %s (%v), want %s", c.name, got.CutBefore, got.Method, err, c.cutting)
		}
		switch {
		case c.tight == "" && got.TightOn != nil:
			t.Errorf("%s: tight on %v, want never", c.name, got.TightOn)
		case c.tight != "" && (got.TightOn == nil || *got.TightOn != day(t, c.tight)):
			t.Errorf("%s: tight on %v, want %s", c.name, got.TightOn, c.tight)
		}
	}
}

func TestTwineByFit(t *testing.T) {
	// Straight: 100 mm and 0.1 mm a day, so 150 mm after 500 days.
	got, err := Twine(TwinePlan{Loop: 150, Readings: readings(t, "2027-01-01=100mm 2027-04-11=110mm 2027-07-20=120mm 2027-10-28=130mm")})
	if want := day(t, "2028-05-15"); err != nil || got.Method != ByFit || got.TightOn == nil || *got.TightOn != want {
		t.Errorf("straight: %v (%v), want %v", got.TightOn, err, want)
	}
	// Three readings that gain 3 in a year are straight, a leap day apart or not.
	got, err = Twine(TwinePlan{Loop: 13 * unit.Inch, Readings: readings(t, "2027-06-01=4in 2028-06-01=7in 2029-06-01=10in")})
	if err != nil || got.TightOn == nil || max(*got.TightOn-day(t, "2030-06-01"), day(t, "2030-06-01")-*got.TightOn) > 1 {
		t.Errorf("three in a year: %v (%v), want 2030-06-01", got.TightOn, err)
	}
	// So are three that miss a line by less than a tape tells.
	got, err = Twine(TwinePlan{Loop: 16 * unit.Inch, Readings: readings(t, "2027-06-01=4.1in 2027-10-01=5.0in 2028-06-01=6.5in")})
	if err != nil || got.TightOn == nil || got.TightOn.Year() != 2032 {
		t.Errorf("2.4 in a year: %v (%v), want 2032", got.TightOn, err)
	}
	// A winter's rest is no levelling off.
	got, err = Twine(TwinePlan{Loop: 200, Readings: readings(t, "2027-06-01=100mm 2027-10-01=125mm 2028-04-01=127mm")})
	if err != nil || got.TightOn == nil {
		t.Errorf("over one winter: never (%v), want a day", err)
	}
	// Still loose at the last reading, though the line was there before: the day after.
	got, err = Twine(TwinePlan{Loop: 122, Readings: readings(t, "2027-01-01=100mm 2027-04-11=110mm 2027-07-20=120mm 2027-10-28=121mm")})
	if err != nil || got.TightOn == nil || *got.TightOn != day(t, "2027-10-29") {
		t.Errorf("still loose: %v (%v), want the day after the last reading", got.TightOn, err)
	}
	// Levelling off under the loop: never, and cut after three years.
	levelling := "2027-01-01=60mm 2028-01-01=100mm 2029-01-01=120mm 2030-01-01=127mm 2031-01-01=129mm"
	got, err = Twine(TwinePlan{Loop: 200, Readings: readings(t, levelling)})
	if err != nil || got.TightOn != nil || got.CutBefore != day(t, "2030-01-01") {
		t.Errorf("levelling off: %v, cut before %v (%v), want never", got.TightOn, got.CutBefore, err)
	}
	// So where the last readings lie a little over the curve's asymptote.
	noisy := "2027-06-01=100mm 2027-10-01=180mm 2028-04-01=210mm 2028-08-01=217mm 2028-12-01=218mm"
	got, err = Twine(TwinePlan{Loop: 240, Readings: readings(t, noisy)})
	if err != nil || got.TightOn != nil || got.CutBefore != day(t, "2030-06-01") {
		t.Errorf("levelling off, the last a little over: %v, cut before %v (%v), want never", got.TightOn, got.CutBefore, err)
	}
	// Stairs, a season's growth and a winter's rest by turns, are no levelling
	// off, though the last reading was taken after a rest.
	stairs := "2027-06-01=100mm 2027-10-01=180mm 2028-04-01=181mm 2028-10-01=230mm 2029-04-01=231mm"
	got, err = Twine(TwinePlan{Loop: 300, Readings: readings(t, stairs)})
	if err != nil || got.TightOn == nil || got.TightOn.Year() != 2030 {
		t.Errorf("two winters: %v (%v), want 2030", got.TightOn, err)
	}
	// Shrinking readings never reach it.
	got, err = Twine(TwinePlan{Loop: 200, Readings: readings(t, "2027-01-01=104mm 2027-06-01=102mm 2028-01-01=101mm")})
	if err != nil || got.TightOn != nil {
		t.Errorf("shrinking: %v (%v), want never", got.TightOn, err)
	}
}

// Each published trunk levels off: a loop over its asymptote never grows tight,
// one it has outgrown was tight by the last reading.
func TestTwineRoundOrangeTrees(t *testing.T) {
	trees := map[string][]Reading{}
	for _, row := range published(t, "orange-trees.csv") {
		on := unit.MakeDate(2000, 1, 1).Add(int(float(t, row["day"])))
		trees[row["tree"]] = append(trees[row["tree"]], Reading{on, unit.Length(float(t, row["circumference_mm"]))})
	}
	if len(trees) != 5 {
		t.Fatalf("%d trees", len(trees))
	}
	for name, trunk := range trees {
		l, ok := fit(series(trunk)).(logistic)
		if !ok {
			t.Errorf("tree %s: no logistic", name)
			continue
		}
		for _, c := range []struct {
			loop  float64
			tight bool
		}{{l.asymptote + 1, false}, {l.asymptote - 1, true}, {120, true}} {
			got, err := Twine(TwinePlan{Loop: unit.Length(c.loop), Readings: trunk})
			if err != nil || (got.TightOn != nil) != c.tight {
				t.Errorf("tree %s, loop %v: tight on %v (%v)", name, c.loop, got.TightOn, err)
			}
		}
	}
}

// Readings taken from a logistic are read back as that logistic, and the day
// is the one on which it reaches the loop.
func TestTwineFollowsALogistic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		true1 := logistic{
			asymptote: rapid.Float64Range(200, 600).Draw(t, "asymptote"),
			midpoint:  rapid.Float64Range(300, 700).Draw(t, "midpoint"),
			scale:     rapid.Float64Range(150, 400).Draw(t, "scale"),
		}
		first := unit.MakeDate(2027, 6, 1)
		var plan TwinePlan
		for i := range rapid.IntRange(5, 12).Draw(t, "readings") {
			plan.Readings = append(plan.Readings, Reading{first.Add(150 * i), unit.Length(true1.size(float64(150 * i)))})
		}
		last := plan.Readings[len(plan.Readings)-1]
		share := rapid.Float64Range(0.1, 0.9).Draw(t, "loop between the last reading and the asymptote")
		plan.Loop = last.Girth + unit.Length(share)*(unit.Length(true1.asymptote)-last.Girth)
		want, _ := true1.reaches(plan.Loop.MM())
		got, err := Twine(plan)
		if err != nil || got.TightOn == nil || math.Abs(float64(*got.TightOn-first)-want) > 1.01 {
			t.Fatalf("tight on %v (%v), want %v days on", got.TightOn, err, want)
		}
	})
}

// While the newest reading is under the loop, no day up to it is the day.
func TestTwineStillLooseIsTightLater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan, on := TwinePlan{}, unit.MakeDate(2027, 6, 1)
		for range rapid.IntRange(3, 8).Draw(t, "readings") {
			plan.Readings = append(plan.Readings, Reading{on, unit.Length(rapid.Float64Range(60, 300).Draw(t, "girth"))})
			on = on.Add(rapid.IntRange(20, 400).Draw(t, "days"))
		}
		widest := unit.Length(0)
		for _, r := range plan.Readings {
			widest = max(widest, r.Girth)
		}
		plan.Loop = widest + unit.Length(rapid.Float64Range(0.5, 200).Draw(t, "room"))
		if rapid.Bool().Draw(t, "by rate") {
			rate := unit.Length(rapid.Float64Range(0, 900).Draw(t, "rate"))
			plan.Rate = &rate
		}
		got, err := Twine(plan)
		last := plan.Readings[len(plan.Readings)-1].On
		if err != nil || got.TightOn != nil && *got.TightOn <= last {
			t.Fatalf("tight on %v, the last reading of %v was under the loop (%v)", got.TightOn, last, err)
		}
	})
}

func TestTwineThatCannotBe(t *testing.T) {
	three, back := 3*unit.Inch, -unit.Inch
	nan := unit.Length(math.NaN())
	one := []Reading{{20000, 100}}
	for _, c := range []struct {
		plan   TwinePlan
		option string
	}{
		{TwinePlan{0, one, &three}, "loop"},
		{TwinePlan{nan, one, &three}, "loop"},
		{TwinePlan{400, nil, &three}, "girth"},
		{TwinePlan{400, one, nil}, "girth"},
		{TwinePlan{400, []Reading{{20000, 100}, {20100, 110}}, nil}, "girth"},
		{TwinePlan{400, []Reading{{20000, 100}, {20000, 110}, {20010, 120}}, nil}, "girth"},
		{TwinePlan{400, []Reading{{20000, 100}, {19000, 110}, {20010, 120}}, nil}, "girth"},
		{TwinePlan{400, []Reading{{20000, 0}}, &three}, "girth"},
		{TwinePlan{400, []Reading{{20000, nan}}, &three}, "girth"},
		{TwinePlan{400, one, &back}, "rate"},
		{TwinePlan{400, one, &nan}, "rate"},
	} {
		_, err := Twine(c.plan)
		var cannot *trade.Impossible
		if !errors.As(err, &cannot) || cannot.Option != c.option {
			t.Errorf("%+v: %v, want a refusal of %s", c.plan, err, c.option)
		}
	}
}

// A loop passed between two readings is dated by the fitted curve, or by the
// line between the two where the curve misses a reading by over 3 mm.
func TestALoopPassedBetweenReadings(t *testing.T) {
	day := func(n int) unit.Date { return unit.MakeDate(2027, 6, 1).Add(n) }
	for _, c := range []struct {
		name string
		mm   []float64 // a reading every hundred days
		loop float64
		want unit.Date
	}{
		{"two readings: the line", []float64{100, 140}, 120, day(50)},
		{"on the fitted line", []float64{100, 110, 120, 130}, 115, day(150)},
		{"the curve misses: the line between the two", []float64{100, 100, 140, 141}, 120, day(150)},
		{"the first reading is past it", []float64{120, 130}, 110, day(0)},
	} {
		rate := 3 * unit.Inch
		p := TwinePlan{Loop: unit.Length(c.loop)}
		if len(c.mm) < fitReadings {
			p.Rate = &rate
		}
		for i, mm := range c.mm {
			p.Readings = append(p.Readings, Reading{On: day(100 * i), Girth: unit.Length(mm)})
		}
		got, err := Twine(p)
		if err != nil || got.TightOn == nil || *got.TightOn != c.want {
			t.Errorf("%s: %v %v, want %s", c.name, got.TightOn, err, c.want)
		}
	}
}
