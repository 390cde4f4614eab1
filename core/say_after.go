package core

import (
	"fmt"
	"strings"

	"barkslip/core/unit"
)

// sayAfter is a body of the after-care in a few words; ok is false for others.
func sayAfter(b Body, sys unit.System) (words string, ok bool) {
	l := func(m Measure) string { return sys.Length(m.Length) }
	switch b := b.(type) {
	case *Staked:
		return "staked " + l(b.Height) + " on the " + b.Side.Point() + " side", true
	case *Visited:
		return sayVisit(b, sys), true
	case *SproutsRubbed:
		return saySprouts(b), true
	case *SproutsKept:
		return howMany(b.Number, "sprout") + " kept", true
	case *LeaderChosen:
		return fmt.Sprintf("leader from graft %d", b.Slot) + saidIf(b.Shoot != "", ", "+b.Shoot+" shoot"), true
	case *LeaderBroken:
		words := "leader broken" + saidIf(b.Cause != "", ", "+b.Cause)
		if b.Promoted > 0 {
			words += fmt.Sprintf(", graft %d", b.Promoted) + saidIf(b.Shoot != "", " "+b.Shoot) + " takes over"
		}
		return words, true
	case *Tied:
		if !b.Shoot.Given() {
			return "tied, not measured", true
		}
		return "tied, shoot " + l(b.Shoot) + saidIf(b.Broken, ", tip broken"), true
	case *Twined:
		return howMany(b.Loops, "loop") + " of twine, " + l(b.Loop) + " on a stem of " + l(b.Stem) + saidIf(b.Material != "", ", "+b.Material), true
	case *TwineChecked:
		return "twine " + map[bool]string{true: "tight", false: "loose"}[b.Tight] + saidIf(b.Stem.Given(), ", stem "+l(b.Stem)), true
	case *TwineMoved:
		return "twine let out" + saidIf(b.Loop.Given(), ", loop "+l(b.Loop)) + saidIf(b.Stem.Given(), " on a stem of "+l(b.Stem)), true
	case *HeadedBack:
		if b.Short {
			return "too short, cut to strong buds", true
		}
		return "headed back" + saidIf(b.Height.Given(), " at "+l(b.Height)), true
	case *NurseLimbOff:
		return "nurse limb off, " + sayLimbs(b.Left), true
	case *SeasonsEnd:
		return "season's end, " + b.Word + saidIf(b.Alive > 0, fmt.Sprintf(", %d alive", b.Alive)), true
	}
	return "", false
}

// sayVisit is each graft with its state, cause of death and what else was seen.
func sayVisit(b *Visited, sys unit.System) string {
	var words []string
	for _, f := range b.Found {
		word := fmt.Sprintf("%d %s", f.Slot, stateWord(f.State))
		if f.State == Dead && f.Cause != "" {
			word += " of " + f.Cause
		}
		if f.Scratch != "" {
			word += ", " + string(f.Scratch) + " under the bark"
		}
		if f.Shoot.Given() {
			word += ", shoot " + sys.Length(f.Shoot.Length)
		}
		words = append(words, word)
	}
	return "visit: " + strings.Join(words, "; ")
}

func saySprouts(b *SproutsRubbed) string {
	words := fmt.Sprintf("sprouts rubbed, %d near", b.Near)
	if b.Below > 0 {
		words += fmt.Sprintf(", %d below", b.Below)
	}
	return words + saidIf(b.Leaf != "", ", leaf below "+b.Leaf)
}
