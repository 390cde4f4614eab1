package core

import (
	"fmt"
	"strings"

	"barkslip/core/unit"
)

// Say is an event's body in a few words, as shown when it is taken back and in
// the story of a stump.
func Say(b Body, sys unit.System) string {
	l := func(m Measure) string { return sys.Length(m.Length) }
	switch b := b.(type) {
	case *StumpAdded:
		return strings.TrimSpace("added " + b.Variety)
	case *NurseJudged:
		return sayNurse(b, sys)
	case *LimbTakenOff:
		return "limb off, " + sayLimbs(b.Left) + saidIf(b.Nearest.Given(), ", nearest "+l(b.Nearest)+" below")
	case *CutBack:
		return "cut back " + l(b.Height) + saidIf(b.Across.Given(), ", "+sys.Exact(b.Across.Length)+" across")
	case *Gashed:
		return howMany(b.Number, "gash") + saidIf(b.Depth.Given(), ", "+l(b.Depth)+" deep")
	case *Drilled:
		return howMany(b.Number, "drain hole")
	case *Looked:
		return sayLook(b)
	case *FreshCut:
		return "fresh cut " + l(b.Height) + saidIf(len(b.Torn) > 0, ", torn")
	case *StumpMeasured:
		if b.Across2.Given() {
			return "measured " + sys.Exact(b.Across.Length) + " by " + sys.Exact(b.Across2.Length)
		}
		return "measured " + sys.Exact(b.Across.Length)
	case *SlotsMarked:
		if len(b.Slots) == 0 {
			return sayPlan(b, sys)
		}
		return howMany(len(b.Slots), "slot")
	case *WoodChosen:
		return sayWood(b, sys)
	case *ScionSet:
		return sayScion(b, sys)
	case *Sealed:
		return "sealed, " + string(b.Cover)
	case *StillWet:
		if b.Rain {
			return "rained on"
		}
		return "still wet"
	case *SealChecked:
		if b.Cracked {
			return "seal cracked"
		}
		return "seal sound"
	case *Failed:
		return "failed: " + b.Cause
	case *GivenUp:
		return "given up"
	case *Noted:
		return "note: " + b.Text
	case *AgainstAdvice:
		return "against advice: " + b.Why
	case *Withdrawn:
		return "taken back"
	}
	if words, ok := sayAfter(b, sys); ok {
		return words
	}
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

// saidIf is words where they hold.
func saidIf(holds bool, words string) string {
	if holds {
		return words
	}
	return ""
}

func sayLimbs(n int) string {
	if n == 0 {
		return "no limb left"
	}
	return howMany(n, "limb") + " left"
}

// sayNurse names what was answered last first: number, then reach, then leaf are
// asked one by one.
func sayNurse(b *NurseJudged, sys unit.System) string {
	words := sayLimbs(b.Limbs)
	if b.Limbs == 0 {
		return words
	}
	if b.Nearest.Given() {
		words = "nearest limb " + sys.Exact(b.Nearest.Length) + " below, " + words
	}
	if b.Leaf != "" {
		words = "leaf " + b.Leaf + ", " + words
	}
	return words
}

// sayPlan is what was asked of the slots and blocked for them.
func sayPlan(b *SlotsMarked, sys unit.System) string {
	var words []string
	if b.Asked > 0 {
		words = append(words, howMany(b.Asked, "slot")+" asked for")
	}
	for _, arc := range b.Blocked {
		words = append(words, fmt.Sprintf("%s at %s blocked", sys.Length(arc.Width.Length), degrees(arc.Bearing)))
	}
	if len(words) == 0 {
		return "no bark blocked"
	}
	return strings.Join(words, ", ")
}

// sayScion is a scion set, with what was not right and how far a split ran.
func sayScion(b *ScionSet, sys unit.System) string {
	words := fmt.Sprintf("scion %d set", b.Slot)
	if wrong := b.Checks.wrong(); len(wrong) > 0 {
		words += ", not so: " + strings.Join(wrong, "; ")
	}
	switch {
	case b.Split == splitUnmeasured:
		words += ", split ran on"
	case b.Split.Given():
		words += ", split ran " + sys.Length(b.Split.Length)
	}
	return words
}

func sayWood(b *WoodChosen, sys unit.System) string {
	words := "wood " + b.Variety
	if b.Thickness.Given() {
		words += ", " + sys.Exact(b.Thickness.Length)
	}
	if len(b.Pieces) > 0 {
		return words + fmt.Sprintf(", %d from a stick cut at %s", len(b.Pieces), cutPlaces(b.Pieces, sys))
	}
	if len(b.Nodes) > 0 {
		words += ", " + budWords(b.Nodes)
	}
	return words
}

func sayLook(b *Looked) string {
	var words []string
	if b.Bleeding != "" {
		words = append(words, string(b.Bleeding))
	}
	if b.Slip != "" {
		words = append(words, "bark "+string(b.Slip))
	}
	if b.Wiped {
		words = append(words, "after a wipe")
	}
	return strings.Join(words, ", ")
}
