package record

import (
	"fmt"
	"strings"

	"barkslip/core/unit"
)

// Lay is how the rows of a block lie on the ground, for its map.
type Lay struct {
	HasCorner  bool
	Lat, Lon   float64 // of row 1 tree 1, in degrees
	HasBearing bool
	Bearing    unit.Bearing // from tree 1 of a row to tree 2, from true north
	Left       bool         // row 2 lies left of row 1 for one who looks along it
}

// CornerWords is the corner as it is typed, "" where it is not set.
func (l Lay) CornerWords() string {
	if !l.HasCorner {
		return ""
	}
	return fmt.Sprintf("%g %g", l.Lat, l.Lon)
}

// BearingWords is the bearing of the rows with its point, "" where it is not set.
func (l Lay) BearingWords() string {
	if !l.HasBearing {
		return ""
	}
	return l.Bearing.Words()
}

// SideWords is the side of row 1 on which row 2 lies.
func (l Lay) SideWords() string {
	if l.Left {
		return "left"
	}
	return "right"
}

// corner reads a latitude and a longitude in degrees, 42.70012 -77.20034.
func corner(b *Block, v string) error {
	words := strings.Fields(v)
	if len(words) != 2 {
		return &unit.Error{Given: v, Accepted: "latitude and longitude in degrees, such as 42.70012 -77.20034"}
	}
	lay := b.Lay
	if err := number(words[0], -90, 90, &lay.Lat); err != nil {
		return err
	}
	if err := number(words[1], -180, 180, &lay.Lon); err != nil {
		return err
	}
	lay.HasCorner = true
	b.Lay = lay
	return nil
}

// nextRow reads right or left.
func nextRow(b *Block, v string) error {
	switch v {
	case "right", "left":
		b.Lay.Left = v == "left"
		return nil
	}
	return &unit.Error{Given: v, Accepted: "right or left"}
}
