package due

import (
	"time"

	"barkslip/core/girth"
	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// phase says while what a rule is asked; a stump that is lost, given up or
// untied is in none but over.
type phase uint8

const (
	ungrafted phase = iota // no scion set
	draining               // cut back, no scion set
	grafting               // scions set, the grafting not ended
	working                // cut back or grafted
	underSeal              // under sealer, whatever became of it
	grafted                // the grafting was ended
	pushed                 // and a graft was seen pushing
	lost                   // every graft dead, failed, or left for the season
)

// dueCase is what a rule may look at.
type dueCase struct {
	s     *record.Stump
	a     *record.Attempt
	b     *record.Block
	kind  Kind
	stage record.Stage

	set     time.Time // the last scion; zero until the grafting was ended
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
	over := c.stage == record.StageFailed || c.stage == record.StageGivenUp || c.stage == record.StageUntied
	switch p {
	case lost:
		return over || c.a.CutBack == nil
	case ungrafted:
		return !over && len(c.a.Grafts) == 0
	case draining:
		return !over && len(c.a.Grafts) == 0 && c.a.CutBack != nil
	case grafting:
		return !over && len(c.a.Grafts) > 0
	case working:
		return !over && (c.a.CutBack != nil || !c.set.IsZero())
	case underSeal:
		return !over && c.a.Sealed != nil && len(c.a.Grafts) > 0
	case grafted:
		return !over && !c.set.IsZero()
	case pushed:
		return !over && !c.push.IsZero()
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

// hinted is a due with another of its kind's sentences.
func (d Due) hinted(hint uint8) Due {
	d.Hint = hint
	return d
}

// one is a rule's single due; it holds until the next rule.
func (c *dueCase) one(d Due) []Due {
	c.some = append(c.some[:0], d)
	return c.some
}

// ending is a due that is no more after a day.
func (c *dueCase) ending(d Due, last unit.Date) Due {
	d.Ends = last.Add(1).In(c.b.Zone)
	return d
}

// until is a rule's due that is no more after a day; none if that day is before
// it opens.
func (c *dueCase) until(d Due, last unit.Date) []Due {
	if last < c.b.Day(d.Opens) {
		return nil
	}
	return c.one(c.ending(d, last))
}

// yearly is a rule's due that is no more after a day and comes again each year
// until it is met.
func (c *dueCase) yearly(d Due, last unit.Date) []Due {
	d = c.ending(d, last)
	d.Yearly = true
	return c.one(d)
}

// dayBefore is the last day before another, of work that ends when that begins.
func dayBefore(d unit.Date) unit.Date { return d.Add(-1) }
