package part

import (
	"time"

	"barkslip/core/practice"
)

// Learners keep what each person did in practice, a file each, apart from every book.
// What is said by Learner is of a file that could not be read and was set aside, by All
// of those left out.
type Learners interface {
	Learner(initials string) (of *practice.Learner, said string, err error)
	Keep(*practice.Learner) error
	All() (all []*practice.Learner, said []string, err error)
}

// PracticeFirst is how practice is opened first.
type PracticeFirst struct {
	Only    bool           // there is nothing beneath it
	Seed    *uint64        // of the first case, or of the sign-off; those after it follow; nil for chance
	Skill   practice.Skill // asked alone; 0 for all
	SignOff bool
}

// Life is a life walked in practice: its clock goes on by a key.
type Life interface {
	GoOn() string
	Now() time.Time
}

// TimeOn is the row of the key that has the time go on, in a life alone.
func (x *Session) TimeOn() []Row {
	if x.Life == nil {
		return nil
	}
	return []Row{ToTimeOn.Row(x.GoOn)}
}

// GoOn has the clock of a life go on.
func (x *Session) GoOn() Msgs {
	if !x.Earlier.IsZero() {
		return Says("Answers are for an earlier time; t ends that first.")
	}
	said := x.Life.GoOn()
	return Msgs{Reload{}, Say{said}}
}

// toPractice goes to practice; out of a life, back to it.
func (x *Session) toPractice() Msgs {
	if x.Life != nil && x.Own != nil {
		return OtherBook(x.Own, "")
	}
	return Msgs{Practice{}}
}
