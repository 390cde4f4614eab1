package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/adrg/xdg"
	"github.com/nats-io/nats-server/v2/server"

	"barkslip/core/record"
	"barkslip/store"
	"barkslip/ui/part"
)

// onTruck starts a server that keeps journals.
func onTruck(t *testing.T) *server.Server {
	t.Helper()
	s, err := server.NewServer(&server.Options{ServerName: "truck", Host: "127.0.0.1", Port: -1, JetStream: true, StoreDir: t.TempDir(), NoLog: true, NoSigs: true})
	if err != nil {
		t.Fatal(err)
	}
	s.Start()
	t.Cleanup(func() { s.Shutdown(); s.WaitForShutdown() })
	if !s.ReadyForConnections(10 * time.Second) {
		t.Fatal("the server does not start")
	}
	return s
}

func lines(t *testing.T, book *store.Book) string {
	t.Helper()
	var out bytes.Buffer
	if err := store.WriteLines(&out, book); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// Two books that are open on screens meet in the background while answers are given on
// both: in the end they hold the same.
func TestMetersMeetWhileAnswersAreGiven(t *testing.T) {
	config := xdg.ConfigHome
	xdg.ConfigHome = t.TempDir()
	defer func() { xdg.ConfigHome = config }()
	s := onTruck(t)
	key := filepath.Join(t.TempDir(), "crew.key")
	if err := makeKey(key); err != nil {
		t.Fatal(err)
	}
	crew := part.Crew{Name: "hollow-lane", URL: s.ClientURL(), Key: key}
	var books []*store.Book
	var meters []*meter
	for _, name := range []string{"a.bark", "b.bark"} {
		book, err := store.Create(filepath.Join(t.TempDir(), name), store.Options{})
		if err != nil {
			t.Fatal(err)
		}
		defer book.Close()
		m := newMeter(book, part.Crew{})
		if err := m.Set(crew); err != nil {
			t.Fatal(err)
		}
		if kept := m.Crew().Key; !strings.HasPrefix(kept, xdg.ConfigHome) {
			t.Fatalf("the key is kept at %s, not on this computer", kept)
		}
		books, meters = append(books, book), append(meters, m)
	}
	for range 40 {
		for i, book := range books {
			id, err := book.NewID()
			if err != nil {
				t.Fatal(err)
			}
			if _, err := book.Append(record.Event{At: time.Now().Truncate(time.Second), Hand: "RK", Body: &record.BlockMade{Block: id, Name: "Block " + id.String()[:6]}}); err != nil {
				t.Fatal(err)
			}
			meters[i].Now()
		}
		time.Sleep(5 * time.Millisecond)
	}
	deadline := time.Now().Add(20 * time.Second)
	for lines(t, books[0]) != lines(t, books[1]) || meters[0].Met().ToSend+meters[1].Met().ToSend > 0 {
		if time.Now().After(deadline) {
			t.Fatalf("they do not hold the same: %+v, %+v", meters[0].Met(), meters[1].Met())
		}
		time.Sleep(20 * time.Millisecond)
		meters[0].Now()
		meters[1].Now()
	}
	if n, _ := books[0].Count(); n != 80 {
		t.Errorf("%d records, want 80", n)
	}
	for _, m := range meters {
		if met := m.Met(); met.Err != nil || met.At.IsZero() || len(met.Passed) > 0 || met.Came != 40 {
			t.Errorf("it stands at %+v", met)
		}
		m.close()
	}
}

// The key that was there stays behind a new one.
func TestAKeyIsNeverLost(t *testing.T) {
	config := xdg.ConfigHome
	xdg.ConfigHome = t.TempDir()
	defer func() { xdg.ConfigHome = config }()
	first, err := newCrewKey("hollow-lane")
	if err != nil {
		t.Fatal(err)
	}
	had, err := readKeys(first)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := newCrewKey("hollow-lane"); err != nil || again != first {
		t.Fatalf("%s, %v", again, err)
	}
	other := filepath.Join(t.TempDir(), "other.key")
	if err := makeKey(other); err != nil {
		t.Fatal(err)
	}
	kept, err := keptCrew(part.Crew{Name: "hollow-lane", Key: other})
	if err != nil {
		t.Fatal(err)
	}
	keys, err := readKeys(kept.Key)
	theirs, _ := readKeys(other)
	if err != nil || len(keys) != 3 || keys[0] != theirs[0] || keys[2] != had[0] {
		t.Errorf("%d keys, %v; want the other's, the second and the first", len(keys), err)
	}
}
