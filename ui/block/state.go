package block

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// stateOf is how a block stands, for the list of blocks: its stumps, on how many
// work is late or can be done now, how many white clocks run, and when the newest
// answer was given. What has no room in the window is left out from the end.
func (b *Screen) stateOf(other *record.Block) string {
	sums, now := b.x.Summaries(other.ID), b.x.Time()
	late, open, white, newest := 0, 0, 0, time.Time{}
	for _, s := range sums {
		if s.Late(now) {
			late++
		}
		if s.Open(now) {
			open++
		}
		if slices.ContainsFunc(s.Dues, func(d due.Due) bool { return d.Kind == due.White }) {
			white++
		}
		if s.Newest.After(newest) {
			newest = s.Newest
		}
	}
	words := []string{part.Counted(len(sums), "stump")}
	for _, c := range []struct {
		n    int
		what string
	}{{late, "late"}, {open, "due"}, {white, "to paint"}} {
		if c.n > 0 {
			words = append(words, fmt.Sprintf("%d %s", c.n, c.what))
		}
	}
	if !newest.IsZero() {
		words = append(words, newest.In(other.Zone).Format("last answer 2 Jan 2006 15:04"))
	}
	for len(words) > 1 && paper.Width(strings.Join(words, ", ")) > b.x.Width-part.ItemColumn {
		words = words[:len(words)-1]
	}
	return strings.Join(words, ", ")
}
