package part

import (
	"crypto/rand"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/results"
	"barkslip/core/tally"
	"barkslip/core/walk"
	"barkslip/ui/paper"
)

// Session is what all screens work in: the book and the world, the window, whose
// hand it is, the time answers are for, and the block.
type Session struct {
	Options
	Theme   paper.Theme
	Width   int
	Height  int
	Hand    string
	Earlier time.Time // an earlier time answers are given for; zero for now
	Block   record.ID // the block the screens are on
	Clocks  Clocks
	Only    *Only // the stumps the screens keep to; see OnlyHere

	spoken          bool       // told in words alone; see Speak
	later           bool       // a change of all stumps is under way; see AnswerLater
	trouble         error      // see Trouble
	before, earlier walk.Habit // of the stump worked last, and the one before it
	staked          *stake
	odds            tally.Odds // of the block; reckoned once it is opened
	oddsFor         record.ID
	sums            sums
	acts            acts
	used            map[record.ID]int // see Used
	told            map[record.StumpID]toldAs
	results         *results.Columns // see Results
	resultsFor      record.ID
}

// NewSession begins a session on a window of the least full size.
func NewSession(o Options) *Session {
	if o.Tick == nil {
		o.Tick = o.Now
	}
	if o.Random == nil {
		o.Random = rand.Reader
	}
	x := &Session{Options: o, Width: FullWidth, Height: FullHeight, Hand: o.Prefs.Hand}
	x.SetTheme(o.Prefs.Theme)
	x.Clocks.refresh(x)
	return x
}

// Time is the time the screens see: the clock, or the earlier time set.
func (x *Session) Time() time.Time {
	if !x.Earlier.IsZero() {
		return x.Earlier
	}
	return x.Now()
}

// Site is the block the screens are on, nil in an empty book.
func (x *Session) Site() *record.Block { return x.Book.Folded().Blocks[x.Block] }

// Write gives events their hand and puts them on disk in one transaction, as one
// act. Screens show the records as the book gives them back.
func (x *Session) Write(events ...record.Event) (due.Appended, error) {
	if err := x.sign(events); err != nil {
		return due.Appended{}, err
	}
	out, err := x.Book.Append(events...)
	if err != nil {
		return out, err
	}
	x.answered(out)
	x.acted(out.Events)
	return out, nil
}

// sign gives events their hand, where anything may be written.
func (x *Session) sign(events []record.Event) error {
	if x.Looking() {
		return ErrLooking
	}
	for i := range events {
		events[i].At = events[i].At.Truncate(time.Second)
		events[i].Hand = x.Hand
	}
	return nil
}

// Answer writes one thing that belongs to no stump.
func (x *Session) Answer(body record.Body, at time.Time) error {
	events, err := x.Book.Folded().Answer(record.Given{Bodies: []record.Body{body}, At: at})
	if err == nil {
		_, err = x.Write(events...)
	}
	return err
}

// Given is an answer of now, or of the earlier time set.
func (x *Session) Given(bodies ...record.Body) record.Given {
	return record.Given{Bodies: bodies, At: x.Time(), Hand: x.Hand, Earlier: !x.Earlier.IsZero(), Zone: x.Site().Zone}
}

// Trouble is an error met in reading the book for what is shown since it was
// last asked; nil for none.
func (x *Session) Trouble() error {
	err := x.trouble
	x.trouble = nil
	return err
}

// SetTheme sets the inks by the theme's name.
func (x *Session) SetTheme(name string) {
	x.Prefs.Theme = name
	if x.NoColour {
		name = "plain"
	}
	x.Theme = paper.ThemeNamed(name)
}

// SwitchTheme goes from dark to sunlight or back.
func (x *Session) SwitchTheme() Msgs {
	name := "sunlight"
	if x.Prefs.Theme == name {
		name = "dark"
	}
	x.SetTheme(name)
	return Says("Theme: " + name + ".").And(x.keepPrefs()...)
}

// SwitchCoach has the coach speak or be silent.
func (x *Session) SwitchCoach() Msgs {
	x.Prefs.Coach = !x.Prefs.Coach
	said := "Coach off."
	if x.Prefs.Coach {
		said = "Coach on."
	}
	return Says(said).And(x.keepPrefs()...)
}

// keepPrefs keeps hand, theme and coach for the next start; a laptop that cannot
// keep them is told once and goes on.
func (x *Session) keepPrefs() Msgs {
	if x.SavePrefs == nil {
		return nil
	}
	return Fails(x.SavePrefs(x.Prefs))
}

// Odds is the block's odds, reckoned once for each time a block is opened.
func (x *Session) Odds() tally.Odds {
	if x.oddsFor != x.Block {
		x.odds, x.oddsFor = plan.OddsOf(x.Summaries(x.Block)), x.Block
	}
	return x.odds
}

// Typed is a text as it was typed, cleaned and without space around it.
func Typed(text string) string { return strings.TrimSpace(record.Clean(text)) }
