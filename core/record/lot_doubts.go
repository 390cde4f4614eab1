package record

import (
	"fmt"
	"strings"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Doubts is what speaks against the wood of a lot on a day of a block: that it
// is held, old, or was kept warm. Wood with doubts may be used all the same.
func (l *Lot) Doubts(b *Block, day unit.Date) []string {
	var out []string
	if l.Held != nil && l.Held.What.Held {
		out = append(out, strings.TrimSuffix("HELD: "+l.Held.What.Why, ": "))
	}
	if l.Received != nil && l.Received.What.Cut != 0 {
		if days := int(day - l.Received.What.Cut); days > trade.StoreOldDays {
			out = append(out, fmt.Sprintf("OLD WOOD: cut %s, %d days ago, past %d days", l.Received.What.Cut.Long(), days, trade.StoreOldDays))
		}
	}
	if r := l.warmest(); r != nil && r.What.Temp.Temperature > trade.StoreWarm {
		out = append(out, fmt.Sprintf("WARM WOOD: its store stood at %s on %s, over %s",
			b.Units.Temperature(r.What.Temp.Temperature), b.Day(r.At).Short(), b.Units.Temperature(trade.StoreWarm)))
	}
	return out
}

// warmest is the warmest reading of where a lot is kept, nil if none was taken.
func (l *Lot) warmest() (warmest *Said[StoreRead]) {
	for i, r := range l.Readings {
		if warmest == nil || r.What.Temp.Temperature > warmest.What.Temp.Temperature {
			warmest = &l.Readings[i]
		}
	}
	return warmest
}
