package trade

// Where the points of a block lie.
var (
	Earth = state("earth", "sums", Published, "NIMA TR8350.2, Department of Defense World Geodetic System 1984",
		"The earth is treated as the ellipsoid of WGS 84: 6,378,137 m to the equator, flattened by 1 in 298.257223563.")
	ShortGeodesic = state("short-geodesic", "sums", Published, "Bowring 1981, Surveying and Mapping 41:135",
		"A stump's place on the map lies from the block's corner along the geodesic of its bearing and distance.")
)
