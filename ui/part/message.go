package part

import (
	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// Msg is what a screen wants of the router. Screens return messages; none
// reaches into the router or into another screen.
type Msg any

// Msgs are messages in the order in which they are to be done.
type Msgs []Msg

// The messages. Working is one too.
type (
	// Say puts a text in the message line; the empty text clears it.
	Say struct{ Text string }
	// Fail puts an error in the message line.
	Fail struct{ Err error }
	// Warn puts a text in the message line that must not be overlooked.
	Warn struct{ Text string }
	// NoUse says that the key does nothing here, or Why in its place, until the next
	// key.
	NoUse struct{ Why string }

	// Back takes off what lies on top: a prompt, list or page, else the screen.
	Back struct{}
	// Quit leaves the program.
	Quit struct{}
	// Reload brings the screen that is up in step with the book and the clock.
	Reload struct{}

	// Ask lays a prompt for one line of text over the screen.
	Ask struct{ Prompt *Prompt }
	// PickList lays a list over the screen.
	PickList struct{ List *List }
	// Read lays a page of text over the screen.
	Read struct{ Page *Page }

	// Open opens a stump, at the step that meets the dues if some are given.
	Open struct {
		Stump record.StumpID
		Dues  []due.Due
	}
	// Next goes to the next stump that needs work after one.
	Next struct {
		After  record.StumpID
		AtHand bool // the one after which is under the cursor and counts too
	}
	// NextClash goes to the next stump behind one on which answers disagree.
	NextClash struct{ After record.StumpID }
	// Leave leaves a stump as it is: back to the round, or on to the next.
	Leave struct{ Stump record.StumpID }
	// Wrote tells that answers were put on disk.
	Wrote struct{}

	// Rounds goes to what is due.
	Rounds struct{}
	// Wood goes to the lots of scion wood.
	Wood struct{}
	// Lot goes to one lot: what is known of it and where it went.
	Lot struct{ Lot record.ID }
	// FollowLot goes through the stumps on which scions of a held lot live, from one
	// of them on, or from the first where that is none.
	FollowLot struct {
		Lot  record.ID
		From record.StumpID
	}
	// ShowStumps goes to the block and marks some of its stumps; Title says which they
	// are, as in "12 of 240 are of lot L-27".
	ShowStumps struct {
		Title  string
		Stumps []record.StumpID
	}
	// Changes goes to what was done since a day.
	Changes struct{}
	// Plan goes to pace and supplies.
	Plan struct{}
	// Tally goes to what took, what stands and what was lost to what.
	Tally struct{}
	// Mark goes to the block with some stumps shown and the others as dots.
	Mark struct {
		What   string // which they are, as "of lot 3"
		Stumps map[record.StumpID]bool
	}
	// Sheets asks which sheet of paper is wanted.
	Sheets struct {
		On  unit.Date // 0: today
		Row int       // 0: all rows
		// Text writes what is up as plain text; nil where that is no text
		Text func() Msgs
	}
	// Words shows what the marks and the words of the trade mean.
	Words struct{}
	// Weather goes to the block's weather.
	Weather struct{}
	// NewBlock goes to the questions that begin a block.
	NewBlock struct{}
	// OpenBlock goes to a block and leaves all that lies over it.
	OpenBlock struct{ Block record.ID }
	// MeetNow tells that the book meets its crew because somebody asked: what came of it
	// is said.
	MeetNow struct{}
	// Practice goes to practice, which has nothing to do with the book.
	Practice struct{}
	// Restart starts anew on a book that has changed as a whole.
	Restart struct{}
	// Reopen starts anew on another book.
	Reopen struct{ Options Options }
)

// Says is the message of a text.
func Says(text string) Msgs { return Msgs{Say{text}} }

// Fails is the message of an error; none for nil.
func Fails(err error) Msgs {
	if err == nil {
		return nil
	}
	return Msgs{Fail{err}}
}

// And is messages with more behind them.
func (m Msgs) And(more ...Msg) Msgs { return append(m[:len(m):len(m)], more...) }
