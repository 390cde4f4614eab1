package figure

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barkslip/core/unit"
)

// dots are the Braille dots of some lines of a figure.
func dots(f Figure, from, to int) map[[2]int]bool {
	table := map[rune]uint8{}
	for d := range 256 {
		table[braille(uint8(d))] = uint8(d)
	}
	all := map[[2]int]bool{}
	w, _ := f.Size()
	for y := from; y < to; y++ {
		for x := range w {
			r, _ := f.Cell(x, y)
			for bit := range 8 {
				if table[r]>>bit&1 == 1 {
					all[[2]int{2*x + bit%2, 4*y + bit/2}] = true
				}
			}
		}
	}
	return all
}

// extent is how many dots, or cells, the places reach across and down.
func extent(places map[[2]int]bool) (wide, tall float64) {
	low, high := [2]int{math.MaxInt, math.MaxInt}, [2]int{math.MinInt, math.MinInt}
	for p := range places {
		for i := range 2 {
			low[i], high[i] = min(low[i], p[i]), max(high[i], p[i])
		}
	}
	return float64(high[0] - low[0]), float64(high[1] - low[1])
}

// ink are the cells of some lines that are not blank nor a letter.
func ink(f Figure, from, to int) map[[2]int]bool {
	all := map[[2]int]bool{}
	w, _ := f.Size()
	for y := from; y < to; y++ {
		for x := range w {
			if r, _ := f.Cell(x, y); r != ' ' {
				all[[2]int{x, y}] = true
			}
		}
	}
	return all
}

func TestTopIsToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		long := rapid.Float64Range(30, 250).Draw(t, "across")
		ratio := rapid.Float64Range(0.5, 1).Draw(t, "ratio")
		w, h := rapid.IntRange(24, 120).Draw(t, "w"), rapid.IntRange(12, 50).Draw(t, "h")
		way := rapid.SampledFrom([]unit.Bearing{0, 90, 180, 270}).Draw(t, "way")
		top := Top{Across: unit.Length(long), Across2: unit.Length(long * ratio), LongWay: way}
		want := ratio // across to down
		if way == 90 || way == 270 {
			want = 1 / ratio
		}
		f := top.Draw(w, h, Braille)
		wide, tall := extent(dots(f, 1, h-1))
		if math.Abs(wide-tall*want) > 1+want {
			t.Fatalf("%v by %v dots, want %.3f to 1\n%s", wide, tall, want, f.Lines())
		}
		wide, tall = extent(ink(top.Draw(w, h, ASCII), 1, h-1))
		if math.Abs(wide-2*tall*want) > 1+2*want {
			t.Fatalf("%v by %v cells, want %.3f to 1", wide, tall, 2*want)
		}
	})
}

// The scale bar and the stump must be drawn to one scale.
func TestScaleBarMatchesTheStump(t *testing.T) {
	for inches := 1.0; inches <= 8; inches += 0.5 {
		f := Top{Across: unit.Length(inches) * unit.Inch, LongWay: 90}.Draw(60, 20, Braille)
		stump, _ := extent(dots(f, 1, 19))
		bar, _ := extent(dots(f, 19, 20))
		perInch := stump / inches
		nearest := math.Inf(1)
		for _, m := range rounds[unit.US] {
			nearest = min(nearest, math.Abs(bar-m.long.Inches()*perInch))
		}
		if nearest > 1.5 {
			t.Errorf("%v in: stump %v dots, bar %v dots, no round length", inches, stump, bar)
		}
	}
}

func TestSlotsStandAtTheirBearing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := unit.Bearing(rapid.Float64Range(0, 360).Draw(t, "bearing"))
		top := Top{Across: 100, Across2: 70, LongWay: unit.Bearing(rapid.Float64Range(0, 360).Draw(t, "way"))}
		bare := dots(top.Draw(60, 20, Braille), 0, 20)
		top.Slots = []Slot{{b, "7", Set}}
		f := top.Draw(60, 20, Braille)
		c, _ := newCanvas(60, 20, Braille)
		o := top.place(c)
		centre := o.centre
		var sum point
		for p := range dots(f, 0, 20) {
			if !bare[p] {
				sum = sum.plus(point{float64(p[0]) + 0.5 - centre.x, float64(p[1]) + 0.5 - centre.y}, 1)
			}
		}
		if off := bearingOf(sum).From(b); off > 4 {
			t.Fatalf("slot at %v drawn at %v", b, bearingOf(sum))
		}
		found := false
		for cell := range ink(f, 0, 19) {
			if r, _ := f.Cell(cell[0], cell[1]); r != '7' {
				continue
			}
			found = true
			at := point{float64(2*cell[0]) + 1 - centre.x, float64(4*cell[1]) + 2 - centre.y}
			if out := math.Hypot(at.x, at.y); out <= o.reach(bearingOf(at)) {
				t.Fatalf("number at %v, %v dots out, stands inside the bark", at, out)
			}
			if off := bearingOf(at).From(b); off > 15 {
				t.Fatalf("number of the slot at %v stands at %v", b, bearingOf(at))
			}
		}
		if !found {
			t.Fatal("slot without its number")
		}
	})
}

