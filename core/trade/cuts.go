package trade

import "barkslip/core/unit"

// Figures for cuts, slot and nails; defaults of `reckon cut` and `reckon stick`.
const (
	LongCut       = 2.5 * unit.Inch
	TipLeft       = 0.06 * unit.Inch
	BackCut       = unit.Inch / 2
	BarkThick     = 0.05 * unit.Inch
	BarkFlap      = 4 * unit.Millimetre
	SlotLeast     = 0.8 * unit.Millimetre   // over the scion's thickness
	SlotSpareSide = 3.175 * unit.Millimetre // each side, at most
	SlotWidth     = unit.Inch / 2           // default when blocked bark is kept clear
	SlitLong      = 3 * unit.Inch
	NailBite      = 12.7 * unit.Millimetre
	NailsPerScion = 2
	Proud         = unit.Inch / 4
	BelowNode     = unit.Inch / 4
	AboveNode     = unit.Inch / 2
)

// Facts about the cuts.
var (
	LongCutLength = state("long-cut", "cuts", Disagree, "2.5 in taking 2/3 of the thickness; 1.5 in elsewhere",
		"The long cut is flat, made with a keen blade, about 2 1/2 in (64 mm); some take 1.5 in (38 mm).")
	TipThickness = state("tip-thickness", "cuts", Memory, "",
		"About 1/16 in (1.5 mm) of wood is left at the tip of the long cut before the back cut sharpens it.")
	BarkThickness = state("bark-thickness", "cuts", Memory, "",
		"Scion bark is about 0.05 in (1.3 mm) thick.")
	BackCutTip = state("back-cut", "cuts", Common, "",
		"A back cut of about 1/2 in (13 mm) at the tip goes through the bark to show cambium; it matters most.")
	SlotSpare = state("slot-spare", "cuts", Common, "",
		"The slot is the scion's width and up to 1/8 in (3 mm) spare each side.")
	SlotTight = state("slot-tight", "cuts", Memory, "",
		"A slot under 1/32 in (0.8 mm) over the scion is tight and lifts the bark beside it.")
	Slit = state("slit", "cuts", Published, ps2016,
		"The slit is about 3 in (76 mm) long.")
	TwoNails = state("two-nails", "cuts", Common, "",
		"Two fine wire nails a scion, one high and one near the tip, through flap and scion 1/2 in (13 mm) into the wood.")
	NailSizes = state("nail-sizes", "cuts", Memory, "",
		"18 to 20 gauge, points blunted, none through the feather-thin tip; the bark flap is about 4 mm where it stays.")
	LittleProud = state("little-proud", "cuts", Published, nnga37+"; "+nnga38,
		"The scion is not driven fully down: a little face shows above, which still fits if the cut is a little uneven.")
	ProudBy = state("proud-by", "cuts", Memory, "",
		"About 1/4 in (6 mm) of the face shows.")
	CylinderScion = state("cylinder-scion", "cuts", Memory, "",
		"The scion is treated as a cylinder with bark of even thickness.")
)
