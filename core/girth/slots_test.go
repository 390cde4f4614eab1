package girth

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

func towards(b unit.Bearing) *unit.Bearing { return &b }

func TestSlotsOnARoundStump(t *testing.T) {
	got, err := Slots(SlotPlan{Across: 4 * unit.Inch})
	if err != nil || got.Scions != 4 || got.Fewer || got.Tight {
		t.Fatalf("%+v, %v", got, err)
	}
	for i, s := range got.Slots {
		if s.Bearing.From(unit.Bearing(90*i)) > 1e-6 {
			t.Errorf("slot %d stands at %v, want %d", i, s.Bearing, 90*i)
		}
	}
	if want := 4 * unit.Inch * math.Pi / 4; math.Abs(float64(got.Gap-want)) > 1e-6 {
		t.Errorf("gap %v, want %v", got.Gap, want)
	}
}

func TestFewerTightAndOne(t *testing.T) {
	for _, c := range []struct {
		name         string
		plan         SlotPlan
		scions       int
		fewer, tight bool
	}{
		{"four at under 50 mm become three", SlotPlan{Across: 60, Scions: 4}, 3, true, false},
		{"four at 50 mm stay", SlotPlan{Across: 200.0001 / math.Pi, Scions: 4}, 4, false, false},
		{"two however close", SlotPlan{Across: 25.4}, 2, false, true},
		{"two on a twig", SlotPlan{Across: 6}, 2, false, true},
		{"three asked on a twig", SlotPlan{Across: 6, Scions: 3}, 2, true, true},
		{"one asked", SlotPlan{Across: 100, Scions: 1}, 1, false, false},
		{"two side by side", SlotPlan{Across: 100, Scions: 2, Slot: 12, Blocked: []Arc{{0, unit.Length(100*math.Pi - 24.001)}}}, 2, false, true},
		{"no second beside the first", SlotPlan{Across: 100, Scions: 2, Slot: 12, Blocked: []Arc{{0, unit.Length(100*math.Pi - 23.9)}}}, 1, true, false},
		{"three asked, room for one", SlotPlan{Across: 100, Scions: 3, Slot: 12, Blocked: []Arc{{0, unit.Length(100*math.Pi - 12.5)}}}, 1, true, false},
	} {
		got, err := Slots(c.plan)
		if err != nil || got.Scions != c.scions || got.Fewer != c.fewer || got.Tight != c.tight || len(got.Slots) != c.scions {
			t.Errorf("%s: %d placed, fewer %v, tight %v, gap %v (%v)", c.name, got.Scions, got.Fewer, got.Tight, got.Gap, err)
		}
		if got.Scions == 1 && got.Gap != got.Girth {
			t.Errorf("%s: gap %v of girth %v", c.name, got.Gap, got.Girth)
		}
	}
}

func TestSlotsThatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		plan   SlotPlan
		option string
	}{
		{SlotPlan{Across: 100, Scions: -1}, "scions"},
		{SlotPlan{Across: 1000, Scions: 25}, "scions"},
		{SlotPlan{Across: 100, Blocked: []Arc{{90, 400}}}, "blocked"},
		{SlotPlan{Across: 100, Blocked: []Arc{{0, 150}, {180, 150}}}, "blocked"}, // 7 mm between is no room for a slot
		{SlotPlan{Across: 100, Blocked: []Arc{{0, 0}}}, "blocked"},
		{SlotPlan{Across: 100, Blocked: []Arc{{unit.Bearing(nan), 10}}}, "blocked"},
		{SlotPlan{Across: 100, Slot: -1}, "slot"},
		{SlotPlan{Across: 100, Slot: 320}, "slot"},
		{SlotPlan{Across: 100, LongWay: unit.Bearing(nan)}, "long-way"},
		{SlotPlan{Across: 100, Toward: towards(unit.Bearing(nan))}, "toward"},
	} {
		_, err := Slots(c.plan)
		var cannot *trade.Impossible
		if !errors.As(err, &cannot) || cannot.Option != c.option {
			t.Errorf("%+v: %v, want a refusal of %s", c.plan, err, c.option)
		}
	}
}

func drawPlan(t *rapid.T) SlotPlan {
	p := SlotPlan{
		Across:  unit.Length(rapid.Float64Range(20, 300).Draw(t, "across")),
		Across2: unit.Length(rapid.SampledFrom([]float64{0, 1, 0.8, 0.5}).Draw(t, "oval")),
		LongWay: unit.Bearing(rapid.IntRange(0, 359).Draw(t, "long way")),
		Scions:  rapid.IntRange(0, 6).Draw(t, "scions"),
	}
	p.Across2 *= p.Across
	for range rapid.IntRange(0, 4).Draw(t, "arcs") {
		p.Blocked = append(p.Blocked, Arc{
			Bearing: unit.Bearing(rapid.IntRange(0, 359).Draw(t, "arc")),
			Width:   p.Across * unit.Length(rapid.Float64Range(0.05, 1).Draw(t, "width")),
		})
	}
	if rapid.Bool().Draw(t, "prefers a side") {
		p.Toward = towards(unit.Bearing(rapid.IntRange(0, 359).Draw(t, "toward")))
	}
	return p
}

// marks are those of 240 places round the bark that are free for a slot's
// centre.
func marks(p SlotPlan) (free []float64, step float64) {
	const n = 240
	o := p.Oval()
	girth := o.Girth().MM()
	step = girth / n
	for i := range n {
		at := float64(i) * step
		clear := true
		for _, arc := range p.Blocked {
			off := math.Abs(at - o.Along(arc.Bearing).MM())
			clear = clear && math.Min(off, girth-off) >= (arc.Width+p.slot()).MM()/2
		}
		if clear {
			free = append(free, at)
		}
	}
	return free, step
}