func bearingOf(p point) unit.Bearing {
	return unit.Bearing(math.Atan2(p.x, -p.y) * 180 / math.Pi).Normal()
}

// The face is as wide as the scion is thick, on the scale of its long cut.
func TestScionIsToScale(t *testing.T) {
	for thick := unit.Length(6); thick <= 20; thick += 2 {
		s := Scion{Thick: thick, Bark: 1, LongCut: 60, Tip: 1, Back: 10}
		c, _ := newCanvas(60, 24, Braille)
		b := s.lay(c)
		c.outline(b)
		wide, tall := extent(dots(c.finish(), 0, 24))
		if want := wide * thick.MM() / (60 * (1 + stubShare)); math.Abs(tall-want) > 1.5 {
			t.Errorf("%v mm thick: %v dots down, want %.1f", thick, tall, want)
		}
	}
}

func TestIntervalMarksStandAtTheirShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.IntRange(narrowest, 120).Draw(t, "w")
		low := rapid.Float64Range(0, 1).Draw(t, "low")
		rate := rapid.Float64Range(low, 1).Draw(t, "rate")
		high := rapid.Float64Range(rate, 1).Draw(t, "high")
		line := []rune(Interval{low, rate, high}.Draw(w, ASCII).Lines()[0])
		for x, r := range line {
			share := float64(x) / float64(w-1)
			near := 0.51 / float64(w-1)
			switch {
			case r == '#' && math.Abs(share-rate) > near:
				t.Fatalf("rate %v drawn at %v", rate, share)
			case r == '=' && (share < low-near || share > high+near):
				t.Fatalf("bar at %v outside %v to %v", share, low, high)
			case (r == '.' || r == ':') && share > low+near && share < high-near:
				t.Fatalf("no bar at %v within %v to %v", share, low, high)
			}
		}
	})
}

// A band 50 mm long on a round stump 100 mm across takes one radian of it.
func TestBlockedBarkIsAsLongAsSaid(t *testing.T) {
	top := Top{Across: 100}
	bare := dots(top.Draw(60, 20, Braille), 0, 20)
	c, _ := newCanvas(60, 20, Braille)
	centre := top.place(c).centre
	for _, middle := range []unit.Bearing{0, 90, 215} {
		top.Blocked = []Arc{{Bearing: middle, Width: 50}}
		widest := 0.0
		for p := range dots(top.Draw(60, 20, Braille), 0, 20) {
			if !bare[p] {
				widest = max(widest, bearingOf(point{float64(p[0]) + 0.5 - centre.x, float64(p[1]) + 0.5 - centre.y}).From(middle))
			}
		}
		if want := 0.5 * 180 / math.Pi; math.Abs(widest-want) > 4 {
			t.Errorf("band about %v reaches %.1f degrees to a side, want %.1f", middle, widest, want)
		}
	}
}

// A line across, and a series, at the height of a tick stand in its line.
func TestCurvesKeepToTheirTicks(t *testing.T) {
	for height := 0.0; height <= 100; height += 10 {
		v := Curve{X1: 10, Y1: 100, YTicks: []Tick{{height, "#"}}, Series: []Series{{Points: []Point{{0, height}, {10, height}}}}}
		f := v.Draw(60, 20, Braille)
		for y := range 19 {
			label, _ := f.Cell(0, y)
			last, _ := f.Cell(59, y)
			if height > 0 && (label == '#') != (last != ' ') && y < 18 {
				t.Errorf("height %v: line %d has tick %q and curve %q", height, y, label, last)
			}
		}
	}
}
