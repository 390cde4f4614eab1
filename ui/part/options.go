package part

import (
	"io"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/figure"
)

// Book is what the screens need of the book. Append returns only after the
// events are safely on disk; no screen shows an answer as taken before that.
type Book interface {
	Append(events ...record.Event) (due.Appended, error)
	Stump(record.StumpID) (*record.Stump, error)
	Summaries(block record.ID) ([]due.Summary, error)
	Events(record.StumpID) ([]record.Event, error)
	Folded() *record.Book
	Newest() time.Time
}

// Prefs are what a laptop remembers of its user; they are not part of the book.
type Prefs struct {
	Hand  string // initials
	Theme string
	Coach bool // show what to look for at every step
	Crew  Crew // whom the book meets
}

// Options wire the screens to the world.
type Options struct {
	Book      Book
	Now       func() time.Time // the clock answers are dated by
	Tick      func() time.Time // the clock keys are timed by; nil for Now
	Random    io.Reader        // nil for the system's
	Prefs     Prefs
	SavePrefs func(Prefs) error
	Plain     bool // plain characters instead of the finest dots
	NoColour  bool
	LocalZone string                                           // the laptop's zone by name, offered for a new block
	Zones     record.Zones                                     // finds a zone by name
	OpenFile  func(path string) (io.ReadCloser, error)         // for a block list
	SaveText  func(name, text string) (path string, err error) // writes a file for the user
	Stumps    int                                              // about how many the book has, over all blocks
	OwnDay    func() bool                                      // whether the book goes by a day of its own, as a made-up one
	EndOwnDay func() error                                     // has it go by the computer's clock from now on
	Sample    func() (Options, error)                          // opens the made-up book beside this one, made where there is none
	Own       func() (Options, error)                          // from the made-up book back to the user's own; nil in that
	Refresh   func() (newer bool, err error)                   // of a look: whether the book was seen to change; nil where this program has it
	Copies    func() ([]time.Time, error)                      // the days of the copies kept beside the book, the newest first, and why the last was not made; nil where none is kept
	Work      func() (done, of int)                            // how far the summaries are that a change makes anew; nil where nobody knows
	Meeting   Meeting                                          // how the book meets its crew's journal; nil where it meets nobody
	Learners  Learners                                         // what each person did in practice; nil where nothing of it is kept
	Practice  *PracticeFirst                                   // practice is opened first; nil where it is not
	Life      Life                                             // the life that is walked in practice; nil for a book as any
	Bell      func()                                           // rings once
	Input     io.Reader                                        // nil for the terminal
	Output    io.Writer                                        // nil for the terminal
}

// Mode is what figures are drawn with.
func (o Options) Mode() figure.Mode {
	if o.Plain {
		return figure.ASCII
	}
	return figure.Braille
}
