package walk

import (
	"fmt"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/trade"
)

// Ask is a step's question on one stump at one moment, with its answers.
type Ask struct {
	Step     *Step
	Question string
	Because  string // why the program asks or thinks so, one plain sentence
	Warn     string // what must not be missed
	Choices  []Choice
	Likely   string // the key of the choice that Enter takes; "" where it must be seen first
	Entry    *Entry // where the answer is typed
	Checks   *CheckList
	Hand     *Handwork  // what is done at the scion in hand, where each thing is asked by itself
	Until    *time.Time // what it waits for
	Work     []trade.Worked
}

// Choice is one answer by one key. It gives events, asks for more, goes to
// another step, or leaves the stump.
type Choice struct {
	Key     string
	Word    string
	Meaning string
	Bodies  []record.Body
	Refines []record.ID // what was seen earlier on this visit and is said more exactly by Bodies: they replace it
	Entry   *Entry
	Go      StepID
	Leave   bool // on to the next stump
	Lots    bool // to the lots of scion wood, where one can be received
	Pick    PickList
	Picked  func(word string) []record.Body // what the word picked says; nil where the list itself tells
	Doubt   *Doubt                          // said before the answer is taken: its ways on stand in its place
}

// PickList is a list to pick from before the answer is whole.
type PickList int

// The lists.
const (
	PickNone   PickList = iota
	PickCause           // of loss
	PickReason          // for going against advice
)

// Entry is an answer that is typed.
type Entry struct {
	Asks   string // what is typed, in a few words
	Likely string // taken by Enter on an empty field; "" if there is none
	Text   bool   // any text: letters are never commands here
	Read   func(text string) ([]record.Body, error)
	// Refines is what was seen earlier on this visit and is said more exactly by
	// what is read: it is replaced.
	Refines []record.ID
}

// Doubt is an error of Entry.Read, or stands before a choice: what was answered
// can be, but is unlikely. The ways on are offered in place; answering again is
// always one.
type Doubt struct {
	Says string
	Ways []Choice
}

func (d *Doubt) Error() string { return d.Says }

// CheckList is things to be seen one by one. Enter says all are good; a digit
// marks the one that is not.
type CheckList struct {
	Items  []CheckItem
	Record func(good []bool) []record.Body
}

// CheckItem is one thing to see.
type CheckItem struct {
	Word, If string // If says what to do when it is not right
	Not      bool   // it was told already that it is not
}

// Ask puts the question of a step. again says that the step is asked again to
// correct what was answered.
func (c *Case) Ask(id StepID, again bool) Ask {
	step := stepByID(id)
	a := Ask{Step: step}
	c.again = again
	step.ask(c, &a)
	if a.Warn == "" && step.Part == PartGraft && c.AgainstToday() {
		against := record.Last(c.A.Against).What
		a.Warn = fmt.Sprintf("You went on against advice (%s). Your reason: %s.", strings.ReplaceAll(string(against.Verdict), "-", " "), against.Why)
		if c.Found.Bleeding != "" {
			a.Warn += fmt.Sprintf(" The face was %s at %s.", c.Found.Bleeding, c.when(c.Found.Looked))
		}
	}
	if a.Warn == "" && step.Part == PartAfter {
		a.Warn = c.forecast()
	}
	if len(a.Work) == 0 && len(c.A.Grafts) == 0 {
		a.Work = []trade.Worked{c.Advice.Work}
	}
	return a
}

func (a *Ask) choose(key, word, meaning string, bodies ...record.Body) {
	a.Choices = append(a.Choices, Choice{Key: key, Word: word, Meaning: meaning, Bodies: bodies})
}

func (a *Ask) choice(c Choice) { a.Choices = append(a.Choices, c) }
