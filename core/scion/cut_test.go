package scion

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/testdata/published"
)

// withFace is a scion without bark whose long cut has the given depth and
// length of face.
func withFace(d, h, face float64) Cut {
	c := Defaults(unit.Length(d))
	c.Bark, c.Tip, c.LongCut = 0, unit.Length(d-h), unit.Length(math.Sqrt(face*face-h*h))
	return c
}

func TestPublishedScions(t *testing.T) {
	published.Each(t, "scion.csv", func(t *testing.T, c published.Check) {
		switch c.Name {
		case "face", "angle":
			v := c.Values(t)
			a, err := Cuts(withFace(v["d"], v["h"], v["face"]))
			if err != nil {
				t.Errorf("%s: %v", c.Inputs, err)
			}
			if c.Name == "angle" {
				c.Against(t, a.Angle.Deg())
			} else {
				c.Against(t, float64(a.Face), a.FaceCambium.MM())
			}
		case "elliptic":
			v := c.Values(t)
			c.Against(t, quarterArc(v["phi"], v["m"]))
		case "rod":
			c.Against(t, rod(published.Numbers(t, c.Inputs))...)
		default:
			t.Errorf("no such check: %q", c.Name)
		}
	})
}

// quarterArc is E(phi, m) out of the edges of two cuts of equal stretch, one to
// the middle of the scion and one phi further round.
func quarterArc(phi, m float64) float64 {
	k := 1 / math.Sqrt(1-m)
	edges := func(depth float64) float64 {
		return slope{run: depth * math.Sqrt(k*k-1), depth: depth}.edges(1, 0)
	}
	return (edges(1-math.Cos(math.Pi/2+phi)) - edges(1)) / (2 * k)
}

// By hand for a scion 10 mm across: 8 mm deep over 60 mm; a quarter down 2 mm
// are gone, half way up the back cut 8 x 54/60 = 7.2 mm from the front and 1 mm
// from the back.
func TestNailsAndSlot(t *testing.T) {
	a, err := Cuts(Cut{Thick: 10, Bark: 1, LongCut: 60, Tip: 2, Back: 12, Flap: 4})
	if err != nil {
		t.Fatal(err)
	}
	want := []Nail{{15, 8, 24.7}, {54, 1.8, 18.5}}
	for i, n := range a.Nails {
		near(t, "place", n.FromTop.MM(), want[i].FromTop.MM())
		near(t, "thickness", n.Thickness.MM(), want[i].Thickness.MM())
		near(t, "length", n.Length.MM(), want[i].Length.MM())
	}
	near(t, "narrowest slot", a.Slot.Least.MM(), 10.8)
	near(t, "widest slot", a.Slot.Most.MM(), 16.35)
	near(t, "angle", a.Angle.Deg(), math.Atan(8.0/60)*180/math.Pi)
	if len(a.Nails) != trade.NailsPerScion {
		t.Errorf("%d nails", len(a.Nails))
	}
}

