package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// afterLookDue is the look at a new seal some days on, until it was checked.
func afterLookDue(c *dueCase) []Due {
	sealed := c.a.Sealed.At
	if check := record.LastOf(c.a.SealChecks); check != nil && !check.At.Before(sealed) {
		return nil
	}
	day := c.b.Day(sealed)
	return c.one(c.days(day.Add(trade.AfterLookDays), day.Add(trade.AfterLookBy), sealed, 0))
}

// Hints of the reseal due.
const (
	resealBare uint8 = iota
	resealCracked
)

// resealDue is for bare sealer, which cracks within days, and for any seal seen
// cracked, until it was sealed again.
func resealDue(c *dueCase) []Due {
	sealed := *c.a.Sealed
	resealed := time.Time{}
	if r := record.LastOf(c.a.Reseals); r != nil && !r.At.Before(sealed.At) {
		resealed = r.At
	}
	if check := record.LastOf(c.a.SealChecks); check != nil && check.What.Cracked && !check.At.Before(sealed.At) && check.At.After(resealed) {
		day := c.b.Day(check.At)
		return c.one(c.days(day, day.Add(trade.CrackedBy), check.At, resealCracked))
	}
	if sealed.What.Cover != record.Bare || !resealed.IsZero() {
		return nil
	}
	day := c.b.Day(sealed.At)
	return c.one(c.days(day.Add(trade.ResealDays), day.Add(trade.ResealBy), sealed.At, resealBare))
}
