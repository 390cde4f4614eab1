package scion

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// rod is the best revenue of rods of 1 to n units, all cut by one search over
// the pieces of the longest.
func rod(prices []float64) (revenue []float64) {
	for n := range prices {
		var pieces []piece
		for to := 1; to <= n+1; to++ {
			for from := range to {
				pieces = append(pieces, piece{from: float64(from), to: float64(to), worth: worth{prices[to-from-1]}})
			}
		}
		sum := 0.0
		for _, i := range best(pieces) {
			sum += pieces[i].worth[0]
		}
		revenue = append(revenue, sum)
	}
	return revenue
}

// smallStick draws a stick of whole millimetres with up to 12 nodes, so that
// lengths compare exactly.
func smallStick(t *rapid.T) Stick {
	mm := func(name string, least, most int) unit.Length {
		return unit.Length(rapid.IntRange(least, most).Draw(t, name))
	}
	s := Stick{
		TrimButt: mm("trim butt", 0, 15), TrimTip: mm("trim tip", 0, 15), LongCut: mm("long cut", 1, 40),
		Below: mm("below", 0, 8), Above: mm("above", 0, 14), Longest: mm("longest", 20, 200),
		Per: rapid.IntRange(1, 3).Draw(t, "per"),
	}
	at := unit.Length(0)
	for range rapid.IntRange(0, 12).Draw(t, "nodes") {
		at += mm("internode", 1, 60)
		s.Nodes = append(s.Nodes, Node{At: at, Buds: rapid.SampledFrom([]Buds{BothBuds, BothBuds, FirstBud, FirstBud, NoBud}).Draw(t, "buds")})
	}
	s.Length = at + mm("end", 1, 60)
	return s
}

// tried is the best of every set of scions there is: paired, total, and the
// wood used, less being better.
func tried(s Stick, first int, free unit.Length) (b [3]float64) {
	if first+s.Per > len(s.Nodes) {
		return b
	}
	b = tried(s, first+1, free)
	from := s.Nodes[first].At - s.Below - s.LongCut
	to := s.Nodes[first+s.Per-1].At + s.Above
	paired := 1.0
	for _, n := range s.Nodes[first : first+s.Per] {
		if n.Buds == NoBud {
			return b
		}
		if n.Buds == FirstBud {
			paired = 0
		}
	}
	if from < max(free, s.TrimButt) || to > s.Length-s.TrimTip || to-from > s.Longest {
		return b
	}
	with := tried(s, first+1, to)
	with = [3]float64{with[0] + paired, with[1] + 1, with[2] + (to - from).MM()}
	if with[0] != b[0] {
		return [2][3]float64{b, with}[int(count(with[0] > b[0]))]
	}
	if with[1] != b[1] {
		return [2][3]float64{b, with}[int(count(with[1] > b[1]))]
	}
	if with[2] < b[2] {
		return with
	}
	return b
}

// Twenty sticks a case, at the usual hundred cases: 2,000 sticks.
func TestBestAmongAllSets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 20 {
			s := smallStick(t)
			a, err := CutStick(s)
			if err != nil {
				t.Fatal(err)
			}
			want := tried(s, 0, 0)
			if got := [3]float64{float64(a.Paired), float64(a.Total), a.Used.MM()}; got != want {
				t.Fatalf("%+v: paired, total, used %v, the best is %v", s, got, want)
			}
			lawful(t, s, a)
		}
	})
}

// lawful checks every rule a set of scions has to keep.
func lawful(t *rapid.T, s Stick, a StickAnswer) {
	free, paired, used := s.TrimButt, 0, unit.Length(0)
	for _, p := range a.Scions {
		first, last := s.Nodes[p.Nodes[0]], s.Nodes[p.Nodes[len(p.Nodes)-1]]
		if p.From < free || p.To > s.Length-s.TrimTip || p.To-p.From > s.Longest {
			t.Fatalf("%+v: scion %+v overlaps, is too long or leaves the stick", s, p)
		}
		if p.From != first.At-s.Below-s.LongCut || p.To != last.At+s.Above || len(p.Nodes) != s.Per {
			t.Fatalf("%+v: scion %+v does not fit its nodes", s, p)
		}
		both := true
		for i, n := range p.Nodes {
			if n != p.Nodes[0]+i || s.Nodes[n].Buds == NoBud {
				t.Fatalf("%+v: scion %+v", s, p)
			}
			both = both && s.Nodes[n].Buds == BothBuds
		}
		if both != p.Paired {
			t.Fatalf("%+v: paired of %+v", s, p)
		}
		free, used, paired = p.To, used+p.To-p.From, paired+int(count(both))
	}
	if a.Total != len(a.Scions) || a.Paired != paired || math.Abs((a.Used-used).MM()) > 1e-9 {
		t.Fatalf("sums of %+v", a)
	}
}

// By hand: a scion from the first two nodes needs 2.75 in under the first, so it
// begins at 0.75 in and ends at 5.5 in; the next pair that starts past 5.5 in is
// the one at 8.25 in, which touches it.
func TestStickByHand(t *testing.T) {
	nodes, err := ParseNodes("3.5in:ps 5in:p 7in:x 8 1/4in:ps 10in:ps", 0)
	if err != nil {
		t.Fatal(err)
	}
	s := StickDefaults(12*unit.Inch, nodes)
	s.ThickButt, s.ThickTip = 12, 9
	a, err := CutStick(s)
	if err != nil || a.Total != 2 || a.Paired != 1 {
		t.Fatalf("%+v, %v", a, err)
	}
	near(t, "from", a.Scions[0].From.Inches(), 0.75)
	near(t, "to", a.Scions[0].To.Inches(), 5.5)
	near(t, "from", a.Scions[1].From.Inches(), 5.5)
	near(t, "thick", a.Scions[0].Thick.MM(), 12-3*3.125/12)
	near(t, "used", a.Used.Inches(), 4.75+5)
}

