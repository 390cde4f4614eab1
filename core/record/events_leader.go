package record

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/unit"
)

// Staked is a stake set beside the stump.
type Staked struct {
	Height Measure      // of the stake's top above the graft
	Side   unit.Bearing // of the stump on which it stands
}

// Kind is staked.
func (*Staked) Kind() string { return "staked" }

// Say is the answer in a few words.
func (b *Staked) Say(sys unit.System) string {
	return "staked " + sys.Length(b.Height.Length) + " on the " + b.Side.Point() + " side"
}

func (b *Staked) fields(f fields) {
	f.length("height", &b.Height)
	f.bearing("side_deg", &b.Side)
}

func (*Staked) question() string { return "stake" }

func (b *Staked) apply(_ *Stump, a *Attempt, e Event) { a.Stake = standing(e, *b) }

func (*Staked) cause(a *Attempt) cause { return a.wasSet() }

// LeaderChosen is the shoot that becomes the tree.
type LeaderChosen struct {
	Slot  int
	Shoot string // which shoot of the graft: upper, lower, second
}

// Kind is leader-chosen.
func (*LeaderChosen) Kind() string { return "leader-chosen" }

// Say is the answer in a few words.
func (b *LeaderChosen) Say(_ unit.System) string {
	return fmt.Sprintf("leader from graft %d", b.Slot) + saidIf(b.Shoot != "", ", "+b.Shoot+" shoot")
}

func (b *LeaderChosen) fields(f fields) {
	f.number("slot", &b.Slot)
	f.text("shoot", &b.Shoot)
}

func (*LeaderChosen) question() string { return "leader" }

func (b *LeaderChosen) apply(_ *Stump, a *Attempt, e Event) { a.Leader = standing(e, *b) }

func (*LeaderChosen) cause(a *Attempt) cause { return a.wasSet() }

func (b *LeaderChosen) onGrafts(a *Attempt, at time.Time) error { return a.canLead(b.Slot, at) }

// Pinched is the tips of the rivals pinched.
type Pinched struct{}

// Kind is pinched.
func (*Pinched) Kind() string { return "pinched" }

// Say is the answer in a few words.
func (b *Pinched) Say(_ unit.System) string {
	return strings.ReplaceAll(b.Kind(), "-", " ")
}

func (*Pinched) fields(fields) {}

func (b *Pinched) apply(_ *Stump, a *Attempt, e Event) { a.Pinches = append(a.Pinches, said(e, *b)) }

func (*Pinched) cause(a *Attempt) cause { return a.wasSet() }

// Tied is the leader tied to its stake.
type Tied struct {
	Shoot  Measure // length of the leader, from the graft to its tip
	Broken bool    // it is shorter than before because wind or a bird broke it
}

// Kind is tied.
func (*Tied) Kind() string { return "tied" }

// Say is the answer in a few words.
func (b *Tied) Say(sys unit.System) string {
	if !b.Shoot.Given() {
		return "tied, not measured"
	}
	return "tied, shoot " + sys.Length(b.Shoot.Length) + saidIf(b.Broken, ", tip broken")
}

func (b *Tied) fields(f fields) {
	f.length("shoot", &b.Shoot)
	f.flag("broken", &b.Broken)
}

func (b *Tied) apply(_ *Stump, a *Attempt, e Event) { a.Ties = append(a.Ties, said(e, *b)) }

func (*Tied) cause(a *Attempt) cause { return a.wasSet() }

// LeaderBroken is the leader lost and another promoted.
type LeaderBroken struct {
	Cause    string
	Promoted int    // slot of the graft promoted, 0 if none is left
	Shoot    string // which of its shoots
}

// Kind is leader-broken.
func (*LeaderBroken) Kind() string { return "leader-broken" }

// Say is the answer in a few words.
func (b *LeaderBroken) Say(_ unit.System) string {
	words := "leader broken" + saidIf(b.Cause != "", ", "+b.Cause)
	if b.Promoted > 0 {
		words += fmt.Sprintf(", graft %d", b.Promoted) + saidIf(b.Shoot != "", " "+b.Shoot) + " takes over"
	}
	return words
}

func (b *LeaderBroken) fields(f fields) {
	f.text("cause", &b.Cause)
	f.number("promoted", &b.Promoted)
	f.text("shoot", &b.Shoot)
}

func (b *LeaderBroken) apply(_ *Stump, a *Attempt, e Event) { a.Broken = append(a.Broken, said(e, *b)) }

func (*LeaderBroken) cause(a *Attempt) cause { return a.wasLed() }

func (b *LeaderBroken) onGrafts(a *Attempt, at time.Time) error {
	if b.Promoted == 0 {
		return nil
	}
	return a.canLead(b.Promoted, at)
}
