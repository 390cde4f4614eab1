package due

import (
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// AfterLook is the look at a new seal some days on.
const AfterLook Kind = 4

var afterLook = Work{
	Kind: AfterLook, Name: "after-look", While: underSeal, Rule: afterLookRule, Step: "seal-check",
	Says: []string{
		"Sealed {since}: check the seal 2 to 4 days later.",
		"It rained hard {since}: check by {by} that the seal is whole.",
	},
	Facts: []trade.Fact{trade.SealLook, trade.HardRain},
}

// Hints of the after-look due.
const (
	afterLookFirst uint8 = iota
	afterLookRain
)

// afterLookRule stands until the seal was checked, while the graft is young, and
// again after hard rain.
func afterLookRule(c *dueCase) []Due {
	sealed := c.a.Sealed.At
	if rain := record.LastOf(c.a.HardRain); rain != nil && !seenSince(c.a, *rain) {
		day := c.b.Day(rain.At)
		return c.until(c.days(day, day.Add(trade.HardRainBy), rain.At, afterLookRain), c.b.Day(c.a.SetAt()).Add(trade.GraftSettles))
	}
	if check := record.LastOf(c.a.SealChecks); check != nil && !check.At.Before(sealed) {
		return nil
	}
	day := c.b.Day(sealed)
	return c.until(c.days(day.Add(trade.AfterLookDays), day.Add(trade.AfterLookBy), sealed, afterLookFirst), c.b.Day(c.a.SetAt()).Add(trade.GraftSettles))
}

// seenSince says whether the seal was looked at, or put on anew, after hard rain.
func seenSince(a *record.Attempt, rain record.Said[record.RainedHard]) bool {
	check, again := record.LastOf(a.SealChecks), record.LastOf(a.Reseals)
	return check != nil && record.Newer(*check, rain) || again != nil && record.Newer(*again, rain) || record.Newer(*a.Sealed, rain)
}

// Reseal is putting sealer on again.
const Reseal Kind = 5

// Hints of the reseal due.
const (
	resealBare uint8 = iota
	resealCracked
)

var reseal = Work{
	Kind: Reseal, Name: "reseal", While: underSeal, Rule: resealRule, Step: "reseal",
	Says: []string{
		"Sealed bare {since}: bare sealer cracks, so reseal it 5 to 6 days later.",
		"Seen cracked {since}: reseal it by {by}.",
	},
	Facts: []trade.Fact{trade.BareCracks, trade.SealLook},
}

// resealRule is for bare sealer, which cracks within days, and for any seal seen
// cracked, until it was sealed again.
func resealRule(c *dueCase) []Due {
	sealed, resealed := *c.a.Sealed, time.Time{}
	if r := record.LastOf(c.a.Reseals); r != nil && !r.At.Before(sealed.At) {
		resealed = r.At
	}
	last := c.b.Day(c.a.SetAt()).Add(trade.GraftSettles)
	if check := record.LastOf(c.a.SealChecks); check != nil && check.What.Cracked && !check.At.Before(sealed.At) && check.At.After(resealed) {
		day := c.b.Day(check.At)
		return c.until(c.days(day, day.Add(trade.CrackedBy), check.At, resealCracked), last)
	}
	if sealed.What.Cover != record.Bare || !resealed.IsZero() {
		return nil
	}
	day := c.b.Day(sealed.At)
	return c.until(c.days(day.Add(trade.ResealDays), day.Add(trade.ResealBy), sealed.At, resealBare), last)
}

// Earwigs is a fresh ring against earwigs.
const Earwigs Kind = 6

// Hints of the earwigs due.
const (
	earwigsFirst uint8 = iota
	earwigsAgain
)

var earwigs = Work{
	Kind: Earwigs, Name: "earwigs", While: grafted, Rule: earwigsRule, Step: "ring-again",
	Says: []string{
		"Scions set {since}: earwigs eat opening buds, so put a fresh ring on 12 to 18 days later.",
		"The ring was put on {since}: put a fresh one on after 14 days, until the shoots harden.",
	},
	Facts: []trade.Fact{trade.Earwigs},
}

// earwigsRule renews the ring, on a block that has earwigs, before buds open and
// every fortnight until the shoots have hardened. A ring set with the graft is
// worn out by then and does not count.
func earwigsRule(c *dueCase) []Due {
	if !c.b.Earwigs {
		return nil
	}
	opens, by, since, hint := c.setDay.Add(trade.EarwigOpens), c.setDay.Add(trade.EarwigBy), c.set, earwigsFirst
	if ring := record.LastOf(c.a.Rings); ring != nil && c.b.Day(ring.At) >= opens {
		opens = c.b.Day(ring.At).Add(trade.EarwigDays)
		by, since, hint = opens.Add(trade.EarwigBy-trade.EarwigOpens), ring.At, earwigsAgain
	}
	hard := c.b.SeasonEnds(c.first)
	if c.pushDay != 0 {
		hard = c.pushDay.Add(trade.EarwigHardenDays)
	}
	return c.until(c.days(opens, by, since, hint), hard)
}
