package meet

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/nats-io/nats-server/v2/server"
	"github.com/nats-io/nats.go/jetstream"

	"barkslip/core/record"
	"barkslip/store"
)

func TestTwoBooksMeet(t *testing.T) {
	s := truck(t, nil)
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	one, two := newBook(t, 1), newBook(t, 2)
	made(t, one)
	note(t, one, stumpAt(1, 1), 5, "one")
	note(t, two, stumpAt(1, 2), 7, "two")

	if r := met(t, one, crew, at); r.Sent != 10 || r.Came != 0 || r.Left != 0 {
		t.Errorf("the first meeting: %+v", r)
	}
	if r := met(t, two, crew, at); r.Sent != 7 || r.Came != 10 || r.Left != 0 {
		t.Errorf("the second: %+v", r)
	}
	if r := met(t, one, crew, at); r.Sent != 0 || r.Came != 7 || r.Left != 0 {
		t.Errorf("the third: %+v", r)
	}
	for range 3 {
		for _, b := range []*store.Book{one, two} {
			if r := met(t, b, crew, at); r.Sent+r.Came+r.Left != 0 {
				t.Errorf("nothing was new: %+v", r)
			}
		}
	}
	if exported(t, one) != exported(t, two) {
		t.Error("the books are not one after they met")
	}
	onceEach(t, crew, s.ClientURL(), 17)

	// What is answered meanwhile is to be sent, and is counted without a server.
	note(t, one, stumpAt(3, 3), 4, "more")
	if _, left, err := one.Meeting(crew.Mark()); err != nil || left != 4 {
		t.Errorf("%d to send, %v", left, err)
	}
	if r := met(t, one, crew, at); r.Sent != 4 {
		t.Errorf("%+v", r)
	}
	third := newBook(t, 3)
	if r := met(t, third, crew, at); r.Came != 21 || r.Sent != 0 || exported(t, third) != exported(t, one) {
		t.Errorf("a new laptop fetches all: %+v", r)
	}
	onceEach(t, crew, s.ClientURL(), 21)
}

// onceEach holds where each event stands in a crew's journal once.
func onceEach(t testing.TB, crew Crew, url string, events int) {
	t.Helper()
	lines := inJournal(t, crew, url)
	if len(lines) != events {
		t.Errorf("the journal has %d events, not %d", len(lines), events)
	}
	for line, n := range lines {
		if n != 1 {
			t.Errorf("sent %d times: %s", n, line)
		}
	}
}

// What one id says in two ways becomes one everywhere.
func TestClashingBooksMeet(t *testing.T) {
	s := truck(t, nil)
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	var books []*store.Book
	for i := range 3 {
		b := newBook(t, uint64(i+1))
		give(t, b, record.Event{ID: record.ID{0: 9}, At: day, Hand: "AB", Stump: stumpAt(1, 1), Body: &record.Noted{Text: fmt.Sprint("way ", i)}})
		books = append(books, b)
	}
	for range 3 {
		for _, b := range books {
			met(t, b, crew, at)
		}
	}
	if a := exported(t, books[0]); a != exported(t, books[1]) || a != exported(t, books[2]) || strings.Count(a, "\n") != 1 {
		t.Errorf("%q\n%q\n%q", a, exported(t, books[1]), exported(t, books[2]))
	}
}

// A journal that is made anew gets all again.
func TestJournalMadeAnew(t *testing.T) {
	s := truck(t, nil)
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	one, two := newBook(t, 1), newBook(t, 2)
	note(t, one, stumpAt(1, 1), 5, "one")
	note(t, two, stumpAt(1, 2), 5, "two")
	met(t, one, crew, at)
	met(t, two, crew, at)
	_, js := administer(t, s.ClientURL())
	if err := js.DeleteStream(context.Background(), crew.stream()); err != nil {
		t.Fatal(err)
	}
	met(t, two, crew, at)
	met(t, one, crew, at)
	if exported(t, one) != exported(t, two) {
		t.Error("they are not one")
	}
	onceEach(t, crew, s.ClientURL(), 10)
}

