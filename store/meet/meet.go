package meet

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/store"
	"barkslip/store/ahead"
)

// Options are how a meeting is held.
type Options struct {
	Far   func(Far)     // told how far it is; nil: nobody asks
	Wait  time.Duration // how long a server may take for one answer; 0: 5 s
	Tries int           // how often it is begun again after the connection broke; 0: 3 times
	Light bool          // what comes goes into the book in small parts, so that answers given meanwhile need not wait
}

// Far is how far a meeting is.
type Far struct {
	Sending bool
	Done    int // messages taken, or events sent
	Of      int
}

// Report says what a meeting did.
type Report struct {
	Came     int         // events that were new here
	Sent     int         // events that were new there
	Left     int         // events still to be sent
	Clashing []record.ID // ids found with two contents
	Passed   []error     // what was passed over, each once: *PassedOver and *store.RefusedError
}

// Meet has a book and its crew's journal take from each other what each lacks. Up to the
// end of ctx, which is no error, and also where it fails, what came and what went is kept.
// Errors: ErrNoServer and the others of this package, those of the book, ErrDamaged among
// them where records of the book do not hold and were not sent.
func Meet(ctx context.Context, book *store.Book, crew Crew, server Server, o Options) (Report, error) {
	if o.Wait <= 0 {
		o.Wait = 5 * time.Second
	}
	if o.Tries <= 0 {
		o.Tries = 3
	}
	if o.Far == nil {
		o.Far = func(Far) {}
	}
	m := &meeting{book: book, crew: crew, mark: crew.Mark(), server: server, o: o, named: map[string]bool{}}
	if err := m.check(); err != nil {
		return m.report, err
	}
	err := m.hold(ctx)
	if ctx.Err() != nil && !errors.Is(err, store.ErrDamaged) {
		err = nil
	}
	if _, left, failed := book.Meeting(m.mark); failed == nil {
		m.report.Left = left
	}
	return m.report, err
}

// meeting is a meeting under way.
type meeting struct {
	book    *store.Book
	crew    Crew
	mark    store.CrewMark
	server  Server
	o       Options
	journal *journal
	opened  int // messages that could be opened
	closed  int // messages that are sealed with another key
	report  Report
	named   map[string]bool
}

func (m *meeting) check() error {
	if err := CheckName(m.crew.Name); err != nil {
		return err
	}
	if len(m.crew.Keys) == 0 {
		return errors.New("the crew has no key")
	}
	if err := CheckBook(m.book); err != nil {
		return err
	}
	return CheckURL(m.server.URL)
}

// CheckBook says why a book meets nobody: what is made up must not come among the records
// of a crew.
func CheckBook(b *store.Book) error {
	if b.Apart() != 0 {
		return trouble(ErrMadeUp, nil, "this book is made up and goes by a day of its own; made-up records are not sent to a crew")
	}
	for _, block := range b.Folded().Blocks {
		if block.MadeUp {
			return trouble(ErrMadeUp, nil, "this book holds a made-up block, %s; made-up records are not sent to a crew", block.Name)
		}
	}
	return nil
}

// hold meets, and begins again where the connection broke.
func (m *meeting) hold(ctx context.Context) (err error) {
	for try := range m.o.Tries + 1 {
		if try > 0 {
			select {
			case <-ctx.Done():
				return nil
			case <-time.After(time.Duration(try) * 300 * time.Millisecond):
			}
		}
		connected := false
		if m.journal, err = openJournal(ctx, m.crew, m.server, m.o.Wait); err == nil {
			connected = true
			err = m.journal.explain(m.exchange(ctx))
			m.journal.close()
		}
		if !errors.Is(err, ErrNoServer) || ctx.Err() != nil || try == 0 && !connected && !severalServers(m.server.URL) {
			return err
		}
	}
	return err
}

func severalServers(address string) bool { return strings.Contains(address, ",") }

// exchange takes what came, then sends what the journal lacks; where it has gone on
// meanwhile, again.
func (m *meeting) exchange(ctx context.Context) error {
	for {
		if err := m.takeAll(ctx); err != nil || ctx.Err() != nil {
			return err
		}
		err := m.sendAll(ctx)
		if !errors.Is(err, errNotTheEnd) {
			return err
		}
		if err := m.lookFurther(ctx); err != nil {
			return err
		}
	}
}

