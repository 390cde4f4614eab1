package practice

import (
	"fmt"
	"math"

	"barkslip/core/practice"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// figure is the case's figure in a room.
func (a *asked) figure(w, h int) []paper.Line {
	f, mode, sys := a.shown(), a.x.Mode(), a.c.Units
	switch {
	case f.Face != nil:
		return a.x.Inked(top(f.Face, sys).Draw(w, h, mode))
	case f.Stick != nil:
		return a.x.Inked(stick(f.Stick, sys).Draw(w, h, mode))
	case f.Shoot != nil:
		return a.x.Inked(shoot(f.Shoot, sys).Draw(min(w, 50), h, mode))
	case f.Cut != nil:
		c := f.Cut
		return a.x.Inked(figure.Scion{Thick: c.Thick, Bark: trade.BarkThick, LongCut: c.LongCut, Tip: c.Tip, Back: c.Back, Nails: c.Nails, Sys: sys}.Draw(w, h, mode))
	}
	return nil
}

// shown is the case's figure; once it is answered with the best answer on it, where that
// is a placing or a cutting.
func (a *asked) shown() *practice.Figure {
	f := *a.c.Figure
	if a.given < 0 {
		return &f
	}
	best := a.c.Choices[a.c.Best()]
	if f.Face != nil && best.Slots != nil {
		face := *f.Face
		face.Slots, f.Face = best.Slots, &face
	}
	if f.Stick != nil && best.Pieces != nil {
		stick := *f.Stick
		stick.Pieces, f.Stick = best.Pieces, &stick
	}
	return &f
}

// knotWide is how much bark a knot takes along the edge.
const knotWide = unit.Inch / 2

func top(f *practice.Face, sys unit.System) figure.Top {
	shade := unit.Bearing(f.Shade)
	t := figure.Top{Across: max(f.Across, f.AtRight), LongWay: unit.Bearing(f.LongWay), Shade: &shade, Sys: sys}
	if f.AtRight > 0 {
		t.Across2 = min(f.Across, f.AtRight)
	}
	for i, b := range f.Slots {
		t.Slots = append(t.Slots, figure.Slot{Bearing: unit.Bearing(b), Label: fmt.Sprint(i + 1)})
	}
	for _, torn := range f.Torn {
		part := math.Mod(torn[1]-torn[0]+360, 360)
		t.Blocked = append(t.Blocked, figure.Arc{Bearing: unit.Bearing(math.Mod(torn[0]+part/2, 360)), Width: t.Across * unit.Length(math.Pi*part/360), Word: "torn"})
	}
	for _, at := range f.Knots {
		t.Blocked = append(t.Blocked, figure.Arc{Bearing: unit.Bearing(at), Width: knotWide, Word: "knot"})
	}
	return t
}

func stick(s *practice.Stick, sys unit.System) figure.Stick {
	out := figure.Stick{Length: s.Length, Sys: sys}
	for _, n := range s.Nodes {
		out.Nodes = append(out.Nodes, figure.Node{At: n.At, Buds: n.Buds})
	}
	for _, p := range s.Pieces {
		piece := figure.Piece{From: p[0], To: p[1], Paired: true}
		for _, n := range s.Nodes {
			piece.Paired = piece.Paired && (n.At < p[0] || n.At > p[1] || n.Buds == 2)
		}
		out.Pieces = append(out.Pieces, piece)
	}
	return out
}

// shoot is a shoot as it is today, against its stake; how it came there is not known.
func shoot(s *practice.Shoot, sys unit.System) figure.Shoot {
	from := unit.MakeDate(2027, 6, 1)
	return figure.Shoot{Measured: []figure.Reached{{On: from}, {On: from.Add(30), Length: s.Length}}, From: from, To: from.Add(30), StakeTop: s.StakeTop, Ties: s.Ties, Sys: sys}
}
