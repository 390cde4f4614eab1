package core

import (
	"fmt"

	"barkslip/core/trade"
)

// Why says in one sentence what the due counts from.
func (d Due) Why(b *Block) string {
	since := d.Since.In(b.Zone)
	switch d.Kind {
	case DueWhite:
		switch d.Hint {
		case whiteStillWet:
			return fmt.Sprintf("It was wet still at %s: look again %d minutes later.", since.Format("15:04"), trade.StillWetMinutes)
		case whiteMorning:
			return "The clock runs out in the dark: white an hour after sunrise."
		case whiteHeat:
			return fmt.Sprintf("Sealed %s: the day's sun would harm the dark sealer before the 3 hours are up.", since.Format("15:04"))
		}
		return fmt.Sprintf("Sealed %s: white %d to %d hours after, once the sealer is dry.", since.Format("15:04"), trade.WhiteOpensHours, trade.WhiteByHours)
	}
	return fmt.Sprintf("Counted from %s.", since.Format("2 Jan 2006"))
}
