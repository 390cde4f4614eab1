package main

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"time"

	"barkslip/store"
	"barkslip/store/meet"
	"barkslip/ui/part"
)

// meter has a book meet its crew in the background while the screens are open.
type meter struct {
	book *store.Book
	wake chan struct{}
	stop context.CancelFunc
	done chan struct{}

	mu   sync.Mutex
	crew part.Crew
	met  part.Met
	sent int // records that the journal had when they met last
}

// mostPassed is how many things that were passed over are kept to be read.
const mostPassed = 50

// newMeter begins to meet, where a crew is set.
func newMeter(book *store.Book, crew part.Crew) *meter {
	ctx, stop := context.WithCancel(context.Background())
	m := &meter{book: book, wake: make(chan struct{}, 1), stop: stop, done: make(chan struct{}), crew: crew}
	go m.run(ctx)
	return m
}

// close ends a meeting that is under way; what came and what went is kept.
func (m *meter) close() {
	m.stop()
	<-m.done
}

func (m *meter) run(ctx context.Context) {
	defer close(m.done)
	for next := time.NewTimer(0); ; next.Reset(meetEvery) {
		select {
		case <-ctx.Done():
			return
		case <-next.C:
		case <-m.wake:
			next.Stop()
		}
		if crew := m.Crew(); crew.Complete() {
			m.meet(ctx, crew)
		}
	}
}

// meet holds one meeting. A fault of the program in it is said; the screens go on.
func (m *meter) meet(ctx context.Context, set part.Crew) {
	defer func() {
		if p := recover(); p != nil {
			m.change(func(n *part.Met) {
				n.Busy, n.Far, n.Round, n.Err = false, "", n.Round+1, fmt.Errorf("a fault in the program; every answer recorded is safe: %v", p)
			})
		}
	}()
	m.change(func(n *part.Met) { n.Busy, n.Far = true, "" })
	crew, server, err := openedCrew(set)
	var report meet.Report
	if err == nil {
		report, err = meet.Meet(ctx, m.book, crew, server, meet.Options{Light: true, Tries: 1, Far: func(f meet.Far) {
			m.change(func(n *part.Met) { n.Far = strings.TrimPrefix(farWords(&f), ": ") })
		}})
	}
	place, _, failed := m.book.Meeting(crew.Mark())
	m.change(func(n *part.Met) {
		n.Busy, n.Far, n.Err, n.Report = false, "", err, reportWords(report)
		n.Round, n.Came = n.Round+1, n.Came+report.Came
		for _, passed := range report.Passed {
			if len(n.Passed) < mostPassed {
				n.Passed = append(n.Passed[:len(n.Passed):len(n.Passed)], passed)
			}
		}
		if err == nil {
			n.At = time.Now()
		}
		if failed == nil {
			m.sent = place.Met
		}
	})
}

func (m *meter) change(do func(*part.Met)) {
	m.mu.Lock()
	defer m.mu.Unlock()
	do(&m.met)
}

// Crew is the one that is set.
func (m *meter) Crew() part.Crew {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.crew
}

// Set sets the crew and meets it.
func (m *meter) Set(crew part.Crew) error {
	if err := checkCrew(crew); err != nil {
		return err
	}
	crew, err := keptCrew(crew)
	if err != nil {
		return err
	}
	m.mu.Lock()
	if crew != m.crew {
		m.crew, m.met, m.sent = crew, part.Met{Round: m.met.Round, Came: m.met.Came}, 0
	}
	m.mu.Unlock()
	m.Now()
	return nil
}

// NewKey makes a key for a crew; former ones stand behind it.
func (m *meter) NewKey(crew string) (string, error) { return newCrewKey(crew) }

// Now has the book meet at once.
func (m *meter) Now() {
	select {
	case m.wake <- struct{}{}:
	default: // it is about to
	}
}

// Met is how it stands. What is to be sent is counted without reading the book, which may
// be writing.
func (m *meter) Met() part.Met {
	m.mu.Lock()
	defer m.mu.Unlock()
	now := m.met
	events, _ := m.book.Count()
	now.ToSend = max(0, events-m.sent)
	return now
}

var _ part.Meeting = (*meter)(nil)

// meets says whether a book meets a crew: a made-up one does not.
func meets(book *store.Book) bool { return meet.CheckBook(book) == nil }
