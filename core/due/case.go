package due

import (
	"time"

	"barkslip/core/girth"
	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// dueRule works out one kind of due from a record: one due, or none.
type rule func(c *dueCase) []Due

// phase says while what a rule is asked; a stump that is lost, given up or
// untied is in none but over.
type phase uint8

const (
	always    phase = iota
	preparing       // cut back, the scions not all set
	working         // cut back or grafted
	sealedUp        // under sealer
	grafted         // the scions are set
	pushed          // and a graft was seen pushing
	over            // failed, every graft dead, or left for the season
)

// dueCase is what a rule may look at.
type dueCase struct {
	s     *record.Stump
	a     *record.Attempt
	b     *record.Block
	kind  Kind
	stage record.Stage

	set     time.Time // the last scion; zero until all are set
	setDay  unit.Date
	push    time.Time // the first push seen
	pushDay unit.Date
	first   int // the season of the graft, or of cutting back before it

	advice *ready.Advice // at judged
	judged time.Time
	grown  []girth.Shoot // once asked for
	some   []Due
}

func newDueCase(s *record.Stump, b *record.Block) *dueCase {
	c := &dueCase{s: s, a: s.Now(), b: b}
	c.stage = c.a.Stage()
	if c.a.Grafted() {
		c.set = c.a.SetAt()
		c.setDay = b.Day(c.set)
		if c.push = c.a.FirstPush(); !c.push.IsZero() {
			c.pushDay = b.Day(c.push)
		}
	}
	switch {
	case !c.set.IsZero():
		c.first = b.SeasonOf(c.setDay)
	case c.a.CutBack != nil:
		c.first = b.SeasonOf(b.Day(c.a.CutBack.At))
	}
	return c
}

func (c *dueCase) in(p phase) bool {
	lost := c.stage == record.StageFailed || c.stage == record.StageGivenUp || c.stage == record.StageUntied
	switch p {
	case always:
		return true
	case over:
		return lost || c.a.CutBack == nil
	case preparing:
		return !lost && c.a.CutBack != nil && len(c.a.Grafts) == 0
	case working:
		return !lost && (c.a.CutBack != nil || !c.set.IsZero())
	case sealedUp:
		return !lost && c.a.Sealed != nil
	case grafted:
		return !lost && !c.set.IsZero()
	case pushed:
		return !lost && !c.push.IsZero()
	}
	return false
}

// at makes a timed due.
func (c *dueCase) at(opens, by, since time.Time) Due {
	return Due{Stump: c.s.ID, Kind: c.kind, Opens: opens.In(c.b.Zone), By: by.In(c.b.Zone), Since: since.In(c.b.Zone)}
}

// days makes a due of whole days, from the first instant of one to the last
// second of another, not before the first.
func (c *dueCase) days(opens, by unit.Date, since time.Time, hint uint8) Due {
	end := max(opens, by).Add(1).In(c.b.Zone).Add(-time.Second)
	return Due{Stump: c.s.ID, Kind: c.kind, Opens: opens.In(c.b.Zone), By: end, Since: since.In(c.b.Zone), Hint: hint}
}

// one is a rule's single due; it holds until the next rule.
func (c *dueCase) one(d Due) []Due {
	c.some = append(c.some[:0], d)
	return c.some
}

// until is a rule's due that is no more after a day.
func (c *dueCase) until(d Due, last unit.Date) []Due {
	d.Ends = last.Add(1).In(c.b.Zone)
	return c.one(d)
}

// thenNext is a rule's due that is no more after a day, and what it comes to
// later if it is not met by then.
func (c *dueCase) thenNext(d Due, last unit.Date, next Due) []Due {
	d.Ends = last.Add(1).In(c.b.Zone)
	c.some = append(c.some[:0], d, next)
	return c.some
}

// everySeason is a rule's due of one season and of each after it up to the last,
// from leaf-out on: each is no more when its season ends.
func (c *dueCase) everySeason(d Due, last int, by int, hint uint8) []Due {
	season := c.b.SeasonOf(c.b.Day(d.Opens))
	c.some = append(c.some[:0], d)
	for y := season + 1; y <= last; y++ {
		leaf := c.b.LeafOut(y)
		c.some = append(c.some, c.days(leaf, leaf.Add(by), d.Since, hint))
	}
	for i := range c.some {
		c.some[i].Ends = c.b.SeasonEnds(season + i).Add(1).In(c.b.Zone)
	}
	return c.some
}

// season moves a day on to the next leaf-out if the later seasons of the block
// have no work of that kind on it.
func (c *dueCase) season(d unit.Date) unit.Date {
	if y := c.b.SeasonOf(d); y != c.first {
		return max(d, c.b.LeafOut(y))
	}
	return d
}

// lastDay is the block's day of the newest of what was said, 0 if nothing was.
func lastDay[T any](b *record.Block, list []record.Said[T]) unit.Date {
	if s := record.LastOf(list); s != nil {
		return b.Day(s.At)
	}
	return 0
}
