package scion

import (
	"errors"
	"testing"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

func TestClassesOfWood(t *testing.T) {
	for _, c := range []struct {
		across, least, most unit.Length // inches
	}{
		{1.5, 5. / 16, 3. / 8}, {1.99, 5. / 16, 3. / 8}, {2, 3. / 8, 7. / 16}, {3, 3. / 8, 7. / 16}, {3.01, 7. / 16, 5. / 8}, {8, 7. / 16, 5. / 8},
	} {
		a, err := Fit(Wood{Across: c.across * unit.Inch})
		if err != nil || a.Least != c.least*unit.Inch || a.Most != c.most*unit.Inch || len(a.Cautions) != 0 {
			t.Errorf("%v in across: %+v, %v", c.across, a, err)
		}
	}
}

// The pith figures are those of 118 seedlings, Northern Nut Growers Association,
// 38th meeting: 5/16 in in a 9/16 in stem, 1/4 in in one of 3/8 in.
func TestWoodAtHand(t *testing.T) {
	for _, c := range []struct {
		thick, pith        unit.Length // 16ths of an inch
		thin, stout, pithy bool
	}{
		{9, 5, false, true, true}, {6, 4, false, false, true}, {8, 4, false, true, false}, {5, 1, true, false, false}, {7, 0, false, false, false},
	} {
		a, err := Fit(Wood{Across: 2.5 * unit.Inch, Thick: c.thick * unit.Inch / 16, Pith: c.pith * unit.Inch / 16})
		if err != nil || a.Thin != c.thin || a.Stout != c.stout || a.Pithy != c.pithy {
			t.Errorf("%v/16 in with %v/16 in of pith: %+v, %v", c.thick, c.pith, a, err)
		}
	}
	for option, w := range map[string]Wood{
		"across": {Across: 0}, "thick": {Across: 50, Thick: -1}, "pith": {Across: 50, Thick: 10, Pith: 10},
	} {
		_, err := Fit(w)
		var refused *trade.Impossible
		if !errors.As(err, &refused) || refused.Option != option {
			t.Errorf("%+v: %v, want it refused for %s", w, err, option)
		}
	}
}
