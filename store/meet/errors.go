package meet

import (
	"errors"
	"fmt"

	"barkslip/store"
)

// The kinds of things that can be wrong with a meeting; what is told is a sentence that
// wraps one.
var (
	ErrNoServer  = errors.New("nobody answers")
	ErrKeptOut   = errors.New("the server does not let this computer in")
	ErrNoJournal = errors.New("the server keeps no journals")
	ErrNotOurs   = errors.New("the stream is no crew's journal")
	ErrOtherCrew = errors.New("the journal is another crew's")
	ErrTooLarge  = errors.New("the server takes no message of this size")
	ErrFullThere = errors.New("the server has no room")
	ErrMadeUp    = errors.New("made-up records are not sent")
)

// problem is one sentence somebody can act on; errors.Is finds its kind and its cause.
type problem struct {
	kind, cause error
	text        string
}

func (p *problem) Error() string   { return p.text }
func (p *problem) Unwrap() []error { return []error{p.kind, p.cause} }

func trouble(kind, cause error, format string, args ...any) error {
	if cause == nil {
		cause = kind
	}
	return &problem{kind, cause, fmt.Sprintf(format, args...)}
}

// PassedOver is a message, or a line of one, that was passed over.
type PassedOver struct {
	Message uint64 // its number in the crew's journal, from 1
	Err     error
}

func (p *PassedOver) Error() string {
	var line *store.LineError
	if errors.As(p.Err, &line) {
		return fmt.Sprintf("message %d of the crew's journal, %v; it is passed over", p.Message, p.Err)
	}
	return fmt.Sprintf("message %d of the crew's journal is passed over: %v", p.Message, p.Err)
}

// Unwrap gives what is wrong with it.
func (p *PassedOver) Unwrap() error { return p.Err }
