package block

import (
	"strings"

	"barkslip/core/record"
)

// givenTo says whose work a stump is today, or else tomorrow; "" where it is
// nobody's.
func (b *Screen) givenTo(id record.StumpID) string {
	site := b.x.Site()
	today := site.Day(b.x.Time())
	if hands := site.HandsOf(id, today); len(hands) > 0 {
		return "today " + strings.Join(hands, " and ")
	}
	if hands := site.HandsOf(id, today.Add(1)); len(hands) > 0 {
		return "tomorrow " + strings.Join(hands, " and ")
	}
	return ""
}
