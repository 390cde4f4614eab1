package due

import (
	"cmp"
	"slices"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// DueKind is a kind of work that falls due on a stump.
type Kind uint8

// The kinds, in the order in which they are done on one visit: white first.
const (
	White Kind = iota
	LookAgain
	Look
	Graft
	AfterLook
	Reseal
	Earwigs
	Stake
	Buds
	ConfirmTake
	Sprouts
	KeepSprouts
	Leader
	Tie
	Pinch
	Twine
	SeasonsEnd
	TiesOff
	HeadBack
	SecondShootOff
	NurseLimbsOff
	TwineCheck
	CutTwine
	Regraft
	kinds
)

var names = [kinds]string{
	"white", "look-again", "look", "graft", "after-look", "reseal", "earwigs", "stake", "buds", "confirm-take",
	"sprouts", "keep-sprouts", "leader", "tie", "pinch", "twine", "seasons-end", "ties-off", "head-back",
	"second-shoot-off", "nurse-limbs-off", "twine-check", "cut-twine", "regraft",
}

func (k Kind) String() string { return names[k] }

// DueKinds lists the kinds.
func Kinds() []Kind {
	out := make([]Kind, kinds)
	for i := range out {
		out[i] = Kind(i)
	}
	return out
}

// ParseDueKind reads the kebab-case name.
func ParseKind(s string) (Kind, bool) {
	i := slices.Index(names[:], s)
	return Kind(max(i, 0)), i >= 0
}

// Timed says whether the kind runs by the clock; the others run by whole days.
func (k Kind) Timed() bool { return k == White || k == LookAgain || k == Look }

// Due is work a stump needs, from when it can be done to when it should have
// been. For kinds that run by days, Opens is the first instant of the day and
// By the last.
type Due struct {
	Stump record.StumpID
	Kind  Kind
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
func Of(s *record.Stump, b *record.Block) []Due {
	c := newDueCase(s, b)
	out := make([]Due, 0, 16)
	for kind, row := range rules {
		if c.kind = Kind(kind); c.in(row.while) {
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
type Step string

// dueSteps is the step on which each kind of due is met.
var dueSteps = [kinds]Step{
	White: "white", LookAgain: "bleeding", Look: "bleeding", Graft: "measure",
	AfterLook: "seal-check", Reseal: "reseal", Earwigs: "ring-again", Stake: "stake",
	Buds: "visit", ConfirmTake: "visit", Sprouts: "sprouts", KeepSprouts: "keep-sprouts",
	Leader: "leader", Tie: "tie", Pinch: "pinch", Twine: "twine",
	SeasonsEnd: "seasons-end", TiesOff: "ties-off", HeadBack: "head-back", SecondShootOff: "second-shoot",
	NurseLimbsOff: "nurse-limbs-off", TwineCheck: "twine-check", CutTwine: "cut-twine", Regraft: "ended",
}

// Step is the step on which the kind is met.
func (k Kind) Step() Step { return dueSteps[k] }