// Nothing of a crew's journal can be taken out of it.
func TestNothingIsDeleted(t *testing.T) {
	s := truck(t, nil)
	crew := crewOf("hollow", 1)
	b := newBook(t, 1)
	note(t, b, stumpAt(1, 1), 5, "one")
	met(t, b, crew, Server{URL: s.ClientURL()})
	_, js := administer(t, s.ClientURL())
	stream, err := js.Stream(context.Background(), crew.stream())
	if err != nil {
		t.Fatal(err)
	}
	if err := stream.DeleteMsg(context.Background(), 1); err == nil {
		t.Error("a message was deleted")
	}
	if err := stream.Purge(context.Background()); err == nil {
		t.Error("the journal was emptied")
	}
	onceEach(t, crew, s.ClientURL(), 5)
}

func TestBadMessagesArePassedOver(t *testing.T) {
	s := truck(t, nil)
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	one := newBook(t, 1)
	note(t, one, stumpAt(1, 1), 5, "one")
	met(t, one, crew, at)

	_, js := administer(t, s.ClientURL())
	put := func(subject string, data []byte) {
		t.Helper()
		if _, err := js.Publish(context.Background(), subject, data); err != nil {
			t.Fatal(err)
		}
	}
	subject := crew.subject(theBlock)
	good := string(record.Line(record.Event{ID: record.ID{0: 77}, Clock: 9, At: day, Hand: "CD", Stump: stumpAt(2, 2), Body: &record.Noted{Text: "holds"}}))
	far := string(record.Line(record.Event{ID: record.ID{0: 78}, Clock: 1 << 50, At: day, Hand: "CD", Stump: stumpAt(2, 2), Body: &record.Noted{Text: "far"}}))
	sealed := crew.seal(subject, []byte("not a line\n"+good+"\n"+far+"\n{\"id\":3}\n"))
	flipped := append([]byte(nil), sealed...)
	flipped[len(flipped)-3] ^= 4
	put(subject, nil)
	put(subject, []byte("nobody's message"))
	put(subject, flipped)
	put(subject, crewOf("hollow", 2).seal(subject, []byte(good+"\n")))
	put(crew.stream()+".elsewhere", sealed) // moved from its subject
	put(subject, crew.seal(subject, []byte(strings.Repeat(" ", mostText+1))))
	put(subject, sealed)

	for _, b := range []*store.Book{one, newBook(t, 2)} {
		r, err := Meet(context.Background(), b, crew, at, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var says []string
		for _, p := range r.Passed {
			says = append(says, p.Error())
		}
		all := strings.Join(says, "\n")
		for _, want := range []string{"message 2 ", "message 3 ", "message 4 ", "message 5 ", "message 6 ", "message 7 ", "message 8 of the crew's journal, line 1", "message 8 of the crew's journal, line 4", "ahead"} {
			if strings.Count(all, want) != 1 {
				t.Errorf("%q is not said once:\n%s", want, all)
			}
		}
		if len(says) != 9 {
			t.Errorf("%d complaints:\n%s", len(says), all)
		}
		if text := exported(t, b); !strings.Contains(text, "holds") || strings.Contains(text, "far") || strings.Count(text, "\n") != 6 {
			t.Errorf("%s", text)
		}
		if r := met(t, b, crew, at); r.Came+r.Sent != 0 {
			t.Errorf("again: %+v", r)
		}
	}
}

// Two crews with one name do not mix, and nothing of one goes to the other.
func TestAnotherCrewOfTheName(t *testing.T) {
	s := truck(t, nil)
	at := Server{URL: s.ClientURL()}
	one, two := newBook(t, 1), newBook(t, 2)
	note(t, one, stumpAt(1, 1), 5, "one")
	note(t, two, stumpAt(1, 2), 5, "two")
	met(t, one, crewOf("hollow", 1), at)
	for range 2 {
		r, err := Meet(context.Background(), two, crewOf("hollow", 2), at, Options{})
		if !errors.Is(err, ErrOtherCrew) || r.Sent != 0 || r.Left != 5 {
			t.Errorf("%+v, %v", r, err)
		}
	}
	if strings.Contains(exported(t, two), "one") {
		t.Error("the crews were mixed")
	}
	onceEach(t, crewOf("hollow", 1), s.ClientURL(), 5)
}

// A crew changes its key: who has both reads all; who has the old one alone is told; who
// is given the new one later lacks nothing.
func TestKeyChanged(t *testing.T) {
	s := truck(t, nil)
	at := Server{URL: s.ClientURL()}
	old, both := crewOf("hollow", 1), crewOf("hollow", 2, 1)
	one, two := newBook(t, 1), newBook(t, 2)
	note(t, one, stumpAt(1, 1), 5, "one")
	note(t, two, stumpAt(1, 2), 5, "two")
	met(t, one, old, at)
	met(t, two, old, at)
	note(t, one, stumpAt(1, 3), 3, "under the new key")
	if r := met(t, one, both, at); r.Sent != 3 || r.Came != 5 {
		t.Errorf("only what is new is sent: %+v", r)
	}
	note(t, two, stumpAt(1, 4), 2, "still under the old")
	r, err := Meet(context.Background(), two, old, at, Options{})
	if err != nil || r.Sent != 2 || len(r.Passed) != 1 || !strings.Contains(r.Passed[0].Error(), "key") {
		t.Errorf("%+v, %v", r, err)
	}
	met(t, two, both, at)
	met(t, one, both, at)
	if exported(t, one) != exported(t, two) {
		t.Error("they are not one")
	}
	lines := 0
	for _, n := range inJournal(t, both, s.ClientURL()) {
		if lines++; n != 1 {
			t.Error("sent twice")
		}
	}
	if lines != 15 {
		t.Errorf("%d lines", lines)
	}
}

func TestWhatCannotBeMet(t *testing.T) {
	b := newBook(t, 1)
	note(t, b, stumpAt(1, 1), 3, "one")
	plain := truck(t, func(o *server.Options) { o.JetStream = false })
	other := truck(t, nil)
	_, js := administer(t, other.ClientURL())
	for name, config := range map[string]jetstream.StreamConfig{
		"barkslip-theirs": {Subjects: []string{"their.things"}},
		"barkslip-short":  {Subjects: []string{"barkslip-short.>"}, DenyDelete: true, DenyPurge: true, MaxAge: time.Hour},
		"barkslip-open":   {Subjects: []string{"barkslip-open.>"}},
	} {
		config.Name = name
		if _, err := js.CreateStream(context.Background(), config); err != nil {
			t.Fatal(err)
		}
	}
	guarded := truck(t, func(o *server.Options) { o.Username, o.Password = "crew", "right" })
	for _, c := range []struct {
		name, url, crew string
		kind            error
		says            string
	}{
		{"nobody there", "nats://127.0.0.1:1", "hollow", ErrNoServer, "nobody answers"},
		{"no such machine", "nats://no.such.machine.invalid:4222", "hollow", ErrNoServer, "nobody answers"},
		{"no address", "http://truck", "hollow", nil, "begins with nats://"},
		{"nothing", "", "hollow", nil, "no address"},
		{"no journals", plain.ClientURL(), "hollow", ErrNoJournal, "JetStream"},
		{"others' stream", other.ClientURL(), "theirs", ErrNotOurs, "other messages"},
		{"forgets", other.ClientURL(), "short", ErrNotOurs, "does not keep"},
		{"can be emptied", other.ClientURL(), "open", ErrNotOurs, "deleted"},
		{"no password", guarded.ClientURL(), "hollow", ErrKeptOut, "does not let"},
		{"a name of two words", other.ClientURL(), "hollow lane", nil, "letters a to z"},
		{"no name", other.ClientURL(), "", nil, "letters"},
		{"a star", other.ClientURL(), "hollow*", nil, "letters a to z"},
	} {
		r, err := Meet(context.Background(), b, crewOf(c.crew, 1), Server{URL: c.url}, Options{Wait: 2 * time.Second})
		if err == nil || c.kind != nil && !errors.Is(err, c.kind) || !strings.Contains(err.Error(), c.says) || r.Sent > 0 {
			t.Errorf("%s: %+v, %v", c.name, r, err)
		} else {
			t.Logf("%s: %v", c.name, err)
		}
	}
	with := strings.Replace(guarded.ClientURL(), "nats://", "nats://crew:right@", 1)
	met(t, b, crewOf("hollow", 1), Server{URL: with})
	if got := shownURL(with); strings.Contains(got, "right") {
		t.Error("the password is shown:", got)
	}
}

// A laptop whose clock is a year off meets as any other.
func TestClockAYearOff(t *testing.T) {
	s := truck(t, nil)
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	one, two := newBook(t, 1), newBook(t, 2)
	note(t, one, stumpAt(1, 1), 5, "one")
	give(t, two, record.Event{At: day.AddDate(-1, 0, 0), Hand: "CD", Stump: stumpAt(1, 1), Body: &record.Noted{Text: "a year ago"}},
		record.Event{At: day.AddDate(1, 0, 0), Hand: "CD", Stump: stumpAt(1, 1), Body: &record.Noted{Text: "a year on"}})
	met(t, one, crew, at)
	met(t, two, crew, at)
	met(t, one, crew, at)
	if exported(t, one) != exported(t, two) {
		t.Error("they are not one")
	}
}

// A batch that is too large for the server goes in parts.
func TestSmallServer(t *testing.T) {
	s := truck(t, func(o *server.Options) { o.MaxPayload = 70 << 10 })
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	one, two := newBook(t, 1), newBook(t, 2)
	random := dice(5)
	for i := range 200 {
		word := make([]rune, 2000)
		for k := range word {
			word[k] = rune(0x4e00 + random.Uint64()%20000) // hardly to be packed
		}
		note(t, one, stumpAt(1, uint16(i+1)), 1, string(word))
	}
	met(t, one, crew, at)
	met(t, two, crew, at)
	if exported(t, one) != exported(t, two) {
		t.Error("they are not one")
	}
	if n := len(messagesOf(t, crew, s.ClientURL())); n < 10 {
		t.Errorf("%d messages", n)
	}
}

// Esc in the middle keeps what came and what went.
func TestStopped(t *testing.T) {
	s := truck(t, nil)
	at, crew := Server{URL: s.ClientURL()}, crewOf("hollow", 1)
	one, two := newBook(t, 1), newBook(t, 2)
	for i := range 40 {
		note(t, one, stumpAt(1, uint16(i+1)), 300, strings.Repeat("x", 200))
	}
	total := 40 * 300
	for n := 0; ; n++ {
		ctx, stop := context.WithCancel(context.Background())
		r, err := Meet(ctx, one, crew, at, Options{Far: func(f Far) {
			if f.Sending {
				stop()
			}
		}})
		stop()
		if err != nil {
			t.Fatal(err)
		}
		if r.Left == 0 {
			break
		}
		if n > 20 {
			t.Fatal("it does not go on")
		}
	}
	onceEach(t, crew, s.ClientURL(), total)
	ctx, stop := context.WithCancel(context.Background())
	if _, err := Meet(ctx, two, crew, at, Options{Far: func(f Far) { stop() }}); err != nil {
		t.Fatal(err)
	}
	met(t, two, crew, at)
	if exported(t, one) != exported(t, two) {
		t.Error("they are not one")
	}
}
