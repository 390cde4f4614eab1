package girth

import (
	"math"
	"strconv"
	"strings"

	"barkslip/core/unit"
)

// Arc is a stretch of bark that can carry no slot: torn, knotted, dead.
type Arc struct {
	Bearing unit.Bearing // of its middle, from the stump's centre
	Width   unit.Length  // along the bark, above 0
}

// ParseArc reads BEARING:WIDTH, such as 120:2in or sw:5cm; the width must carry
// its unit. Anything else is a *unit.Error.
func ParseArc(s string) (Arc, error) {
	fail := &unit.Error{Given: s, Accepted: "BEARING:WIDTH such as 120:2in or sw:5cm, the bearing 0 to 360 or a compass point, the width along the " +
		"bark, above 0 and with its unit: in, ft, mm, cm or m"}
	towards, wide, found := strings.Cut(s, ":")
	if !found {
		return Arc{}, fail
	}
	bearing, err := unit.ParseBearing(towards)
	if err != nil {
		return Arc{}, fail
	}
	width, err := unit.ParseLength(wide, 0)
	if err != nil || width <= 0 {
		return Arc{}, fail
	}
	return Arc{Bearing: bearing, Width: width}, nil
}

// String is the form ParseArc reads, in millimetres.
func (a Arc) String() string {
	exact := func(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }
	return exact(a.Bearing.Deg()) + ":" + exact(a.Width.MM()) + "mm"
}

func (a Arc) check() error {
	if !(a.Width > 0) || math.IsInf(a.Width.MM(), 0) || math.IsNaN(a.Bearing.Deg()) || math.IsInf(a.Bearing.Deg(), 0) {
		return impossible("blocked", a.String(), "a bearing and a width above 0, such as 120:2in")
	}
	return nil
}
