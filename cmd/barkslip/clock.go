package main

import (
	"strings"
	"time"

	"barkslip/store"
)

// clockVariable names the environment variable that sets the clock: a file that
// holds one RFC 3339 instant. It is read each time the time is asked, so a past
// day can be entered, and a test can move the time while the screens are open.
const clockVariable = "BARKSLIP_CLOCK"

// clock is the computer's clock, or that of a file.
func clock(file string) (func() time.Time, error) {
	if file == "" {
		return time.Now, nil
	}
	last, err := clockFile(file)
	if err != nil {
		return nil, err
	}
	return func() time.Time {
		if t, err := clockFile(file); err == nil { // half-written: the time before still holds
			last = t
		}
		return last
	}, nil
}

// mostClock is how long a clock file may be, in bytes.
const mostClock = 4 << 10

func clockFile(file string) (time.Time, error) {
	text, err := store.ReadPlain(file, mostClock)
	if err != nil {
		return time.Time{}, mistaken(clockVariable, file, "a file that holds one instant such as 2027-05-04T14:30:00-07:00")
	}
	t, err := parseInstant(strings.TrimSpace(string(text)))
	if err != nil {
		return time.Time{}, mistaken(clockVariable, strings.TrimSpace(string(text)), "in the file, "+accepts(err))
	}
	return t, nil
}

// clockOf is the time as a book has it. A made-up book has a day of its own,
// on which its block is being grafted; a clock that was set goes before it.
func (a *app) clockOf(book *store.Book) func() time.Time {
	if a.set {
		return a.clock
	}
	return func() time.Time { return a.clock().Add(book.Apart()) }
}

// ownDay says whether a book goes by a day of its own.
func (a *app) ownDay(book *store.Book) bool { return !a.set && book.Apart() != 0 }
