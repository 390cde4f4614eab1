package due

import (
	"slices"
	"time"

	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Twine is putting two loops of twine round the leader and its stake.
const Twine Kind = 15

// Hints of the twine due.
const (
	twineLong uint8 = iota // the leader is, or will be, long enough
	twineAugust
	twineSecond // not done in the season before
)

var twine = Work{
	Kind: Twine, Name: "twine", While: grafted, Rule: twineRule, Step: "twine",
	Says: []string{
		"The leader, chosen {since}, measures {long} by {opens}: time for twine.",
		"The leader was chosen {since}: put twine on from {opens}, however long it is.",
		"The leader was chosen {since} and has no twine: put it on from {opens}.",
	},
	Facts: []trade.Fact{trade.Twine, trade.TwineLoop, trade.TwineTime},
}

// twineRule puts the twine on when the leader is long enough, on 1 August at the
// latest, and else in June of the second year. Twine of a leader that was lost
// counts for none.
func twineRule(c *dueCase) []Due {
	leads, ok := c.a.Leads()
	if _, lost := c.a.LeaderLost(); !ok || lost || c.a.Twine != nil && !c.a.Twine.At.Before(c.a.ChangedLeader()) {
		return nil
	}
	chosen := c.b.Day(leads.Since)
	season := c.b.SeasonOf(chosen)
	opens, hint := c.b.InSeason(season, time.August, 1), twineAugust
	if long, ok := girth.Reaches(c.shoots(), trade.TwineShoot); ok && long < opens {
		opens, hint = long, twineLong
	}
	opens = max(opens, chosen)
	c.some = append(c.some[:0], c.ending(c.days(opens, opens.Add(trade.TwineBy), leads.Since, hint), c.b.SeasonEnds(season)))
	if second := c.first + 1; season < second {
		june := c.b.InSeason(second, time.June, 1)
		c.some = append(c.some, c.ending(c.days(june, june.Add(trade.TwineBy), leads.Since, twineSecond), c.b.SeasonEnds(second)))
	}
	return c.some
}

// TwineCheck is a look at the twine.
const TwineCheck Kind = 21

var twineCheck = Work{
	Kind: TwineCheck, Name: "twine-check", While: grafted, Rule: twineCheckRule, Step: "twine-check",
	Says:  []string{"The twine was last seen {since}: check it again from {opens}."},
	Facts: []trade.Fact{trade.TwineGirdles, trade.TwineChecks},
}

// twineCheckRule is a look at the twine each April, July and October while it is
// on.
func twineCheckRule(c *dueCase) []Due {
	if !c.a.TwineOn() {
		return nil
	}
	seen := c.a.TwineSeen()
	opens := c.nextTwineCheck(c.b.Day(seen))
	return c.one(c.days(opens, opens.Add(trade.TwineCheckBy), seen, 0))
}

// nextTwineCheck is the first day for checking after a day.
func (c *dueCase) nextTwineCheck(after unit.Date) unit.Date {
	for season := c.b.SeasonOf(after) - 1; ; season++ {
		for _, month := range []time.Month{time.April, time.July, time.October} {
			if d := c.b.InSeason(season, month, 1); d > after {
				return d
			}
		}
	}
}

// CutTwine is taking the twine off before it girdles.
const CutTwine Kind = 22

// Hints of the cut-twine due.
const (
	cutGirdling uint8 = iota // by the growth of the stem inside the loop
	cutOld                   // by the years it has been on
	cutTight                 // it was seen tight
)

var cutTwine = Work{
	Kind: CutTwine, Name: "cut-twine", While: grafted, Rule: cutTwineRule, Step: "cut-twine",
	Says: []string{
		"Twined {since}: the stem fills the loop about {by}, so cut it in the month before.",
		"Twined {since}: twine stays on for 3 years at most, so cut it.",
		"The twine was seen tight {since}: cut it within a week, or let it out.",
	},
	Facts: []trade.Fact{trade.TwineGirdles, trade.GirthGain, trade.TwineOff},
}

// cutTwineRule takes the twine off a month before the stem fills its loop, three
// years after it was put on at the latest, and at once where it was seen tight.
func cutTwineRule(c *dueCase) []Due {
	if !c.a.TwineOn() {
		return nil
	}
	if at, tight := c.a.SeenTight(); tight {
		day := c.b.Day(at)
		return c.one(c.days(day, day.Add(trade.TightBy), at, cutTight))
	}
	twined := c.a.Twine.At
	day := c.b.Day(twined)
	old := day.AddYears(trade.TwineYears)
	on, ok := c.girdles()
	if opens := max(on.Add(-trade.TwineWarnDays), day); ok && opens < old {
		return c.one(c.days(opens, on, twined, cutGirdling))
	}
	return c.one(c.days(old, old.Add(trade.TwineOldBy), twined, cutOld))
}

// girdles is the day on which the stem fills the loop, ok false where it never
// does.
func (c *dueCase) girdles() (on unit.Date, ok bool) {
	on, ok, err := girth.TightOn(TwinePlan(c.a, c.b))
	return on, ok && err == nil
}

// twinePlan is the loop as it is now and the girths measured inside it. With
// fewer than three it goes by the usual gain a year.
func TwinePlan(a *record.Attempt, b *record.Block) girth.TwinePlan {
	p := girth.TwinePlan{Loop: a.Twine.What.Loop.Length}
	add := func(at time.Time, stem record.Measure) {
		if stem.Length > 0 && !at.Before(a.Twine.At) {
			p.Readings = append(p.Readings, girth.Reading{On: b.Day(at), Girth: stem.Length})
		}
	}
	add(a.Twine.At, a.Twine.What.Stem)
	for _, s := range a.TwineChecks {
		add(s.At, s.What.Stem)
	}
	for _, m := range a.TwineMoves {
		if add(m.At, m.What.Stem); m.What.Loop.Given() && !m.At.Before(a.Twine.At) {
			p.Loop = m.What.Loop.Length
		}
	}
	p.Readings = oneADay(p.Readings)
	if len(p.Readings) < leastGirths {
		rate := trade.GirthAYear
		p.Rate = &rate
	}
	return p
}

// leastGirths is how many girths show a growth of the stem's own.
const leastGirths = 3

// oneADay puts readings in order of date and keeps the last of each day.
func oneADay(readings []girth.Reading) []girth.Reading {
	slices.SortStableFunc(readings, func(x, y girth.Reading) int { return int(x.On) - int(y.On) })
	out := readings[:0]
	for i, r := range readings {
		if i+1 == len(readings) || readings[i+1].On != r.On {
			out = append(out, r)
		}
	}
	return out
}
