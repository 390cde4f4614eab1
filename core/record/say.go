package record

import "barkslip/core/unit"

// Say is an event's body in a few words, as shown when it is taken back and in
// the story of a stump.
func Say(b Body, sys unit.System) string { return b.Say(sys) }

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
	return unit.Count(n, "limb") + " left"
}
