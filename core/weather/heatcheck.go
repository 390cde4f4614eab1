package weather

import (
	"fmt"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// The widest that weather and wood may be.
const (
	coldestAir   = unit.Temperature(-90)
	hottestAir   = unit.Temperature(60)
	hardestWind  = unit.Speed(100)
	thinnestWood = 1 * unit.Millimetre
	widestStump  = 3 * unit.Metre
	minutesADay  = 24 * 60
)

// check refuses a day that cannot be, naming the option at fault.
func (d HeatDay) check() error {
	if err := Validate(d.Place); err != nil {
		return err
	}
	if err := checkAir(d.Low, d.High); err != nil {
		return err
	}
	impossible := func(option, given, accepted string) error {
		return &trade.Impossible{Option: option, Given: given, Accepted: accepted}
	}
	switch {
	case !(d.Wind >= 0 && d.Wind <= hardestWind):
		return impossible("wind", number(d.Wind.MS())+"m/s", WindLimits)
	case !(d.Cloud >= 0 && d.Cloud <= 8):
		return impossible("cloud", number(d.Cloud), "oktas from 0 (clear) to 8 (overcast)")
	case !(d.Across >= thinnestWood && d.Across <= widestStump):
		return impossible("across", number(d.Across.MM())+"mm", "a stump of 1mm to 3m (118in) across")
	case !(d.Thick >= thinnestWood && d.Thick <= d.Across):
		return impossible("thick", number(d.Thick.MM())+"mm", "a scion of at least 1mm and no thicker than the stump is across")
	case d.Sealed != nil && (*d.Sealed < 0 || *d.Sealed >= minutesADay):
		return impossible("sealed", d.Sealed.String(), "a time on the date, 00:00 to 23:59")
	}
	return nil
}

// checkAir refuses air that is nowhere met and a low above the high.
func checkAir(low, high unit.Temperature) error {
	for _, t := range []struct {
		option string
		c      unit.Temperature
	}{{"low", low}, {"high", high}} {
		if !(t.c >= coldestAir && t.c <= hottestAir) {
			return &trade.Impossible{Option: t.option, Given: both(t.c), Accepted: AirLimits}
		}
	}
	if low > high {
		return &trade.Impossible{Option: "low", Given: both(low), Accepted: "no more than the high, " + both(high)}
	}
	return nil
}

// both prints a temperature in both units.
func both(t unit.Temperature) string { return fmt.Sprintf("%.4gC (%.4gF)", t.C(), t.F()) }
