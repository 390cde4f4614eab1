package store

import (
	"bytes"
	"errors"
	"math"
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
)

// Appended is the events as written and the stumps that they changed.
type Appended = due.Appended

// Append writes events at the end of the journal, all or none. Each gets a
// clock, and an id if it has none; those that belong to no act yet are one act
// together. It returns them as written, and the stumps they are about as they
// stand now. When Append returns without an error the events are on the disk; when
// it returns one, nothing was changed.
func (b *Book) Append(events ...record.Event) (Appended, error) {
	if len(events) == 0 {
		return Appended{}, nil
	}
	b.writing.Lock()
	defer b.writing.Unlock()
	var out Appended
	var done *change
	err := b.write(0.5, false, func(c *change) (err error) {
		if out.Events, err = b.made(events, c.now.head.clock); err != nil {
			return err
		}
		done, c.changed = c, map[record.StumpID]due.Changed{}
		for i, e := range out.Events {
			if err := c.append(e, events[i].ID != record.None); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return Appended{}, notKept(err, len(events))
	}
	for _, changed := range done.changed {
		out.Changed = append(out.Changed, changed)
	}
	slices.SortFunc(out.Changed, func(x, y due.Changed) int { return x.Stump.ID.Compare(y.Stump.ID) })
	return out, nil
}

// made gives events ids, clocks and an act, and brings each to what its line in an
// export says, so that a book can always be made again from its export.
func (b *Book) made(events []record.Event, clock uint64) ([]record.Event, error) {
	if clock > math.MaxInt64-uint64(len(events)) {
		return nil, problem(ErrRefused, nil, "the book %s has reached the end of its clock", b.path)
	}
	act, err := b.newID()
	if err != nil {
		return nil, err
	}
	out := make([]record.Event, len(events))
	ids := map[record.ID]bool{}
	for i, e := range events {
		e.Clock = clock + uint64(i) + 1
		if e.ID == record.None {
			id, err := b.newID()
			if err != nil {
				return nil, err
			}
			e.ID = id
		}
		if ids[e.ID] {
			return nil, problem(ErrRefused, nil, "two of the answers have the id %s", e.ID)
		}
		ids[e.ID] = true
		if e.Body == nil {
			return nil, problem(ErrRefused, nil, "the answer says nothing")
		}
		if _, foreign := e.Body.(*record.Foreign); e.Act == record.None && !foreign { // what is not known is passed on as it is
			e.Act = act
		}
		e.At = e.At.Truncate(time.Second)
		if err := record.Check(e); err != nil {
			return nil, problem(ErrRefused, err, "%s does not hold: %v", e.Body.Kind(), err)
		}
		read, err := record.ParseLine(record.Line(e))
		if err != nil {
			return nil, problem(ErrRefused, err, "%s does not hold: %v", e.Body.Kind(), err)
		}
		out[i] = read
	}
	return out, nil
}

// append puts one event. An id given by the caller must be new to its stump.
func (c *change) append(e record.Event, given bool) error {
	p, err := c.spot(e.Stump)
	if err != nil {
		return err
	}
	if given && c.has(p, e.ID) {
		return problem(ErrRefused, nil, "the id %s is in the journal already", e.ID)
	}
	return c.put(recordKey(p, e.Clock, e.ID), entryOf(e, record.Pack(nil, e)))
}

func (c *change) has(p spot, id record.ID) bool {
	for k := range rising(c.journal, p[:]) {
		if bytes.HasSuffix(k, id[:]) {
			return true
		}
	}
	return false
}

// notKept says in front of an error that the answers were not kept.
func notKept(err error, n int) error {
	var known *Error
	if !errors.As(err, &known) || known.Kind == ErrUnsure {
		return err
	}
	what := "the answer was not kept"
	if n > 1 {
		what = "the answers were not kept"
	}
	return problem(known.Kind, err, "%s: %s", what, known.Text)
}