func TestNoUsableScion(t *testing.T) {
	for _, s := range []Stick{
		StickDefaults(10*unit.Millimetre, nil),
		StickDefaults(12*unit.Inch, []Node{{1 * unit.Inch, BothBuds}, {2 * unit.Inch, BothBuds}}),
		StickDefaults(12*unit.Inch, []Node{{4 * unit.Inch, NoBud}, {6 * unit.Inch, BothBuds}}),
	} {
		a, err := CutStick(s)
		if err != nil || a.Total != 0 || a.Paired != 0 || a.Used != 0 {
			t.Errorf("%+v: %+v, %v", s, a, err)
		}
		text, err := json.Marshal(a)
		if err != nil || !strings.HasPrefix(string(text), `{"scions":[],"paired":0,"total":0,"used_mm":0,"because":[{"fact":`) {
			t.Errorf("%s, %v", text, err)
		}
	}
}

func TestImpossibleSticks(t *testing.T) {
	good := func() Stick { return StickDefaults(12*unit.Inch, []Node{{50, BothBuds}, {100, BothBuds}}) }
	for _, c := range []struct {
		option string
		change func(*Stick)
	}{
		{"length", func(s *Stick) { s.Length = 0 }}, {"length", func(s *Stick) { s.Length = unit.Length(math.NaN()) }},
		{"length", func(s *Stick) { s.Length = 1e12 }},
		{"trim-butt", func(s *Stick) { s.TrimButt = -1 }}, {"trim-tip", func(s *Stick) { s.TrimTip = -1 }},
		{"long-cut", func(s *Stick) { s.LongCut = 0 }}, {"below", func(s *Stick) { s.Below = -1 }}, {"above", func(s *Stick) { s.Above = 1e9 }},
		{"longest", func(s *Stick) { s.Longest = 0 }}, {"per", func(s *Stick) { s.Per = 0 }}, {"per", func(s *Stick) { s.Per = 1e6 }},
		{"thick-tip", func(s *Stick) { s.ThickButt = 10 }}, {"thick-butt", func(s *Stick) { s.ThickTip = 10 }},
		{"nodes", func(s *Stick) { s.Nodes[1].At = 50 }}, {"nodes", func(s *Stick) { s.Nodes[1].At = 305 }},
		{"nodes", func(s *Stick) { s.Nodes[0].At = -1 }}, {"nodes", func(s *Stick) { s.Nodes = make([]Node, mostNodes+1) }},
	} {
		s := good()
		c.change(&s)
		_, err := CutStick(s)
		var refused *trade.Impossible
		if !errors.As(err, &refused) || refused.Option != c.option {
			t.Errorf("%+v: %v, want it refused for %s", s, err, c.option)
		}
	}
}

// written prints nodes in millimetres.
func written(nodes []Node) string {
	var words []string
	for _, n := range nodes {
		words = append(words, fmt.Sprintf("%.6g:%v", n.At.MM(), n.Buds))
	}
	return strings.Join(words, " ")
}

func TestParseNodes(t *testing.T) {
	for given, want := range map[string]string{
		"1.5in:ps 3.2in:ps 5in:p 7in:x": "38.1:ps 81.28:ps 127:p 177.8:x",
		"1 1/2in:PS, 8cm:p;9cm:x\n":     "38.1:ps 80:p 90:x",
		"  ":                            "",
	} {
		if got, err := ParseNodes(given, 0); err != nil || written(got) != want {
			t.Errorf("ParseNodes(%q) = %v, %v, want %s", given, got, err, want)
		}
	}
	if got, err := ParseNodes("2:ps 3 1/2:x", unit.Inch); err != nil || written(got) != "50.8:ps 88.9:x" {
		t.Errorf("bare inches: %v, %v", got, err)
	}
	for _, bad := range []string{"2:ps", "2in", "2in:", "2in:q", ":ps", "2in:ps 3in", "2in:ps:x", "-2in:p", "2in:pss"} {
		if got, err := ParseNodes(bad, 0); err == nil {
			t.Errorf("ParseNodes(%q) = %v, want it refused", bad, got)
		}
	}
}

func TestNodesReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nodes := smallStick(t).Nodes
		text := written(nodes)
		back, err := ParseNodes(text, unit.Millimetre)
		if err != nil || !slices.Equal(back, nodes) {
			t.Fatalf("%q reads back as %v, %v", text, back, err)
		}
	})
}

func FuzzParseNodes(f *testing.F) {
	for _, s := range []string{"1.5in:ps 3.2in:ps 5in:p 7in:x", "1 1/2:ps", ":", "x:x", "", "9e9m:p", "1in:ps,,2in:x"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		nodes, err := ParseNodes(s, unit.Inch)
		if err != nil {
			return
		}
		for _, n := range nodes {
			if !(n.At >= 0) || n.Buds > BothBuds {
				t.Fatalf("%q gave %v", s, n)
			}
		}
		a, err := CutStick(StickDefaults(24*unit.Inch, nodes))
		if err == nil && a.Total > len(nodes) {
			t.Fatalf("%q gave %d scions", s, a.Total)
		}
	})
}
