// Package out makes the lines and the points in which a block goes out to
// spreadsheets and maps: a line a stump, or a line a graft.
//
// It may import the record, the dues and the leaves.
package out

import (
	"math"
	"strconv"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// Cell is one value of a line. An empty text is a value not known.
type Cell struct {
	Text   string
	Number bool // it is a number; Text is how JSON writes it too
	User   bool // it came from a user: a spreadsheet must not run it
}

func own(text string) Cell       { return Cell{Text: text} }
func typed(texts ...string) Cell { return Cell{Text: joined(texts), User: true} }
func whole[N ~int | ~uint8 | ~uint16](n N) Cell {
	return Cell{Text: strconv.Itoa(int(n)), Number: true}
}

// size is a length in millimetres, to a nanometre, empty where it is nought.
func size(l unit.Length) Cell {
	if l <= 0 {
		return Cell{Number: true}
	}
	return Cell{Text: strconv.FormatFloat(math.Round(l.MM()*1e6)/1e6, 'f', -1, 64), Number: true}
}

// day is an instant's day in the block's zone, clock the instant there; both are
// empty where it is zero.
func day(b *record.Block, t time.Time) Cell {
	if t.IsZero() {
		return Cell{}
	}
	return own(b.Day(t).String())
}

func clock(b *record.Block, t time.Time) Cell {
	if t.IsZero() {
		return Cell{}
	}
	return own(t.In(b.Zone).Format(time.RFC3339))
}

func yesNo(v bool) Cell {
	if v {
		return own("yes")
	}
	return own("no")
}

// joined is the texts that are not empty, cleaned, each once.
func joined(texts []string) string {
	var kept []string
	seen := map[string]bool{"": true}
	for _, t := range texts {
		if t = strings.TrimSpace(record.Clean(t)); !seen[t] {
			seen[t], kept = true, append(kept, t)
		}
	}
	return strings.Join(kept, "; ")
}

// limb is the number of a limb, empty for the trunk.
func limb(id record.StumpID) Cell {
	if id.Limb == 0 {
		return Cell{Number: true}
	}
	return whole(id.Limb)
}
