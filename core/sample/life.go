package sample

import (
	"cmp"
	"slices"
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// life is one stump while its history is made up.
type life struct {
	*ground
	chance
	stump   record.StumpID
	index   int
	entries []entry

	across  int // eighths of an inch
	height  int // of the newest cut, inches above the ground
	variety string
	wood    *lot
	hand    hand
	staged  staged // the part it has to play today
	year    int    // of the attempt
	lostIn  int    // the season in which an attempt was lost
	sap     float64
	vigour  float64
	found   ready.Found // as the crew knows it
	nurse   int         // limbs left below the graft
	scions  []scion
	advised bool // it was grafted on advice
	painted time.Time
	sealed  time.Time
}

func (l *life) beginBlock() {
	l.chance, l.stump, l.entries = seeded(l.Seed, 1<<50), record.NoStump, l.entries[:0]
}

func (l *life) begin(i int) {
	*l = life{ground: l.ground, chance: seeded(l.Seed, uint64(i)), stump: l.place(i), index: i, entries: l.entries[:0], scions: l.scions[:0]}
	l.staged = l.stagedAt(i)
	l.hand = l.grafter(i)
	l.variety = l.varietyOf(i)
	l.across = l.between(14, 30)
	if l.odds(0.08) {
		l.across = l.between(31, 44)
	}
	l.vigour = 0.6 + 0.8*l.real()
}

// say tells what was done or seen at a time, written down at once. What lies
// after today is not told. It returns the event's id.
func (l *life) say(at time.Time, hand string, body record.Body, replaces ...record.ID) record.ID {
	return l.sayLate(at, at, hand, body, replaces...)
}

// sayLate tells what was written down later than it was done.
func (l *life) sayLate(at, written time.Time, hand string, body record.Body, replaces ...record.ID) record.ID {
	id := l.id()
	if !written.After(l.Now) {
		l.entries = append(l.entries, entry{written.Unix(), record.Event{ID: id, At: at, Hand: hand, Stump: l.stump, Replaces: replaces, Body: body}})
	}
	return id
}

// told is all that was said, by the time of writing.
func (l *life) told() []entry {
	slices.SortStableFunc(l.entries, func(a, b entry) int { return cmp.Compare(a.written, b.written) })
	return l.entries
}

// on is a working moment of a day.
func (l *life) on(d unit.Date) time.Time {
	return workday(d).At(l.between(7, 16), l.between(0, 59), l.Zone)
}

// gone says whether a time is not yet reached.
func (l *life) gone(t time.Time) bool { return t.After(l.Now) }

// live tells the whole life of a stump: its grafting, its after-care, and a
// second grafting where the first was lost.
func (l *life) live() {
	seasons, _ := l.age(l.index)
	l.add(seasons)
	day := l.graftDay(l.index)
	for attempt := 0; attempt < 3; attempt++ {
		if l.gone(day.Add(-10).At(6, 0, l.Zone)) {
			return
		}
		took := l.attempt(day, attempt)
		if took || l.leftForGood(attempt) {
			return
		}
		day = workday(day.AddYears(l.lostIn + 1 - day.Year()).Add(l.between(-2, 3)))
	}
}

// add puts the stump into the block in the winter before its season.
func (l *life) add(seasons int) {
	at := unit.MakeDate(l.today.Year()-seasons, time.February, 20).At(14, 0, l.Zone).Add(time.Duration(l.index%240) * 2 * time.Minute)
	body := &record.StumpAdded{Stock: "seedling black walnut"}
	if l.odds(0.6) {
		body.Across = eighths(l.across + l.between(-1, 2))
	}
	if l.variety != varieties[0] {
		body.Variety = l.variety
	}
	l.say(at, office, body)
	if l.odds(0.04) {
		text := l.one("leans to the lane", "old wire in the bark at knee height", "two stems, the east one kept", "wet foot, drains badly", "deer path beside it")
		l.say(at.Add(time.Minute), office, &record.Noted{Text: text})
	}
}

// attempt tells one grafting from cutting back on, and says whether it took.
func (l *life) attempt(day unit.Date, n int) bool {
	l.year, l.lostIn = day.Year(), day.Year()
	l.wood = l.lotOf(l.year, l.variety)
	l.found, l.scions, l.advised = ready.Found{}, l.scions[:0], true
	l.sealed, l.painted = time.Time{}, time.Time{}
	l.sap = l.real()
	if n > 0 {
		l.sap *= 0.8
	}
	cut := l.cutBack(day)
	ready, ok := l.makeReady(l.firstLook(day, cut))
	if !ok {
		return false
	}
	if l.gone(ready) {
		return true
	}
	l.graft(ready)
	l.seal()
	l.decideFates()
	return l.summer()
}

// leftForGood says whether a lost stump is not grafted again; some are given
// up, some wait for somebody to come round.
func (l *life) leftForGood(attempt int) bool {
	end := unit.MakeDate(l.lostIn+1, time.April, 27)
	switch {
	case l.staged == staysFailed:
		return true
	case l.staged == isGivenUp, attempt == 2, l.odds(0.15):
		l.say(l.on(end), office, &record.GivenUp{Why: l.one("stock too weak", "rot in the stem", "too close to the ditch", "lost twice")})
		return true
	}
	return l.odds(0.1)
}
