package ui

import (
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/tally"
	"barkslip/core/walk"
	"barkslip/ui/paper"
)

// shared is what all screens share.
type shared struct {
	Options
	theme  paper.Theme
	width  int
	height int
	hand   string
	at     time.Time // an earlier time answers are given for; zero for now
	block  record.ID // the block the screens are on
	said   string    // the last thing done or wrong, in the message line
	wrong  bool      // said is an error
	guard  guard
	clocks clocks

	pressed pressed // the digit pressed last on a stump

	before, earlier walk.Habit // of the stump worked last, and the one before it
	odds            tally.Odds // of the block; reckoned once it is opened
	oddsFor         record.ID
	sums            sums
}

// pressed is the digits pressed on a stump one close behind the other, and what
// was taken for them.
type pressed struct {
	key    string
	at     time.Time
	events []record.Event
}

// then is one more key pressed.
func (p pressed) then(key string, at time.Time) pressed {
	if p.key == "" || at.Sub(p.at) > placeSpan || key == "enter" {
		p = pressed{}
	}
	if key != "enter" {
		p.key += key
	}
	p.at = at
	return p
}

// placeSpan is how soon a slash must follow a digit for the two to be the
// beginning of a place, 4/17, and not an answer and a key.
const placeSpan = 600 * time.Millisecond

// now is the time the screens see: the clock, or the earlier time set.
func (x *shared) now() time.Time {
	if !x.at.IsZero() {
		return x.at
	}
	return x.Now()
}

func (x *shared) say(s string) { x.said, x.wrong = s, false }

// fail shows an error as one plain sentence.
func (x *shared) fail(err error) {
	x.said, x.wrong = strings.TrimSpace(err.Error()), true
}

// site is the block the screens are on, nil in an empty book.
func (x *shared) site() *record.Block { return x.Book.Folded().Blocks[x.block] }

// write gives events their hand and stump and puts them on disk in one
// transaction. Screens read the record anew only after it returns.
func (x *shared) write(stump record.StumpID, events ...record.Event) (due.Appended, error) {
	for i := range events {
		events[i].At = events[i].At.Truncate(time.Second)
		events[i].Hand, events[i].Stump = x.hand, stump
	}
	out, err := x.Book.Append(events...)
	if err != nil {
		return due.Appended{}, err
	}
	x.answered(out)
	return out, nil
}

// savePrefs keeps hand, theme and coach for the next start; a laptop that
// cannot keep them is told once and goes on.
func (x *shared) savePrefs() {
	if x.SavePrefs == nil {
		return
	}
	if err := x.SavePrefs(x.Prefs); err != nil {
		x.fail(err)
	}
}

func (x *shared) setTheme(name string) {
	x.Prefs.Theme = name
	if x.NoColour {
		name = "plain"
	}
	x.theme = paper.ThemeNamed(name)
}

// oddsOf is the block's odds, reckoned once for each time a block is opened.
func (x *shared) oddsOf() tally.Odds {
	if x.oddsFor != x.block {
		x.odds, x.oddsFor = plan.OddsOf(x.summaries(x.block)), x.block
	}
	return x.odds
}
