package trade

// Formulas and constants of the sums, with the text each comes from.
var (
	EllipseGirth = state("ellipse-girth", "sums", Published, "Carlson 1994, elliptic integrals",
		"The girth of an oval is 4aE(m), m = 1-(b/a)^2, with the complete elliptic integral of the second kind.")
	OvalStump = state("oval-stump", "sums", Memory, "",
		"A stump cut straight across is treated as an oval with the two diameters measured at right angles.")
	EvenGaps = state("even-gaps", "sums", Published, "Tsai & Wang 1997, LNCS 1276:304",
		"Points on a closed curve are placed so that the smallest gap between neighbours is as large as can be.")
)
