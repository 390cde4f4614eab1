package girth

import (
	"flag"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"
)

func TestMain(m *testing.M) {
	flag.Parse()
	given := false
	flag.Visit(func(f *flag.Flag) { given = given || f.Name == "rapid.checks" })
	if !given {
		_ = flag.Set("rapid.checks", "2000")
	}
	os.Exit(m.Run())
}

// grid is a ring of whole numbers cut finely enough to hold every largest gap
// of up to four points: such a gap is a whole number over one to four.
type grid struct {
	cells int
	free  []bool
}

const fine = 12 // cells in a whole number, divisible by 1 to 4

func newGrid(round int, blocked [][2]int) grid {
	g := grid{cells: round * fine, free: make([]bool, round*fine)}
	for i := range g.free {
		g.free[i] = true
	}
	for _, b := range blocked {
		for c := b[0]*fine + 1; c < b[1]*fine; c++ {
			g.free[((c%g.cells)+g.cells)%g.cells] = false
		}
	}
	return g
}

// best tries every choice of k cells that could still beat the best so far.
func (g grid) best(k int) int {
	best := -1
	var choose func(first, last, left, least int)
	choose = func(first, last, left, least int) {
		if left == 0 {
			best = max(best, min(least, first+g.cells-last))
			return
		}
		for c := last + max(best, 0); c < first+g.cells && c < g.cells; c++ {
			if g.free[c] {
				choose(first, c, left-1, min(least, c-last))
			}
		}
	}
	for c := range g.free {
		if g.free[c] {
			choose(c, c, k-1, g.cells)
		}
	}
	return best
}

// nearest is the smallest distance from aim of a cell that belongs to a choice
// of k cells with the gap, by trying every choice.
func (g grid) nearest(k, gap, aim int) int {
	nearest := g.cells
	var choose func(first, last, left int) bool
	choose = func(first, last, left int) bool {
		if left == 0 {
			return first+g.cells-last >= gap
		}
		for c := last + gap; c < first+g.cells; c++ {
			if g.free[c%g.cells] && choose(first, c, left-1) {
				return true
			}
		}
		return false
	}
	for c := range g.free {
		away := min((c-aim+g.cells)%g.cells, (aim-c+g.cells)%g.cells)
		if g.free[c] && away < nearest && choose(c, c, k-1) {
			nearest = away
		}
	}
	return nearest
}

// drawRing draws a ring of whole numbers with up to four blocked spans.
func drawRing(t *rapid.T) (round int, blocked [][2]int) {
	round = rapid.IntRange(8, 24).Draw(t, "round")
	for range rapid.IntRange(0, 4).Draw(t, "arcs") {
		from := rapid.IntRange(0, round-1).Draw(t, "from")
		blocked = append(blocked, [2]int{from, from + rapid.IntRange(1, round-1).Draw(t, "long")})
	}
	return round, blocked
}

func asRing(round int, blocked [][2]int) ring {
	var spans []span
	for _, b := range blocked {
		spans = append(spans, span{float64(b[0]), float64(b[1])})
	}
	return newRing(float64(round), spans)
}

// The largest gap is the one found by trying every layout.
func TestWidestIsTheBestOfAllLayouts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		round, blocked := drawRing(t)
		k := rapid.IntRange(1, 4).Draw(t, "points")
		r, g := asRing(round, blocked), newGrid(round, blocked)
		best := g.best(k)
		if k > 1 && g.best(1) >= 0 {
			best = max(best, 0) // all in one place
		}
		if best < 0 {
			if len(r.free) > 0 {
				t.Fatalf("free %v where all is blocked", r.free)
			}
			return
		}
		if got, want := r.widest(k), float64(best)/fine; math.Abs(got-want) > 1e-8 {
			t.Fatalf("gap %v, best of all %v", got, want)
		}
	})
}

// A spread keeps to the gap and to free bark, and no layout of that gap has a
// point nearer the aim.
func TestSpreadComesNearestTheAim(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		round, blocked := drawRing(t)
		k := rapid.IntRange(1, 4).Draw(t, "points")
		aim := rapid.IntRange(0, round-1).Draw(t, "aim")
		r, g := asRing(round, blocked), newGrid(round, blocked)
		if len(r.free) == 0 {
			return
		}
		widest := r.widest(k)
		gap := widest * rapid.SampledFrom([]float64{1, 0.9, 0.5}).Draw(t, "share")
		cells := int(math.Ceil(gap*fine - 1e-6))
		away := func(p float64) float64 {
			return math.Min(wrap(p-float64(aim), r.round), wrap(float64(aim)-p, r.round))
		}
		points := r.spread(k, gap, float64(aim), func(a, b float64) bool { return away(a) < away(b) })
		nearest := r.round
		for _, p := range points {
			nearest = math.Min(nearest, away(p))
			if r.at(p).from > p+1e-6 {
				t.Fatalf("%v is blocked", p)
			}
		}
		if len(points) != k || smallest(points, r.round) < gap-1e-6 {
			t.Fatalf("%v do not keep %v apart", points, gap)
		}
		if want := float64(g.nearest(k, cells, aim*fine)) / fine; nearest > want+1e-6 {
			t.Fatalf("nearest %v away, could be %v", nearest, want)
		}
	})
}

// Two points can be no more than 65 apart here; the other three share out the
// rest of the round instead of crowding at 65 too.
func TestSlackIsSharedOut(t *testing.T) {
	r := newRing(360, []span{{5, 60}, {65, 130}, {300, 360}})
	points := r.spread(5, r.widest(5), 0, func(a, b float64) bool { return false })
	want := []float64{0, 65, 138.75, 212.5, 286.25}
	for i, p := range points {
		if math.Abs(p-want[i]) > 1e-6 {
			t.Fatalf("%v, want %v", points, want)
		}
	}
}