// How often a server is asked for the message that another came first with, and how long
// it is waited each time.
const (
	mostLooks = 100
	lookAfter = 50 * time.Millisecond
)

// lookFurther sees how far the journal has gone on.
func (m *meeting) lookFurther(ctx context.Context) error {
	for last, looks := m.journal.last, 0; ; looks++ {
		if err := m.journal.look(ctx); err != nil || m.journal.last > last {
			return err
		}
		if looks == mostLooks {
			return trouble(ErrNoServer, errNotTheEnd, "the servers at %s do not agree how far the journal goes; what came is kept", shownURL(m.server.URL))
		}
		select {
		case <-ctx.Done():
			return nil
		case <-time.After(lookAfter):
		}
	}
}

// mostAtOnce and lightAtOnce are how many bytes of messages are held before their events
// go into the book.
const mostAtOnce, lightAtOnce = 32 << 20, 256 << 10

// takeAll takes in all messages behind the book's place.
func (m *meeting) takeAll(ctx context.Context) error {
	place, err := m.place()
	if err != nil {
		return err
	}
	most := mostAtOnce
	if m.o.Light {
		most = lightAtOnce
	}
	for first := place.At; place.At < m.journal.last && ctx.Err() == nil; {
		var some []message
		size := 0
		err := m.journal.read(ctx, place.At, func(got message) bool {
			some, size = append(some, got), size+len(got.data)
			m.o.Far(Far{Done: int(got.number - first), Of: int(m.journal.last - first)})
			return size < most
		})
		end := m.journal.last
		if n := len(some); n > 0 && (err != nil || size >= most) {
			end = some[n-1].number
		} else if err != nil {
			return err
		}
		if failed := m.takeIn(ctx, place, some, end); failed != nil {
			return failed
		}
		if err != nil {
			return err
		}
		if place, _, err = m.book.Meeting(m.mark); err != nil {
			return err
		}
	}
	return nil
}

// place is the book's place in the journal. A journal that was made anew, or that has lost
// messages since, is met from the beginning.
func (m *meeting) place() (store.Place, error) {
	place, _, err := m.book.Meeting(m.mark)
	if err != nil || place.Made == 0 {
		return place, err
	}
	j := m.journal
	if place.Made != j.made || place.At > j.last || place.Lacks < j.lacks {
		if err := m.book.ForgetMeeting(m.mark); err != nil {
			return place, err
		}
		place = store.Place{}
	}
	return place, nil
}

// takeIn joins the events of messages, and keeps the place behind them.
func (m *meeting) takeIn(ctx context.Context, place store.Place, some []message, end uint64) error {
	var met []store.MetMessage
	done := place.At
	opened, closed := m.opened, m.closed
	came := func(yield func(store.Entry, error) bool) {
		for t := range ahead.Each(ctx, slices.Values(some), func(one message) []taken { return []taken{m.crew.take(one)} }) {
			if errors.Is(t.err, errOtherKey) {
				m.closed++
			} else if t.err == nil {
				m.opened++
			}
			m.pass(t)
			of := store.MetMessage{Number: t.number}
			for _, n := range t.entries {
				if !yield(n, nil) {
					return
				}
				of.Prints = append(of.Prints, n.Print())
			}
			if met, done = append(met, of), t.number; ctx.Err() != nil {
				return
			}
		}
		if ctx.Err() == nil {
			done = end
		}
	}
	joined, err := m.book.JoinEntries(ctx, came)
	m.report.Came += joined.Added
	m.report.Clashing = append(m.report.Clashing, joined.Clashing...)
	for _, refused := range joined.Refused {
		m.say(refused)
	}
	if joined.More > 0 {
		m.say(fmt.Errorf("and %d more were left out", joined.More))
	}
	if err != nil {
		m.opened, m.closed = opened, closed
		return err
	}
	if place.At == 0 && m.opened == 0 && m.closed > 0 {
		return trouble(ErrOtherCrew, nil, "the journal of %s at %s is sealed with other keys: it is another crew's of that name, or the crew's key was changed; nothing was sent",
			m.crew.Name, shownURL(m.server.URL))
	}
	return m.book.KeepMet(m.mark, store.MetMore{Made: m.journal.made, At: done, Lacks: m.journal.lacks, Messages: met, Records: joined.Added})
}

