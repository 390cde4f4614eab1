package store

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// dice is a source of random bytes that begins anew with each seed.
func dice(seed uint64) *rand.ChaCha8 {
	var key [32]byte
	key[0], key[1], key[2], key[3] = byte(seed), byte(seed>>8), byte(seed>>16), 7
	return rand.NewChaCha8(key)
}

var zonesRead sync.Map

// zoneOnce finds a zone, reading it from the disk once.
func zoneOnce(name string) (*time.Location, error) {
	if z, ok := zonesRead.Load(name); ok {
		return z.(*time.Location), nil
	}
	z, err := time.LoadLocation(name)
	if err == nil {
		zonesRead.Store(name, z)
	}
	return z, err
}

func options(seed uint64) Options {
	return Options{Zones: zoneOnce, Random: dice(seed)}
}

// books counts the books made, so that no two give the same ids.
var books atomic.Uint64

// newBook makes a book that is checked from end to end when the test is over.
func newBook(t testing.TB) *Book {
	t.Helper()
	b, err := Create(filepath.Join(t.TempDir(), "book"), options(1000+books.Add(1)))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { checkAndClose(t, b) })
	return b
}

func checkAndClose(t testing.TB, b *Book) {
	t.Helper()
	if b.closed.Load() {
		return
	}
	checkSound(t, b)
	if err := b.Close(); err != nil {
		t.Error(err)
	}
}

func checkSound(t testing.TB, b *Book) {
	t.Helper()
	found, err := b.Check()
	if err != nil {
		t.Error("check:", err)
	}
	for _, f := range found {
		t.Error("check found:", f)
	}
}

func reopen(t testing.TB, b *Book) *Book {
	t.Helper()
	checkAndClose(t, b)
	again, err := Open(b.Path(), options(2))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { checkAndClose(t, again) })
	return again
}

var day = time.Date(2027, 5, 4, 9, 0, 0, 0, time.FixedZone("", -7*3600))

func blockID(n byte) record.ID { return record.ID{0: n, 15: 1} }

func stumpAt(block byte, row, tree uint16) record.StumpID {
	return record.StumpID{Block: blockID(block), Row: row, Tree: tree}
}

func on(stump record.StumpID, at time.Time, body record.Body) record.Event {
	return record.Event{At: at, Hand: "AB", Stump: stump, Body: body}
}

func about(body record.Body) record.Event { return record.Event{At: day, Hand: "AB", Body: body} }

func inches(v float64) record.Measure {
	return record.Measure{Length: unit.Length(v * 25.4), Typed: fmt.Sprint(v, "in")}
}

// settings are the events of a new block.
func settings(block byte) []record.Event {
	id := blockID(block)
	out := []record.Event{about(&record.BlockMade{Block: id, Name: fmt.Sprint("block ", block)})}
	for _, kv := range [][2]string{{"zone", "America/Los_Angeles"}, {"latitude", "38.5"}, {"longitude", "-121.8"}, {"units", "us"}} {
		out = append(out, about(&record.BlockSet{Block: id, Setting: kv[0], Value: kv[1]}))
	}
	return out
}

// life is a stump's history up to white, and on to n events with notes.
func life(stump record.StumpID, n int) []record.Event {
	at := func(d, h int) time.Time { return day.AddDate(0, 0, d).Add(time.Duration(h) * time.Hour) }
	out := []record.Event{
		on(stump, at(-20, 0), &record.StumpAdded{Across: inches(3.5), Stock: "black"}),
		on(stump, at(-8, 0), &record.CutBack{Height: inches(60), Across: inches(3.25)}),
		on(stump, at(-8, 1), &record.Gashed{Number: 2, Depth: inches(0.5)}),
		on(stump, at(0, 0), &record.Looked{Bleeding: record.Dry, Slip: record.SlipsClean}),
		on(stump, at(0, 0), &record.StumpMeasured{Across: inches(3.25)}),
		on(stump, at(0, 1), &record.SlotsMarked{Slots: []record.Slot{{Bearing: 10}, {Bearing: 130}, {Bearing: 250}}}),
		on(stump, at(0, 1), &record.ScionSet{Slot: 1, Thickness: inches(0.4), Checks: record.AllGood}),
		on(stump, at(0, 1), &record.ScionSet{Slot: 2, Thickness: inches(0.4), Checks: record.AllGood}),
		on(stump, at(0, 1), &record.ScionSet{Slot: 3, Thickness: inches(0.4), Checks: record.AllGood}),
		on(stump, at(0, 2), &record.Sealed{Cover: record.Wrapped}),
		on(stump, at(0, 4), &record.PaintedWhite{}),
	}
	for i := len(out); i < n; i++ {
		out = append(out, on(stump, at(i, 0), &record.Noted{Text: fmt.Sprint("seen on day ", i)}))
	}
	return out[:n]
}

// numbered gives events ids and clocks, as an export has them.
func numbered(seed uint64, events []record.Event) []record.Event {
	r := dice(seed)
	for i := range events {
		_, _ = r.Read(events[i].ID[:])
		events[i].Clock = uint64(i + 1)
	}
	return events
}

func mustAppend(t testing.TB, b *Book, events ...record.Event) []record.Event {
	t.Helper()
	out, err := b.Append(events...)
	if err != nil {
		t.Fatal(err)
	}
	return out.Events
}

func export(t testing.TB, b *Book) string {
	t.Helper()
	var out bytes.Buffer
	if err := WriteLines(&out, b); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// scratchDir is a folder for checks that run many times within one test. It
// lies in memory where the system has such a place, since what is checked there
// is not whether the disk keeps it.
func scratchDir(t interface{ Fatal(...any) }) (dir string, done func()) {
	const memory = "/dev/shm"
	dir, err := os.MkdirTemp(memory, "store-test-*")
	if err != nil {
		dir, err = os.MkdirTemp("", "store-test-*")
	}
	if err != nil {
		t.Fatal(err)
	}
	return dir, func() { _ = os.RemoveAll(dir) }
}

func unitDate(y int, m time.Month, d int) unit.Date { return unit.MakeDate(y, m, d) }

func celsius(v float64) record.Degrees {
	return record.Degrees{Temperature: unit.Temperature(v), Typed: fmt.Sprint(v, "C")}
}
