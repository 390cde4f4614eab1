package core

import (
	"cmp"
	"slices"
	"time"

	"barkslip/core/unit"
)

// DueKind is a kind of work that falls due on a stump.
type DueKind uint8

// The kinds, in the order in which they are done on one visit: white first.
const (
	DueWhite DueKind = iota
	DueLookAgain
	DueLook
	DueGraft
	DueAfterLook
	DueReseal
	DueEarwigs
	DueStake
	DueBuds
	DueConfirmTake
	DueSprouts
	DueKeepSprouts
	DueLeader
	DueTie
	DuePinch
	DueTwine
	DueSeasonsEnd
	DueTiesOff
	DueHeadBack
	DueSecondShootOff
	DueNurseLimbsOff
	DueTwineCheck
	DueCutTwine
	DueRegraft
	dueKinds
)

var dueNames = [dueKinds]string{
	"white", "look-again", "look", "graft", "after-look", "reseal", "earwigs", "stake", "buds", "confirm-take",
	"sprouts", "keep-sprouts", "leader", "tie", "pinch", "twine", "seasons-end", "ties-off", "head-back",
	"second-shoot-off", "nurse-limbs-off", "twine-check", "cut-twine", "regraft",
}

func (k DueKind) String() string { return dueNames[k] }

// DueKinds lists the kinds.
func DueKinds() []DueKind {
	out := make([]DueKind, dueKinds)
	for i := range out {
		out[i] = DueKind(i)
	}
	return out
}

// ParseDueKind reads the kebab-case name.
func ParseDueKind(s string) (DueKind, bool) {
	i := slices.Index(dueNames[:], s)
	return DueKind(max(i, 0)), i >= 0
}

// Timed says whether the kind runs by the clock; the others run by whole days.
func (k DueKind) Timed() bool { return k == DueWhite || k == DueLookAgain || k == DueLook }

// Due is work a stump needs, from when it can be done to when it should have
// been. For kinds that run by days, Opens is the first instant of the day and
// By the last.
type Due struct {
	Stump StumpID
	Kind  DueKind
	Opens time.Time
	By    time.Time
	Since time.Time // the cause the times count from
	Ends  time.Time // from when on it is no more: its season is over; zero: never
	Hint  uint8     // which of the kind's reasons applies
}

// Open says whether the work can be done at now.
func (d Due) Open(now time.Time) bool { return !d.Opens.After(now) && !d.Ended(now) }

// Late says whether it should have been done before now.
func (d Due) Late(now time.Time) bool { return now.After(d.By) && !d.Ended(now) }

// Ended says whether the time for the work was over before now: nobody rubs the
// sprouts of last summer.
func (d Due) Ended(now time.Time) bool { return !d.Ends.IsZero() && !now.Before(d.Ends) }

// OpenBetween says whether the work can be done at some time from one instant to
// another.
func (d Due) OpenBetween(from, until time.Time) bool { return !d.Opens.After(until) && !d.Ended(from) }

// Dues is all that a stump needs, open now or to come, soonest first within the
// order of kinds. It depends on the record and the block alone; whether a due
// is open or late is asked of each with the time.
func Dues(s *Stump, b *Block) []Due {
	c := newDueCase(s, b)
	out := make([]Due, 0, 16)
	for kind, row := range dueRules {
		if c.kind = DueKind(kind); c.in(row.while) {
			out = append(out, row.rule(c)...)
		}
	}
	slices.SortStableFunc(out, func(x, y Due) int { return cmp.Or(x.Opens.Compare(y.Opens), cmp.Compare(x.Kind, y.Kind)) })
	return out
}

// ByWords is when the due should be done as people say it: by the clock for
// what runs by the clock, by the day for the rest.
func (d Due) ByWords(now time.Time, zone *time.Location) string {
	if d.Kind.Timed() {
		return unit.When(d.By, now, zone)
	}
	day := unit.DateOf(d.By.In(zone))
	if day.Year() == now.In(zone).Year() {
		return day.Short()
	}
	return day.Long()
}

// Step names a step of the walk.
type DueStep string

// dueSteps is the step on which each kind of due is met.
var dueSteps = [dueKinds]DueStep{
	DueWhite: "white", DueLookAgain: "bleeding", DueLook: "bleeding", DueGraft: "measure",
	DueAfterLook: "seal-check", DueReseal: "reseal", DueEarwigs: "ring-again", DueStake: "stake",
	DueBuds: "visit", DueConfirmTake: "visit", DueSprouts: "sprouts", DueKeepSprouts: "keep-sprouts",
	DueLeader: "leader", DueTie: "tie", DuePinch: "pinch", DueTwine: "twine",
	DueSeasonsEnd: "seasons-end", DueTiesOff: "ties-off", DueHeadBack: "head-back", DueSecondShootOff: "second-shoot",
	DueNurseLimbsOff: "nurse-limbs-off", DueTwineCheck: "twine-check", DueCutTwine: "cut-twine", DueRegraft: "ended",
}

// Step is the step on which the kind is met.
func (k DueKind) Step() DueStep { return dueSteps[k] }
