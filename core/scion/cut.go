// Package scion reckons one scion: its long cut, back cut and nails, how to cut
// a stick of wood into scions, and which thickness suits a stump.
package scion

import (
	"math"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Cut is the shape of one scion, taken as a cylinder. Lengths run along its
// axis, not along the cut face.
type Cut struct {
	Thick   unit.Length // diameter over the bark
	Bark    unit.Length // thickness of the bark
	LongCut unit.Length // from the surface at its top straight down to the end
	Tip     unit.Length // wood and bark the long cut leaves at the end
	Back    unit.Length // the back cut starts on the back this far above the end
	Flap    unit.Length // bark flap the nails pass first
}

// Defaults is a scion of the given thickness cut in the usual way.
func Defaults(thick unit.Length) Cut {
	return Cut{
		Thick: thick, Bark: trade.BarkThick, LongCut: trade.LongCut,
		Tip: trade.TipLeft, Back: trade.BackCut, Flap: trade.BarkFlap,
	}
}

// Slot is the range of widths a slot may have for one scion.
type Slot struct {
	Least unit.Length `json:"least"`
	Most  unit.Length `json:"most"`
}

// Nail is where one nail goes and how long it is.
type Nail struct {
	FromTop   unit.Length `json:"from_top_mm"`  // along the axis from the top of the long cut
	Thickness unit.Length `json:"thickness_mm"` // of the scion where it goes through
	Length    unit.Length `json:"length_mm"`
}

// Answer is what a scion's cuts come to.
type Answer struct {
	Angle       unit.Angle   `json:"angle_deg"`       // long cut to axis
	Face        unit.Area    `json:"face_mm2"`        // of the long cut
	FaceCambium unit.Length  `json:"face_cambium_mm"` // both edges on the long cut
	BackCambium unit.Length  `json:"back_cambium_mm"` // both edges on the back cut
	Slot        Slot         `json:"slot_mm"`
	Nails       []Nail       `json:"nails"` // the upper first
	Work        trade.Worked `json:"because"`
}

// Cuts reckons the faces, the cambium they show, the slot and the nails. Every
// field of the cut is taken as it stands; what cannot be cut is a
// *trade.Impossible.
func Cuts(c Cut) (Answer, error) {
	if err := c.check(); err != nil {
		return Answer{}, err
	}
	radius := c.Thick.MM() / 2
	wood := radius - c.Bark.MM()
	long := slope{run: c.LongCut.MM(), depth: (c.Thick - c.Tip).MM()}
	back := slope{run: c.Back.MM(), depth: c.Tip.MM()}
	a := Answer{
		Angle:       unit.Angle(math.Atan2(long.depth, long.run) * 180 / math.Pi),
		Face:        unit.Area(long.area(radius)),
		FaceCambium: unit.Length(long.edges(wood, c.Bark.MM())),
		BackCambium: unit.Length(back.edges(wood, c.Bark.MM())),
		Slot:        Slot{Least: c.Thick + trade.SlotLeast, Most: c.Thick + 2*trade.SlotSpareSide},
		Nails: []Nail{
			c.nail(trade.UpperNailShare * c.LongCut),
			c.nail(c.LongCut - trade.LowerNailShare*c.Back),
		},
	}
	a.Work = c.work(a)
	return a, nil
}

// Left is the thickness left between the long cut and the back at a distance
// down the axis from the top of the long cut, with the back cut taken off.
func (c Cut) Left(fromTop unit.Length) unit.Length {
	face := (c.Thick - c.Tip) * fromTop / c.LongCut
	pared := max(0, fromTop-(c.LongCut-c.Back)) * c.Tip / c.Back
	return c.Thick - face - pared
}

func (c Cut) nail(fromTop unit.Length) Nail {
	left := c.Left(fromTop)
	return Nail{FromTop: fromTop, Thickness: left, Length: c.Flap + left + trade.NailBite}
}

func (c Cut) work(a Answer) trade.Worked {
	return trade.Worked{
		Question: "How is one scion cut and nailed?",
		Answer: []trade.Input{
			{Name: "angle of the long cut", Value: a.Angle},
			{Name: "face of the long cut", Value: a.Face},
			{Name: "cambium edges on the long cut", Value: a.FaceCambium},
			{Name: "cambium edges on the back cut", Value: a.BackCambium},
			{Name: "slot at least", Value: a.Slot.Least},
			{Name: "slot at most", Value: a.Slot.Most},
			{Name: "upper nail, from the top of the long cut", Value: a.Nails[0].FromTop},
			{Name: "upper nail, length", Value: a.Nails[0].Length},
			{Name: "lower nail, from the top of the long cut", Value: a.Nails[1].FromTop},
			{Name: "lower nail, length", Value: a.Nails[1].Length},
		},
		Formula: "Face = part of an oval, the circle of the scion drawn out by length of face over depth; " +
			"cambium = the edges of that oval on the cylinder under the bark; nail = flap + thickness left there + bite.",
		Inputs: []trade.Input{
			{Name: "thickness", Value: c.Thick}, {Name: "bark", Value: c.Bark},
			{Name: "long cut", Value: c.LongCut}, {Name: "left at the tip", Value: c.Tip},
			{Name: "back cut", Value: c.Back}, {Name: "bark flap", Value: c.Flap},
			{Name: "bite of a nail", Value: trade.NailBite},
		},
		Assumed: []string{"the scion is round and even, both cuts are flat", "lengths run along the axis, not along the cut face"},
		Facts: []trade.Fact{
			trade.CylinderScion, trade.ObliqueFace, trade.ObliqueEdge, trade.LongCutLength, trade.TipThickness,
			trade.BarkThickness, trade.BackCutTip, trade.SlotSpare, trade.SlotTight, trade.TwoNails, trade.NailPlaces, trade.NailSizes,
		},
	}
}
