package part

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
)

// Clocks are the white clocks that run on all blocks of the book, and what else
// runs by the minute. They are
// read from the book, so they are right again after closing or sleep.
type Clocks struct {
	white []due.Due
	tops  []due.Due              // looks at faces whose sap settles
	open  []due.Due              // scions to finish and grafts to seal
	rung  map[record.StumpID]int // 1 rung when due, 2 when late
}

// refresh reads the running clocks from the summaries.
func (c *Clocks) refresh(x *Session) {
	c.white, c.tops, c.open = c.white[:0], c.tops[:0], c.open[:0]
	for _, b := range x.Book.Folded().List() {
		for _, s := range x.Summaries(b.ID) {
			c.add(s)
		}
	}
}

func (c *Clocks) add(s due.Summary) {
	for _, d := range s.Dues {
		switch {
		case d.Kind == due.White:
			c.white = append(c.white, d)
		case d.Kind.Urgent():
			c.open = append(c.open, d)
		case d.Face():
			c.tops = append(c.tops, d)
		}
	}
}

// renew takes the clock of one stump anew.
func (c *Clocks) renew(s due.Summary) {
	for _, list := range []*[]due.Due{&c.white, &c.tops, &c.open} {
		*list = slices.DeleteFunc(*list, func(d due.Due) bool { return d.Stump == s.ID })
	}
	c.add(s)
}

// Ring says whether the bell should ring: once for each clock when it comes
// due, and once when it runs out.
func (c *Clocks) Ring(now time.Time) bool {
	if c.rung == nil {
		c.rung = map[record.StumpID]int{}
	}
	ring := false
	running := map[record.StumpID]bool{}
	for _, d := range c.white {
		running[d.Stump] = true
		state := 0
		switch {
		case d.Late(now):
			state = 2
		case d.Open(now):
			state = 1
		}
		if state > c.rung[d.Stump] {
			ring = true
		}
		c.rung[d.Stump] = state
	}
	for s := range c.rung {
		if !running[s] {
			delete(c.rung, s)
		}
	}
	return ring
}

// words are the clocks for the frame: "3 to paint, next in 12 min".
func (c *Clocks) words(now time.Time) (string, paper.Ink) {
	if len(c.white) == 0 {
		return "", paper.Plain
	}
	var next due.Due
	late, open := 0, 0
	for i, d := range c.white {
		if d.Late(now) {
			late++
		}
		if d.Open(now) {
			open++
		}
		if i == 0 || d.By.Before(next.By) {
			next = d
		}
	}
	n := fmt.Sprintf("%d to paint", len(c.white))
	switch {
	case late > 0:
		return fmt.Sprintf("%s, %d LATE", n, late), paper.Alarm
	case open > 0:
		return fmt.Sprintf("%s, %d now, by %s", n, open, unit.When(next.By, now, next.By.Location())), paper.Warn
	}
	first := c.white[0].Opens
	for _, d := range c.white {
		if d.Opens.Before(first) {
			first = d.Opens
		}
	}
	return fmt.Sprintf("%s, next %s", n, Span(first.Sub(now))), paper.Warn
}

// mostNamed is how many stumps are named of those whose clock runs.
const mostNamed = 3

// Tops are the faces whose sap settles, those that are ready first: "tops
// waiting: 1/6 ready, 1/7 in 6 min"; "" where none is. At most so many are named.
// One that was ready long ago is work like any other.
func (c *Clocks) Tops(now time.Time, most int) string {
	waiting := slices.DeleteFunc(slices.Clone(c.tops), func(d due.Due) bool { return d.Ended(now) || now.Sub(d.Opens) > topStale })
	if len(waiting) == 0 {
		return ""
	}
	slices.SortStableFunc(waiting, func(a, b due.Due) int { return a.Opens.Compare(b.Opens) })
	var words []string
	for _, d := range waiting[:min(len(waiting), most)] {
		word := d.Stump.Place() + " ready"
		if d.Opens.After(now) {
			word = d.Stump.Place() + " " + Span(d.Opens.Sub(now))
		}
		words = append(words, word)
	}
	if more := len(waiting) - most; more > 0 {
		words = append(words, fmt.Sprintf("%d more", more))
	}
	return "faces waiting: " + strings.Join(words, ", ")
}

// topStale is how long a face that is ready counts among the tops waiting.
const topStale = 12 * time.Hour

// Late are grafts begun that should have been finished or sealed: "1/9 to seal, 12
// min late"; "" where none is. Blocks are those of the book.
func (c *Clocks) Late(blocks *record.Book, now time.Time) string {
	late := slices.DeleteFunc(slices.Clone(c.open), func(d due.Due) bool { return !d.Late(now) })
	if len(late) == 0 {
		return ""
	}
	next := slices.MinFunc(late, func(a, b due.Due) int { return a.By.Compare(b.By) })
	b := blocks.Blocks[blocks.CanonicalBlock(next.Stump.Block)]
	words := next.Stump.Place() + " to " + next.Kind.Verb() + ", " + next.LateBy(b, now) + " late"
	if more := len(late) - 1; more > 0 {
		words += fmt.Sprintf(", %d more", more)
	}
	return words
}

// Span prints a wait: in 12 min, in 2 h 05.
func Span(d time.Duration) string {
	m := int((d + 59*time.Second) / time.Minute)
	switch {
	case m <= 0:
		return "now"
	case m < 60:
		return fmt.Sprintf("in %d min", m)
	case m < 24*60:
		return fmt.Sprintf("in %d h %02d", m/60, m%60)
	}
	return fmt.Sprintf("in %d d", (m+24*60-1)/(24*60))
}
