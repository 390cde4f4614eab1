package part

import (
	"errors"
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// Working is work in the background: what is written is on disk once it is over. The
// screens stay usable meanwhile.
type Working struct {
	Far  func() string       // how far it is, in a sentence
	Over func() (Msgs, bool) // what came of it, once it is over
}

// atOnce is how long something written may take before the screens go on without it.
const atOnce = 250 * time.Millisecond

// ErrWorking refuses a second change of all stumps while the first is under way.
var ErrWorking = errors.New("the last change is still being worked out; try again in a moment")

// AnswerLater writes one thing that belongs to no stump, as a setting of which the dues of
// all stumps depend. Where that takes long the screens go on meanwhile, and then is done
// once it is on disk.
func (x *Session) AnswerLater(body record.Body, at time.Time, then func() Msgs) (Msgs, error) {
	if x.later {
		return nil, ErrWorking
	}
	events, err := x.Book.Folded().Answer(record.Given{Bodies: []record.Body{body}, At: at})
	if err == nil {
		err = x.sign(events)
	}
	if err != nil {
		return nil, err
	}
	type written struct {
		out due.Appended
		err error
	}
	done := make(chan written, 1)
	book := x.Book
	go func() {
		out, err := book.Append(events...)
		done <- written{out, err}
	}()
	over := func(w written) (Msgs, error) {
		x.later = false
		if w.err != nil {
			return nil, w.err
		}
		x.answered(w.out)
		x.acted(w.out.Events)
		return then(), nil
	}
	if x.spoken { // line by line one thing follows the other
		return over(<-done)
	}
	select {
	case w := <-done:
		return over(w)
	case <-time.After(atOnce):
	}
	x.later = true
	return Msgs{Working{
		Far: x.workWords,
		Over: func() (Msgs, bool) {
			select {
			case w := <-done:
				msgs, err := over(w)
				return msgs.And(Fails(err)...), true
			default:
				return nil, false
			}
		},
	}}, nil
}

// workWords are how far the summaries are that are being made.
func (x *Session) workWords() string {
	if x.Work != nil {
		if done, of := x.Work(); of > 0 {
			return fmt.Sprintf("Working out what is due: %d of %d stumps. Look round meanwhile; an answer waits for it.", done, of)
		}
	}
	return "Saving what was changed. Look round meanwhile; an answer waits for it."
}