// bestOf is the largest smallest gap of k of the marks, by steps of one mark:
// from each mark in turn as first, the k-th is reached as early as it can be.
func bestOf(free []float64, step, girth float64, k int) float64 {
	for cells := int(girth / step / float64(k)); cells > 0; cells-- {
		gap := float64(cells)*step - step/2
		for _, first := range free {
			last, placed := first, 1
			for _, turn := range []float64{0, girth} {
				for _, m := range free {
					if placed < k && m+turn >= last+gap && m+turn <= first+girth-gap {
						last, placed = m+turn, placed+1
					}
				}
			}
			if placed == k {
				return float64(cells) * step
			}
		}
	}
	return 0
}

// A layout keeps its slots on free bark, reports its gap truly, is at least as
// good as the best of 240 marks round the bark, and drops slots only as told.
func TestSlotsAgainstMarksRoundTheBark(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		got, err := Slots(p)
		free, step := marks(p)
		if err != nil {
			if len(free) > 0 {
				t.Fatalf("refused with %d free marks: %v", len(free), err)
			}
			return
		}
		o, girth := p.Oval(), p.Oval().Girth().MM()
		var along []float64
		for _, s := range got.Slots {
			along = append(along, s.Along.MM())
			if math.Abs(o.Along(s.Bearing).MM()-s.Along.MM()) > 1e-5 {
				t.Fatalf("slot at %v is not %v along", s.Bearing, s.Along)
			}
			for _, arc := range p.Blocked {
				off := math.Abs(s.Along.MM() - o.Along(arc.Bearing).MM())
				if math.Min(off, girth-off) < (arc.Width+p.slot()).MM()/2-1e-6 {
					t.Fatalf("slot at %v stands in %v", s.Bearing, arc)
				}
			}
		}
		if !slices.IsSorted(along) || math.Abs(smallest(along, girth)-got.Gap.MM()) > 1e-9 {
			t.Fatalf("gap %v of %v", got.Gap, along)
		}
		near := 0.0
		if p.Toward != nil {
			near = 1
		}
		if best := bestOf(free, step, girth, got.Scions); got.Gap.MM() < best-near-1e-6 {
			t.Fatalf("gap %v, marks give %v", got.Gap, best)
		}
		asked := p.asked()
		if got.Scions < asked && got.Scions >= 2 {
			if more := bestOf(free, step, girth, got.Scions+1); more >= 50 {
				t.Fatalf("%d placed, marks keep %d at %v", got.Scions, got.Scions+1, more)
			}
		}
		if two := bestOf(free, step, girth, 2); asked >= 2 && got.Scions == 1 && two >= p.slot().MM() {
			t.Fatalf("one placed, marks keep two at %v", two)
		}
		if got.Scions > 2 && got.Gap.MM() < 50-1e-5 {
			t.Fatalf("%d placed only %v apart", got.Scions, got.Gap)
		}
	})
}

// With a side preferred no layout of marks with a gap within 1 mm of the best
// comes nearer to it.
func TestTowardComesNearest(t *testing.T) {
	p := SlotPlan{Across: 4.2 * unit.Inch, Across2: 3.4 * unit.Inch, LongWay: 30, Scions: 4, Toward: towards(20)}
	got, err := Slots(p)
	if err != nil || !slices.ContainsFunc(got.Slots, func(s Slot) bool { return s.Bearing.From(20) < 1e-6 }) {
		t.Errorf("whole bark: %v (%v), want a slot at 20", got.Slots, err)
	}
	p.Blocked = []Arc{{20, 30}} // the side itself is torn: beside it, half an arc and half a slot away
	got, err = Slots(p)
	if err != nil {
		t.Fatal(err)
	}
	away := func(s Slot) float64 {
		off := math.Abs(float64(s.Along - p.Oval().Along(20)))
		return math.Min(off, float64(got.Girth)-off)
	}
	if near := slices.MinFunc(got.Slots, func(a, b Slot) int { return int(1e6 * (away(a) - away(b))) }); math.Abs(away(near)-21.35) > 1e-6 {
		t.Errorf("nearest is %v away, want 21.35", away(near))
	}
}

// Blocked bark leaves one layout with the largest gap, its ends at the ends of
// the free bark. A side 1.5 mm further in is met for 0.75 mm of gap; for one
// 5 mm further in the slot moves only as far as 1 mm of gap allows.
func TestTowardCostsAtMostAMillimetre(t *testing.T) {
	p := SlotPlan{Across: 200, Scions: 3, Slot: 12, Blocked: []Arc{{180, 300}}}
	best, err := Slots(p)
	if err != nil {
		t.Fatal(err)
	}
	end := best.Slots[2].Along // where the free bark begins
	for in, moves := range map[unit.Length]float64{1.5: 1.5, 5: 2} {
		p.Toward = towards(p.Oval().Bearing(end + in))
		got, err := Slots(p)
		if err != nil {
			t.Fatal(err)
		}
		if moved := float64(got.Slots[2].Along - end); math.Abs(moved-moves) > 1e-4 {
			t.Errorf("toward %v mm in: moved %v, want %v", in, moved, moves)
		}
		if cost := float64(best.Gap - got.Gap); math.Abs(cost-moves/2) > 1e-4 {
			t.Errorf("toward %v mm in: costs %v of gap, want %v", in, cost, moves/2)
		}
	}
}
