package trade

import "barkslip/core/unit"

// Figures for the sums of one scion.
const (
	UpperNailShare = 0.25 // of the long cut, from its top
	LowerNailShare = 0.5  // of the back cut, from the end of the scion
)

// ThicknessClass is the wood that suits stumps of one range of sizes.
type ThicknessClass struct {
	UpTo  unit.Length // the widest stump of the class, itself included unless Under
	Under bool        // the class ends just under UpTo
	Least unit.Length // scion thickness
	Most  unit.Length
}

// ThicknessClassTable holds the figures of the fact ThicknessClasses, thinnest
// wood first; the last has no upper end.
var ThicknessClassTable = []ThicknessClass{
	{UpTo: 2 * unit.Inch, Under: true, Least: 5 * unit.Inch / 16, Most: 3 * unit.Inch / 8},
	{UpTo: 3 * unit.Inch, Least: 3 * unit.Inch / 8, Most: 7 * unit.Inch / 16},
	{Least: 7 * unit.Inch / 16, Most: 5 * unit.Inch / 8},
}

// What the sums of a scion rest on.
var (
	ObliqueFace = state("oblique-face", "sums", Memory, "",
		"A flat cut into a cylinder of radius r is part of an oval: its area is k r^2 (t - sin t cos t), t = acos(1 - depth/r), k = length of the face "+
			"over its depth.")
	ObliqueEdge = state("oblique-edge", "sums", Published, "Carlson 1994, elliptic integrals",
		"Where such a cut crosses the cambium its two edges together are 2 k r (E(m) - E(pi/2 - t, m)), m = 1 - 1/k^2, with the elliptic integral of the "+
			"second kind.")
	NailPlaces = state("nail-places", "cuts", Memory, "",
		"The upper nail goes a quarter of the long cut down, the lower one half way up the back cut, each through the wood left there.")
	BestStick = state("best-stick", "sums", Published, "Kleinberg & Tardos, Algorithm Design, 6.1 (weighted interval scheduling)",
		"The best set of pieces that do not overlap is found exactly by taking the possible pieces in order of their ends.")
	EvenTaper = state("even-taper", "sums", Memory, "",
		"A stick is assumed to taper evenly from butt to tip.")
)
