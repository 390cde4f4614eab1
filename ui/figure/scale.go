package figure

import (
	"math"
	"strconv"

	"barkslip/core/unit"
)

// mark is a round length and how it is said.
type mark struct {
	long unit.Length
	text string
}

// rounds are the lengths a scale bar may have.
var rounds = map[unit.System][]mark{
	unit.US: {
		{unit.Inch / 8, "1/8 in"}, {unit.Inch / 4, "1/4 in"}, {unit.Inch / 2, "1/2 in"}, {unit.Inch, "1 in"}, {2 * unit.Inch, "2 in"},
		{3 * unit.Inch, "3 in"}, {6 * unit.Inch, "6 in"}, {unit.Foot, "1 ft"}, {2 * unit.Foot, "2 ft"}, {5 * unit.Foot, "5 ft"}, {10 * unit.Foot, "10 ft"},
	},
	unit.Metric: {
		{2, "2 mm"}, {5, "5 mm"}, {10, "1 cm"}, {20, "2 cm"}, {50, "5 cm"}, {100, "10 cm"}, {200, "20 cm"}, {500, "50 cm"},
		{unit.Metre, "1 m"}, {2 * unit.Metre, "2 m"}, {5 * unit.Metre, "5 m"},
	},
}

// round says a round length as a scale does: 2 cm, 6 ft.
func round(sys unit.System, l unit.Length) string {
	switch size := l.MM(); {
	case l == 0:
		return "0"
	case sys == unit.Metric && size >= 10 && size < 1000:
		return trimmed(size/10) + " cm"
	case sys == unit.US && l >= 3*unit.Foot:
		return trimmed(float64(l/unit.Foot)) + " ft"
	}
	return sys.Length(l)
}

// trimmed is a number with at most one decimal.
func trimmed(n float64) string {
	return strconv.FormatFloat(math.Round(n*10)/10, 'f', -1, 64)
}

// scaleBar draws, from a cell to the right, the longest round length of at
// most room dots at a scale of dots to the millimetre. after is the first column
// behind it.
func (c *canvas) scaleBar(x, y int, scale, room float64, sys unit.System) (after int) {
	best := mark{}
	for _, m := range rounds[sys] {
		if float64(m.long)*scale <= room {
			best = m
		}
	}
	long := float64(best.long) * scale
	if long < 3 {
		return x
	}
	left := point{float64(2 * x), float64(4*y) + 2}
	right := left.plus(point{x: 1}, long)
	c.line(left, right, pen{ink: Faint})
	for _, end := range []point{left, right} {
		c.line(point{end.x, end.y - 1}, point{end.x, end.y + 1}, pen{ink: Faint})
	}
	end, _ := cellAt(right.plus(point{x: 1}, 1e-6)) // where the last dot falls
	c.text(end+2, y, best.text, Faint)
	return end + 2 + width(best.text)
}

// dimension draws a measured length between two points with its text in the
// middle and a short stop at each end.
func (c *canvas) dimension(p, q point, s string) {
	c.line(p, q, pen{ink: Faint})
	if long := math.Hypot(q.x-p.x, q.y-p.y); long > 0 && finite(long) {
		across := point{(p.y - q.y) / long, (q.x - p.x) / long}
		for _, end := range []point{p, q} {
			c.line(end.plus(across, -1.5), end.plus(across, 1.5), pen{ink: Faint})
		}
	}
	c.centred(point{(p.x + q.x) / 2, (p.y + q.y) / 2}, s, Plain)
}
