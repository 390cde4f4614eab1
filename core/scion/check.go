package scion

import (
	"fmt"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// The most that can still be wood for grafting; beyond it is a slip of the hand.
const (
	thinnest   = 1 * unit.Millimetre
	shortest   = 1 * unit.Millimetre
	thickest   = 4 * unit.Inch
	longestCut = 24 * unit.Inch
	deepFlap   = 2 * unit.Inch
	longStick  = 20 * unit.Foot
)

// check refuses what cannot be cut, each combination with its own sentence. Of
// two lengths that do not go together the one to blame is the one that was
// chosen: where the bark, tip or back cut has its usual size, the other.
func (c Cut) check() error {
	if err := within("thick", c.Thick, thinnest, thickest); err != nil {
		return err
	}
	if err := within("long-cut", c.LongCut, shortest, longestCut); err != nil {
		return err
	}
	if err := within("flap", c.Flap, 0, deepFlap); err != nil {
		return err
	}
	if err := c.checkBark(); err != nil {
		return err
	}
	if err := c.checkTip(); err != nil {
		return err
	}
	return c.checkBack()
}

func (c Cut) checkBark() error {
	switch {
	case c.Bark >= 0 && 2*c.Bark < c.Thick:
		return nil
	case c.Bark == trade.BarkThick:
		return impossible("thick", c.Thick, "a scion with wood in it, over "+show(2*c.Bark)+", twice the bark")
	}
	return impossible("bark", c.Bark, "bark thinner than half the scion, under "+show(c.Thick/2)+", so that wood is left")
}

func (c Cut) checkTip() error {
	switch {
	case c.Tip >= 0 && c.Tip < c.Thick:
		return nil
	case c.Tip == trade.TipLeft:
		return impossible("thick", c.Thick, "a scion thicker than its tip, over "+show(c.Tip))
	}
	return impossible("tip", c.Tip, "a tip thinner than the scion, under "+show(c.Thick)+", so that there is a long cut")
}

func (c Cut) checkBack() error {
	switch {
	case c.Back > 0 && c.Back <= c.LongCut:
		return nil
	case c.Back == trade.BackCut:
		return impossible("long-cut", c.LongCut, "a long cut no shorter than the back cut, from "+show(c.Back))
	}
	return impossible("back", c.Back, "a back cut over 0 and no longer than the long cut, up to "+show(c.LongCut))
}

// within refuses a length outside least to most; not-a-number is outside.
func within(option string, l, least, most unit.Length) error {
	if l >= least && l <= most {
		return nil
	}
	return impossible(option, l, "from "+show(least)+" to "+show(most))
}

func impossible(option string, given unit.Length, accepted string) error {
	return &trade.Impossible{Option: option, Given: show(given), Accepted: accepted}
}

// show prints a length in both systems, finely enough to tell the given from
// the accepted.
func show(l unit.Length) string { return fmt.Sprintf("%.4g mm (%.3g in)", l.MM(), l.Inches()) }
