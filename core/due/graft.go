package due

import "barkslip/core/ready"

// graftDue is on the day on which the stump was found ready, until its scions
// are set: the next day it is judged anew.
func graftDue(c *dueCase) []Due {
	if c.verdict().Verdict != ready.Graft {
		return nil
	}
	day := c.b.Day(c.judged)
	return c.one(c.days(day, day, c.judged, 0))
}
