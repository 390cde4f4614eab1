package record

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Finding is what a visit found on one graft.
type Finding struct {
	Slot    int
	State   GraftState
	Cause   string  // of death
	Scratch Scratch // under scratched bark, if it was tried
	Shoot   Measure // length of its longest shoot, if measured
}

// Visited is a visit to the grafts of a stump, one finding each.
type Visited struct{ Found []Finding }

// Kind is visited.
func (*Visited) Kind() string { return "visited" }

// Say is the answer in a few words.
func (b *Visited) Say(sys unit.System) string {
	var words []string
	for _, f := range b.Found {
		word := fmt.Sprintf("%d %s", f.Slot, StateWord(f.State))
		if f.State == Dead && f.Cause != "" {
			word += ", " + f.Cause
		}
		if f.Scratch != "" {
			word += ", " + string(f.Scratch) + " under the bark"
		}
		if f.Shoot.Given() {
			word += ", shoot " + sys.Length(f.Shoot.Length)
		}
		words = append(words, word)
	}
	return "graft " + strings.Join(words, "; ")
}

func (b *Visited) fields(f fields) {
	listOf(f, "found", &b.Found, func(g *Finding, f fields) {
		f.number("slot", &g.Slot)
		word(f, "state", &g.State)
		f.text("cause", &g.Cause)
		word(f, "scratch", &g.Scratch)
		f.length("shoot", &g.Shoot)
	})
}

func (b *Visited) check() error {
	for _, g := range b.Found {
		err := errors.Join(oneOf("state", g.State, false, GraftStates...), oneOf("scratch", g.Scratch, true, Green, Brown))
		if err != nil {
			return err
		}
	}
	return nil
}

func (b *Visited) apply(_ *Stump, a *Attempt, e Event) { a.Visits = append(a.Visits, said(e, *b)) }

func (*Visited) cause(a *Attempt) cause { return a.wasSet() }

func (b *Visited) onGrafts(a *Attempt, _ time.Time) error {
	for _, f := range b.Found {
		if a.Graft(f.Slot) == nil {
			return fmt.Errorf("no scion was set in slot %d", f.Slot)
		}
	}
	return nil
}

// fare: a graft seen dead is lost.
func (b *Visited) fare(c *course) {
	for _, f := range b.Found {
		if _, set := c.grafts[f.Slot]; set {
			c.grafts[f.Slot] = f.State
		}
	}
}

// goesWith: at season's end the grafts are seen as well.
func (*Visited) goesWith(first Body) bool { _, ok := first.(*SeasonsEnd); return ok }

// SproutsRubbed is stock sprouts taken off: near the graft and lower down.
type SproutsRubbed struct {
	Near  int    // rubbed near the graft
	Below int    // rubbed lower down
	Leaf  string // leaf left below: none, little, some, much
}

// Kind is sprouts-rubbed.
func (*SproutsRubbed) Kind() string { return "sprouts-rubbed" }

// Say is the answer in a few words.
func (b *SproutsRubbed) Say(_ unit.System) string {
	words := fmt.Sprintf("sprouts rubbed, %d near", b.Near)
	if b.Below > 0 {
		words += fmt.Sprintf(", %d below", b.Below)
	}
	return words + saidIf(b.Leaf != "", ", leaf below "+b.Leaf)
}

func (b *SproutsRubbed) fields(f fields) {
	f.number("near", &b.Near)
	f.number("below", &b.Below)
	f.text("leaf", &b.Leaf)
}

// Told says whether both was told: what was near the graft, and below it.
func (b SproutsRubbed) Told() bool { return b.Leaf != "" || b.Below > 0 }

func (b *SproutsRubbed) check() error { return oneOf("leaf", b.Leaf, true, Leaves...) }

func (b *SproutsRubbed) apply(_ *Stump, a *Attempt, e Event) {
	a.Rubbed = append(a.Rubbed, said(e, *b))
}

func (*SproutsRubbed) cause(a *Attempt) cause { return a.wasCutBack() }

// SproutsKept is stock sprouts left to grow because every graft is dead.
type SproutsKept struct{ Number int }

// Kind is sprouts-kept.
func (*SproutsKept) Kind() string { return "sprouts-kept" }

// Say is the answer in a few words.
func (b *SproutsKept) Say(_ unit.System) string {
	return unit.Count(b.Number, "sprout") + " kept"
}

func (b *SproutsKept) fields(f fields) { f.number("number", &b.Number) }

func (*SproutsKept) question() string { return "sprouts-kept" }

func (b *SproutsKept) apply(_ *Stump, a *Attempt, e Event) { a.Kept = standing(e, *b) }

func (*SproutsKept) cause(a *Attempt) cause { return a.wasSet() }

// Failed is a stump on which no graft lives, with the cause as judged.
type Failed struct{ Cause string }

// Kind is failed.
func (*Failed) Kind() string { return "failed" }

// Say is the answer in a few words.
func (b *Failed) Say(_ unit.System) string {
	return "failed: " + b.Cause
}

func (b *Failed) fields(f fields) { f.text("cause", &b.Cause) }

func (*Failed) question() string { return "failed" }

func (b *Failed) check() error { return oneOf("cause", b.Cause, false, trade.Causes...) }

func (b *Failed) apply(_ *Stump, a *Attempt, e Event) { a.Failed = standing(e, *b) }

func (*Failed) fare(c *course) { c.over = true }

// goesWith: the last graft was seen dead, or the season ended with none alive.
func (*Failed) goesWith(first Body) bool {
	switch first.(type) {
	case *Visited, *SeasonsEnd:
		return true
	}
	return false
}

// SeasonsEnd is how the stump stood when the season ended.
type SeasonsEnd struct {
	Alive int    // grafts alive
	Word  string // strong, fair, weak, dead
}

// SeasonWords lists how a stump may end a season.
var SeasonWords = []string{"strong", "fair", "weak", "dead"}

// Kind is seasons-end.
func (*SeasonsEnd) Kind() string { return "seasons-end" }

// Say is the answer in a few words.
func (b *SeasonsEnd) Say(_ unit.System) string {
	return "season's end, " + b.Word + saidIf(b.Alive > 0, fmt.Sprintf(", %d alive", b.Alive))
}

func (b *SeasonsEnd) fields(f fields) {
	f.number("alive", &b.Alive)
	f.text("word", &b.Word)
}

func (b *SeasonsEnd) check() error { return oneOf("word", b.Word, true, SeasonWords...) }

func (b *SeasonsEnd) apply(_ *Stump, a *Attempt, e Event) { a.Seasons = append(a.Seasons, said(e, *b)) }

func (*SeasonsEnd) cause(a *Attempt) cause { return a.wasSet() }

// fare: a stump that ended the season dead has lost every graft.
func (b *SeasonsEnd) fare(c *course) {
	for slot := range c.grafts {
		if b.Word == "dead" {
			c.grafts[slot] = Dead
		}
	}
}
