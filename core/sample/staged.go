package sample

import (
	"time"

	"barkslip/core/due"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// staged is a part that a stump plays so that a block of the usual size always
// has one of each kind to look at; most play none.
type staged uint8

const (
	asItFalls    staged = iota
	lateToPaint         // its white clock ran out this morning
	justSet             // its last scion is in, its seal to come
	stillWet            // its sealer was not dry when they came to paint
	disputed            // two hands entered two heights for its cut
	againstAll          // grafted although it was told to wait
	justLost            // its grafts were found dead these days
	isGivenUp           // lost, and not worth another graft
	lostInWinter        // lost, to be cut back again next spring
	towers              // its leader ran away over its stake
	uncut               // its leader is over the stake, and it was not come to in winter
	tightTwine          // its twine was seen tight in April and is on still
	overgrown           // nobody has come to its sprouts this spring
)

// parts are those of stumps of earlier seasons, by their place along a block of
// the usual size.
var parts = map[int]staged{
	27: overgrown, 47: isGivenUp, 62: towers, 64: lostInWinter, 65: tightTwine, 75: uncut, 77: overgrown,
}

// graftDayParts are those of this season, by their batch and place in it.
var graftDayParts = map[[2]int]staged{
	{todaysBatch, 0}: lateToPaint, {todaysBatch, 2}: stillWet, {todaysBatch, 8}: justSet,
	{todaysBatch + 1, 3}: disputed, {todaysBatch - 2, 5}: againstAll, {0, 4}: justLost,
}

// stagedAt is the part the i-th stump plays.
func (g *ground) stagedAt(i int) staged {
	if i >= g.earlier {
		return graftDayParts[[2]int{(i - g.earlier) / g.batch, (i - g.earlier) % g.batch}]
	}
	if share := i * usualStumps / g.Stumps; share != (i-1)*usualStumps/g.Stumps { // the first of a larger block's stretch
		return parts[share]
	}
	return asItFalls
}

// inBatch says whether the stump is of a batch of this season.
func (l *life) inBatch(batch int) bool {
	return l.index >= l.earlier && (l.index-l.earlier)/l.batch == batch
}

// play makes a stump such that its part comes out.
func (l *life) play() {
	l.sap, l.across, l.lostIn = 0.1, l.between(16, 22), 0
	switch l.staged {
	case againstAll:
		l.sap = 0.84
	case towers, uncut:
		l.vigour = 1.4
	case overgrown:
		l.vigour = 0.6
	case lostInWinter:
		l.lostIn = l.today.Year()
	}
}

// skips says whether nobody comes for a kind of work, nor for what would follow.
func (l *life) skips(d due.Due) bool {
	thisYear := d.Opens.Year() == l.today.Year()
	switch d.Kind {
	case due.HeadBack:
		return l.staged == uncut
	case due.CutTwine:
		return l.staged == tightTwine && thisYear
	case due.Sprouts:
		return l.staged == overgrown && thisYear
	}
	return false
}

// leaves says whether a step is left for another day for the part it plays.
func (l *life) leaves(id walk.StepID, t time.Time) bool {
	switch id {
	case walk.StepTie:
		return (l.staged == towers || l.staged == uncut) && t.Before(l.whenLong(towerEighths))
	case walk.StepTwineCut:
		return l.isTight(t)
	}
	return false
}

// loses says whether every graft of the stump dies, for the part it plays.
func (l *life) loses() bool {
	return l.staged == isGivenUp || l.staged == justLost
}

// keeps says whether a graft of the stump lives in any case, for the part it
// plays.
func (l *life) keeps() bool {
	return l.staged == lostInWinter || l.staged == towers || l.staged == uncut || l.staged == tightTwine || l.staged == overgrown
}

// dispute has a second hand enter another height for the cut of the stump over
// which two hands disagree.
func (l *life) dispute() {
	cut := l.s.Now().CutBack
	if l.staged != disputed || cut == nil || len(l.s.Clashes) > 0 {
		return
	}
	other := cut.What
	other.Height = inches(int(other.Height.Inches()) - 3)
	l.say(cut.At.Add(9*time.Minute), "AS", &other)
}

// towerEighths is how long a leader is, in eighths of an inch, when they come to
// tie one that ran away from them.
const towerEighths = 8 * (stakeInches + 4)

// whenLong is the morning on which the leader is so long, at the latest that on
// which its first summer ends.
func (l *life) whenLong(eighths int) time.Time {
	best := l.best()
	if best == nil {
		return time.Time{}
	}
	last := unit.MakeDate(best.pushes.At(0, 0, l.Zone).Year(), time.September, 28)
	day := best.pushes
	for day < last && l.length(day.At(9, 0, l.Zone)) < eighths {
		day++
	}
	return day.At(9, 0, l.Zone)
}

// isTight says whether the twine is seen tight at a check, for the part it plays.
func (l *life) isTight(t time.Time) bool {
	return l.staged == tightTwine && t.Year() == l.today.Year()
}
