package due

import (
	"fmt"

	"barkslip/core/trade"
)

// Kind is a kind of work that falls due on a stump. Its number is kept in the
// book's summaries: a number is never used for another kind.
type Kind uint8

// Step names the step of the walk on which work is met.
type Step string

// Work is all that is known of one kind: what it is called, while what it is
// asked, the rule that gives its times, what it says, the facts behind it and
// the step that meets it. Each kind has one, in its own file.
type Work struct {
	Kind  Kind
	Name  string // in kebab case, a verb or the thing to be done
	While phase  // the rule is asked only then
	Rule  rule
	Says  []string // what the due counts from, a sentence for each hint
	Facts []trade.Fact
	Step  Step
	Timed bool // it runs by the clock; the others run by whole days
}

// rule works out one kind of due from a record: none, one, or this season's and
// that of the years after.
type rule func(c *dueCase) []Due

// works lists every kind in the order in which they are done on one visit. To
// add a kind: a file with its number and its Work, and its row here.
func works() []*Work {
	return []*Work{
		&finish, &sealing, &white, &cutBack, &look, &lookAgain, &graft,
		&reseal, &afterLook, &earwigs, &buds, &confirmTake, &keepSprouts, &stake, &sprouts, &leader, &tie, &pinch, &cutTwine, &twine,
		&seasonsEnd, &tiesOff, &headBack, &secondShootOff, &nurseLimbsOff, &twineCheck, &untie, &regraft,
	}
}

// table has the works in order, byKind by their number, place the order of each.
var (
	table  []*Work
	byKind [256]*Work
	place  [256]int
)

func init() {
	table = works()
	for i, w := range table {
		if byKind[w.Kind] != nil {
			panic(fmt.Sprintf("%s and %s are both kind %d", byKind[w.Kind].Name, w.Name, w.Kind))
		}
		byKind[w.Kind], place[w.Kind] = w, i
	}
}

// work is what is known of the kind.
func (k Kind) work() *Work { return byKind[k] }

func (k Kind) String() string { return k.work().Name }

// Step is the step on which the kind is met.
func (k Kind) Step() Step { return k.work().Step }

// Timed says whether the kind runs by the clock.
func (k Kind) Timed() bool { return k.work().Timed }

// Before says whether the kind is done before another on one visit.
func (k Kind) Before(o Kind) bool { return place[k] < place[o] }

// Urgent says whether being late with it costs the graft within hours: it is
// said loudly, all else is late quietly.
func (k Kind) Urgent() bool { return k == White || k == Seal || k == Finish }

// Kinds lists the kinds in the order in which they are done on one visit.
func Kinds() []Kind {
	out := make([]Kind, len(table))
	for i, w := range table {
		out[i] = w.Kind
	}
	return out
}

// ParseKind reads the kebab-case name.
func ParseKind(s string) (Kind, bool) {
	for _, w := range table {
		if w.Name == s {
			return w.Kind, true
		}
	}
	return 0, false
}