// pass names what is wrong with a message.
func (m *meeting) pass(t taken) {
	if t.err != nil {
		m.say(&PassedOver{t.number, t.err})
	}
	for _, err := range t.wrong {
		m.say(&PassedOver{t.number, err})
	}
}

// mostNamed is how many things that were passed over are named.
const mostNamed = 1000

func (m *meeting) say(err error) {
	if says := err.Error(); !m.named[says] && len(m.named) < mostNamed {
		m.named[says] = true
		m.report.Passed = append(m.report.Passed, err)
	}
}

// sendAll sends what the journal lacks.
func (m *meeting) sendAll(ctx context.Context) error {
	place, _, err := m.book.Meeting(m.mark)
	if err != nil || m.book.Met(place) {
		return err
	}
	as := m.book.Standing()
	unsent, err := m.book.Unsent(m.mark)
	if err != nil {
		return err
	}
	s := sending{m: m, of: unsent.Count}
	var damage error
	err = s.all(ctx, m.batches(unsent, &damage))
	err = errors.Join(err, s.keep())
	if err == nil && ctx.Err() == nil {
		if err = m.book.SettleMet(m.mark, as, max(0, unsent.Count-s.done)); err == nil {
			err = damage
		}
	}
	return err
}

// batches are the records that the journal lacks, batch by batch; damage is what is told
// of them at their end.
func (m *meeting) batches(unsent store.Unsent, damage *error) iter.Seq[*batch] {
	return func(yield func(*batch) bool) {
		b := &batch{}
		for u, err := range unsent.All() {
			if err != nil {
				*damage = err
				break
			}
			if subject := m.crew.subject(u.Block()); subject != b.subject || b.full() {
				if len(b.prints) > 0 && !yield(b) {
					return
				}
				b = &batch{subject: subject}
			}
			b.add(u)
		}
		if len(b.prints) > 0 {
			yield(b)
		}
	}
}

// sending is the sending of what the journal lacks.
type sending struct {
	m    *meeting
	of   int
	done int
	kept time.Time
	met  []store.MetMessage
}

// keepEvery is after how long what went is kept, so that little is sent again by a program
// that was killed; it would be known there.
const keepEvery = time.Second

func (s *sending) all(ctx context.Context, batches iter.Seq[*batch]) error {
	s.kept = time.Now()
	for one := range ahead.Each(ctx, batches, s.m.sealed) {
		if err := s.one(ctx, one.batch, one.data); err != nil {
			return err
		}
		if ctx.Err() != nil {
			return nil
		}
	}
	return nil
}

// ready is a batch, sealed.
type ready struct {
	batch *batch
	data  []byte
}

func (m *meeting) sealed(b *batch) []ready { return []ready{{b, m.crew.seal(b.subject, b.text)}} }

// one sends a batch, in parts where it is too large for the server.
func (s *sending) one(ctx context.Context, b *batch, data []byte) error {
	j := s.m.journal
	if len(data) > j.largest() && len(b.prints) > 1 {
		x, y := b.halves()
		if err := s.one(ctx, &x, s.m.crew.seal(x.subject, x.text)); err != nil {
			return err
		}
		return s.one(ctx, &y, s.m.crew.seal(y.subject, y.text))
	}
	if err := j.append(ctx, b.subject, data); err != nil {
		return err
	}
	s.met = append(s.met, store.MetMessage{Number: j.last, Prints: b.prints})
	s.done += len(b.prints)
	s.m.report.Sent += len(b.prints)
	s.m.o.Far(Far{Sending: true, Done: s.done, Of: s.of})
	if time.Since(s.kept) > keepEvery {
		return s.keep()
	}
	return nil
}

// keep keeps what went.
func (s *sending) keep() error {
	if len(s.met) == 0 {
		return nil
	}
	records := 0
	for _, met := range s.met {
		records += len(met.Prints)
	}
	err := s.m.book.KeepMet(s.m.mark, store.MetMore{Made: s.m.journal.made, At: s.met[len(s.met)-1].Number, Lacks: s.m.journal.lacks, Messages: s.met, Records: records})
	if err == nil {
		s.met, s.kept = nil, time.Now()
	}
	return err
}