func TestCutAsJSON(t *testing.T) {
	a, err := Cuts(Cut{Thick: 10, Bark: 1, LongCut: 60, Tip: 1, Back: 12, Flap: 4})
	if err != nil {
		t.Fatal(err)
	}
	a.Angle, a.Face, a.FaceCambium = 8, 300, 80
	text, err := json.Marshal(a)
	want := `{"angle_deg":8,"face_mm2":300,"face_cambium_mm":80,"back_cambium_mm":0,"slot_mm":{"least":10.8,"most":16.35},` +
		`"nails":[{"from_top_mm":15,"thickness_mm":7.75,"length_mm":24.45},{"from_top_mm":54,"thickness_mm":1.4`
	if err != nil || !strings.HasPrefix(string(text), want) || !strings.Contains(string(text), `"because":[{"fact":`) {
		t.Errorf("%s, %v", text, err)
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

func TestTipInsideTheBark(t *testing.T) {
	for tip, shows := range map[unit.Length]bool{0: false, 0.5: false, 1: false, 1.01: true} {
		c := Cut{Thick: 10, Bark: 1, LongCut: 60, Tip: tip, Back: 12, Flap: 4}
		a, err := Cuts(c)
		if err != nil {
			t.Fatal(err)
		}
		if (a.BackCambium > 0) != shows {
			t.Errorf("tip %v mm under 1 mm of bark shows %v mm of cambium on the back cut", tip.MM(), a.BackCambium.MM())
		}
	}
	shallow, err := Cuts(Cut{Thick: 10, Bark: 1, LongCut: 60, Tip: 9, Back: 12, Flap: 4})
	if err != nil || shallow.FaceCambium != 0 {
		t.Errorf("a long cut within the bark shows %v mm, %v", shallow.FaceCambium, err)
	}
}

func TestImpossibleCuts(t *testing.T) {
	const huge = 1e9
	for _, c := range []struct {
		option string
		change func(*Cut)
	}{
		{"thick", func(c *Cut) { c.Thick = 0 }}, {"thick", func(c *Cut) { c.Thick = -5 }}, {"thick", func(c *Cut) { c.Thick = huge }},
		{"thick", func(c *Cut) { c.Thick = unit.Length(math.NaN()) }}, {"thick", func(c *Cut) { c.Thick = unit.Length(math.Inf(1)) }},
		{"bark", func(c *Cut) { c.Bark = 5 }}, {"bark", func(c *Cut) { c.Bark = -1 }}, {"bark", func(c *Cut) { c.Bark = unit.Length(math.NaN()) }},
		{"tip", func(c *Cut) { c.Tip = 10 }}, {"tip", func(c *Cut) { c.Tip = 11 }}, {"tip", func(c *Cut) { c.Tip = -1 }},
		{"back", func(c *Cut) { c.Back = c.LongCut + 1 }}, {"back", func(c *Cut) { c.Back = 0 }}, {"back", func(c *Cut) { c.Back = -1 }},
		{"long-cut", func(c *Cut) { c.LongCut = 0 }}, {"long-cut", func(c *Cut) { c.LongCut = huge }},
		{"thick", func(c *Cut) { c.Thick = 2 * c.Bark }}, {"thick", func(c *Cut) { c.Thick, c.Bark = 1.2, 0.1 }}, {"long-cut", func(c *Cut) { c.LongCut = c.Back - 1 }},
		{"flap", func(c *Cut) { c.Flap = -1 }}, {"flap", func(c *Cut) { c.Flap = huge }},
	} {
		cut := Defaults(10)
		c.change(&cut)
		_, err := Cuts(cut)
		var refused *trade.Impossible
		if !errors.As(err, &refused) || refused.Option != c.option || refused.Given == "" || refused.Accepted == "" {
			t.Errorf("%+v: %v, want it refused for %s", cut, err, c.option)
		}
	}
}

// someCut is a scion that can be cut.
func someCut(f func() float64) Cut {
	c := Cut{Thick: unit.Length(4 + 20*f())}
	c.Bark = c.Thick * unit.Length(0.45*f())
	c.Tip = c.Thick * unit.Length(0.95*f())
	c.LongCut = unit.Length(10 + 100*f())
	c.Back = c.LongCut * unit.Length(0.05+0.95*f())
	c.Flap = unit.Length(8 * f())
	return c
}

// The closed forms against the cuts drawn point by point in space.
func TestCutsAgainstPointsInSpace(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		c := someCut(random.Float64)
		a, err := Cuts(c)
		if err != nil {
			t.Fatalf("%+v: %v", c, err)
		}
		r, bark, h := c.Thick.MM()/2, c.Bark.MM(), (c.Thick - c.Tip).MM()
		face, _ := drawn(r, h, c.LongCut.MM()/h)
		_, front := drawn(r-bark, h-bark, c.LongCut.MM()/h)
		_, back := drawn(r-bark, c.Tip.MM()-bark, (c.Back / c.Tip).MM())
		for _, pair := range [][2]float64{{float64(a.Face), face}, {a.FaceCambium.MM(), front}, {a.BackCambium.MM(), back}} {
			if math.Abs(pair[0]-pair[1]) > 1e-6*(1+pair[1]) {
				t.Fatalf("%+v: %v, drawn %v", c, pair[0], pair[1])
			}
		}
	}
}

// drawn walks along the line where a plane that runs `rise` along the axis for
// each mm it sinks crosses a cylinder, down to a depth, and gives the area it
// encloses on the plane and the length of both sides; two step sizes are
// combined (Richardson) to be rid of the error of the chords.
func drawn(radius, depth, rise float64) (area, edges float64) {
	if depth <= 0 {
		return 0, 0
	}
	depth = min(depth, 2*radius)
	walk := func(steps int) (area, edges float64) {
		var y0, z0, u0 float64
		for i := 1; i <= steps; i++ {
			u := depth * (1 - math.Cos(math.Pi*float64(i)/float64(steps))) / 2
			y, z := math.Sqrt(max(0, u*(2*radius-u))), rise*u
			edges += 2 * math.Sqrt((y-y0)*(y-y0)+(z-z0)*(z-z0)+(u-u0)*(u-u0))
			area += (y + y0) * math.Hypot(z-z0, u-u0)
			y0, z0, u0 = y, z, u
		}
		return area, edges
	}
	a1, e1 := walk(400)
	a2, e2 := walk(800)
	return (4*a2 - a1) / 3, (4*e2 - e1) / 3
}

func TestCutProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := someCut(func() float64 { return rapid.Float64Range(0, 1).Draw(t, "share") })
		if c.Tip == 0 {
			c.Tip = c.Thick / 2
		}
		a, err := Cuts(c)
		if err != nil {
			t.Fatal(err)
		}
		end := c.Left(c.LongCut)
		if math.Abs(end.MM()) > 1e-9 {
			t.Fatalf("the end is %v mm thick, not sharp", end.MM())
		}
		up, low := a.Nails[0], a.Nails[1]
		if up.FromTop >= low.FromTop || up.Thickness <= low.Thickness || low.Thickness <= 0 {
			t.Fatalf("nails %+v", a.Nails)
		}
		longer := c
		longer.LongCut *= 2
		b, err := Cuts(longer)
		if err != nil || b.Face <= a.Face || b.Angle >= a.Angle || b.FaceCambium < a.FaceCambium {
			t.Fatalf("twice the long cut: face %v became %v (%v)", a.Face, b.Face, err)
		}
	})
}
