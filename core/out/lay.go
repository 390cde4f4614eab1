package out

import (
	"math"
	"strconv"
	"strings"

	"barkslip/core/ground"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Lay is where the stumps of a block stand on the earth.
type Lay struct {
	corner      ground.Point
	bearing     unit.Bearing
	rows, trees unit.Length
	left        bool
	Assumed     bool // the block's place is taken for its corner, which is not set
}

// mostLat is the latitude past which no map is made: a bearing turns too fast
// there for rows to have one.
const mostLat = 89

// LayOf is how a block lies; missing says in words what its settings lack for a
// map, "" for nothing.
func LayOf(b *record.Block) (lay Lay, missing string) {
	lay = Lay{ground.Point{Lat: b.Lay.Lat, Lon: b.Lay.Lon}, b.Lay.Bearing, b.RowSpacing.Length, b.TreeSpacing.Length, b.Lay.Left, !b.Lay.HasCorner}
	if lay.Assumed {
		lay.corner = ground.Point{Lat: b.Lat, Lon: b.Lon}
	}
	var words []string
	for _, need := range []struct {
		lacks bool
		word  string
	}{
		{!b.Lay.HasCorner && !b.Placed, "a corner or a latitude and longitude"},
		{math.Abs(lay.corner.Lat) > mostLat, "a corner no nearer to a pole than 1 degree"},
		{!b.Lay.HasBearing, "the bearing its rows run to"},
		{b.RowSpacing.Length <= 0, "the distance between rows"},
		{b.TreeSpacing.Length <= 0, "the distance between trees"},
	} {
		if need.lacks {
			words = append(words, need.word)
		}
	}
	return lay, strings.Join(words, ", ")
}

// At is where a stump stands: its rows run straight from that of row 1 tree 1, each
// beside the one before.
func (l Lay) At(id record.StumpID) ground.Point {
	along, aside := float64(l.trees)*(float64(id.Tree)-1), float64(l.rows)*(float64(id.Row)-1)
	if l.left {
		aside = -aside
	}
	turn := math.Atan2(aside, along) * 180 / math.Pi
	return l.corner.Go((l.bearing + unit.Bearing(turn)).Normal(), unit.Length(math.Hypot(along, aside)))
}

// Coordinates is a point as GeoJSON has it, the longitude first, to a millimetre.
func Coordinates(p ground.Point) string {
	text := func(v float64) string { return strconv.FormatFloat(v, 'f', 8, 64) }
	return "[" + text(p.Lon) + "," + text(p.Lat) + "]"
}
