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
		return fmt.Sprintf("%d limbs left", b.Limbs)
	case *LimbTakenOff:
		return "limb off"
	case *CutBack:
		return "cut back " + l(b.Height)
	case *Gashed:
		return fmt.Sprintf("%d gashes", b.Number)
	case *Drilled:
		return fmt.Sprintf("%d drain hole", b.Number)
	case *Looked:
		return sayLook(b)
	case *FreshCut:
		return "fresh cut " + l(b.Height)
	case *StumpMeasured:
		if b.Across2.Given() {
			return "measured " + sys.Exact(b.Across.Length) + " by " + sys.Exact(b.Across2.Length)
		}
		return "measured " + sys.Exact(b.Across.Length)
	case *SlotsMarked:
		if len(b.Slots) == 0 {
			return "plan of slots"
		}
		return fmt.Sprintf("%d slots", len(b.Slots))
	case *WoodChosen:
		return sayWood(b, sys)
	case *ScionSet:
		return fmt.Sprintf("scion %d set", b.Slot)
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
	case *Staked:
		return "staked " + l(b.Height)
	case *Visited:
		return sayVisit(b)
	case *Tied:
		return "tied at " + l(b.Shoot)
	case *LeaderChosen:
		return fmt.Sprintf("leader from slot %d", b.Slot)
	case *Twined:
		return "twined, loop " + l(b.Loop)
	case *Failed:
		return "failed: " + b.Cause
	case *GivenUp:
		return "given up"
	case *Noted:
		return "note: " + b.Text
	case *AgainstAdvice:
		return "against advice: " + b.Why
	case *SeasonsEnd:
		return "season's end, " + b.Word
	case *Withdrawn:
		return "taken back"
	}
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func sayWood(b *WoodChosen, sys unit.System) string {
	words := "wood " + b.Variety
	if b.Thickness.Given() {
		words += ", " + sys.Exact(b.Thickness.Length)
	}
	if len(b.Pieces) > 0 {
		return words + fmt.Sprintf(", %d from a stick", len(b.Pieces))
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

func sayVisit(b *Visited) string {
	var words []string
	for _, f := range b.Found {
		words = append(words, fmt.Sprintf("%d %s", f.Slot, strings.ReplaceAll(string(f.State), "-", " ")))
	}
	return "visit: " + strings.Join(words, ", ")
}
