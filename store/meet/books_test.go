package meet

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"testing"
	"time"
	_ "time/tzdata"

	"github.com/nats-io/nats.go"
	"github.com/nats-io/nats.go/jetstream"

	"barkslip/core/record"
	"barkslip/store"
)

func dice(seed uint64) *rand.ChaCha8 {
	var key [32]byte
	key[0], key[1], key[2] = byte(seed), byte(seed>>8), 9
	return rand.NewChaCha8(key)
}

// crewOf is a crew whose keys are told by numbers.
func crewOf(name string, keys ...byte) Crew {
	c := Crew{Name: name}
	for _, k := range keys {
		c.Keys = append(c.Keys, Key{0: k, 31: 1})
	}
	return c
}

func newBook(t testing.TB, seed uint64) *store.Book {
	t.Helper()
	b, err := store.Create(filepath.Join(t.TempDir(), "book"), store.Options{Random: dice(seed)})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { sound(t, b); b.Close() })
	return b
}

func sound(t testing.TB, b *store.Book) {
	t.Helper()
	found, err := b.Check()
	if err != nil {
		t.Error("check:", err)
	}
	for _, f := range found {
		t.Error("check found:", f)
	}
}

var day = time.Date(2027, 5, 4, 9, 0, 0, 0, time.FixedZone("", -4*3600))

var theBlock = record.ID{0: 1, 15: 1}

func stumpAt(row, tree uint16) record.StumpID {
	return record.StumpID{Block: theBlock, Row: row, Tree: tree}
}

// made makes the block in a book.
func made(t testing.TB, b *store.Book) {
	t.Helper()
	give(t, b, record.Event{At: day, Hand: "AB", Body: &record.BlockMade{Block: theBlock, Name: "Hollow Lane"}})
	for _, kv := range [][2]string{{"zone", "America/New_York"}, {"latitude", "42.7"}, {"longitude", "-77.2"}, {"units", "us"}} {
		give(t, b, record.Event{At: day, Hand: "AB", Body: &record.BlockSet{Block: theBlock, Setting: kv[0], Value: kv[1]}})
	}
}

// note writes n notes about a stump.
func note(t testing.TB, b *store.Book, stump record.StumpID, n int, says string) {
	t.Helper()
	var events []record.Event
	for i := range n {
		events = append(events, record.Event{At: day.Add(time.Duration(i) * time.Minute), Hand: "AB", Stump: stump, Body: &record.Noted{Text: fmt.Sprint(says, " ", i)}})
	}
	give(t, b, events...)
}

func give(t testing.TB, b *store.Book, events ...record.Event) {
	t.Helper()
	if _, err := b.Append(events...); err != nil {
		t.Fatal(err)
	}
}

func exported(t testing.TB, b *store.Book) string {
	t.Helper()
	var out bytes.Buffer
	if err := store.WriteLines(&out, b); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// met meets, and fails the test where that fails or anything is passed over.
func met(t testing.TB, b *store.Book, c Crew, s Server) Report {
	t.Helper()
	r, err := Meet(context.Background(), b, c, s, Options{})
	if err != nil {
		t.Fatal("meet:", err)
	}
	for _, p := range r.Passed {
		t.Error("passed over:", p)
	}
	return r
}

// inJournal is how often each event stands in a crew's journal, by its line.
func inJournal(t testing.TB, c Crew, url string) map[string]int {
	t.Helper()
	lines := map[string]int{}
	for _, m := range messagesOf(t, c, url) {
		text, err := c.open(m.subject, m.data)
		if err != nil {
			t.Fatal(err)
		}
		for line := range bytes.Lines(text) {
			lines[string(line)]++
		}
	}
	return lines
}

func messagesOf(t testing.TB, c Crew, url string) (all []message) {
	t.Helper()
	j, err := openJournal(context.Background(), c, Server{URL: url}, 5*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	defer j.close()
	if err := j.read(context.Background(), 0, func(m message) bool { all = append(all, m); return true }); err != nil {
		t.Fatal(err)
	}
	return all
}

// server is a connection to a server as an administrator has it.
func administer(t testing.TB, url string) (*nats.Conn, jetstream.JetStream) {
	t.Helper()
	conn, err := nats.Connect(url)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(conn.Close)
	js, err := jetstream.New(conn)
	if err != nil {
		t.Fatal(err)
	}
	return conn, js
}
