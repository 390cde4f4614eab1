package store

import (
	"bytes"
	"context"
	"encoding/binary"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"barkslip/core/due"
	"barkslip/core/record"
)

// grown is a sound book of few stumps, and what it answers.
var grown = sync.OnceValues(func() ([]byte, map[string]string) {
	dir, done := scratchDir(panics{})
	defer done()
	path := filepath.Join(dir, "book")
	b, err := Create(path, options(5))
	if err != nil {
		panic(err)
	}
	events := settings(1)
	for tree := range uint16(6) {
		events = append(events, life(stumpAt(1, 1+tree/4, 1+tree), 30)...)
	}
	for len(events) > 0 {
		n := min(40, len(events))
		if _, err := b.Append(events[:n]...); err != nil {
			panic(err)
		}
		events = events[n:]
	}
	if err := b.Close(); err != nil {
		panic(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		panic(err)
	}
	answers, _ := answersOf(path)
	return data, answers
})

type panics struct{}

func (panics) Fatal(says ...any) { panic(says) }

// FuzzBookFile writes over bytes of a book: 4 bytes of each patch are where, the rest what.
// Whatever was written, the book gives its answers or says that it does not, and what is
// saved of it page by page holds.
func FuzzBookFile(f *testing.F) {
	f.Add(uint32(0), []byte{1}, uint32(4096), []byte{0, 0})
	f.Add(uint32(16), []byte{0xed, 0xda}, uint32(8200), bytes.Repeat([]byte{0xff}, 100))
	f.Add(uint32(4096+24), []byte{9}, uint32(24), []byte{8})
	f.Add(uint32(12288+8), []byte{1, 0}, uint32(12288+16), []byte{255, 255, 255, 255})
	f.Fuzz(func(t *testing.T, at uint32, what []byte, also uint32, whatElse []byte) {
		whole, want := grown()
		data := bytes.Clone(whole)
		for _, patch := range []struct {
			at   uint32
			what []byte
		}{{at, what}, {also, whatElse}} {
			copy(data[int(patch.at)%len(data):], patch.what)
		}
		dir, done := scratchDir(t)
		defer done()
		path := filepath.Join(dir, "book")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		got, _ := answersOf(path)
		compareAnswers(t, "a patched book", got, want)
		if saved, err := Salvage(path); err == nil {
			for _, e := range saved.Events {
				if _, err := record.ParseLine(record.Line(e)); err != nil {
					t.Errorf("%s was saved, and does not hold: %v", e.ID, err)
				}
			}
		}
	})
}

// FuzzSummary reads a summary of any bytes: it holds, and comes out again as it went in, or
// it is none.
func FuzzSummary(f *testing.F) {
	id := stumpAt(1, 1, 1)
	p := spotOf(1, id)
	block := record.FoldBook(settings(1)[:1], utcOnly).Blocks[blockID(1)]
	events := numbered(3, life(id, 11))
	packed := packSummary(p, due.Summarize(record.Fold(id, events), block, 11), 7)
	f.Add(packed[:len(packed)-4])
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, body []byte) {
		var u due.Unpacker
		v := checksummed(append(p[:len(p):len(p)], body...))[len(p):]
		s, ok := unpackSummary(&u, p, v, block)
		if !ok {
			return
		}
		again := packSummary(p, s, binary.BigEndian.Uint64(body[len(body)-8:]))
		if s2, ok := unpackSummary(&u, p, again, block); !ok || !bytes.Equal(due.PackSummary(nil, s), due.PackSummary(nil, s2)) {
			t.Errorf("%x is read as %+v, and that does not come out again", body, s)
		}
	})
}

// FuzzJournal joins a journal of any bytes: what holds is in the book, the rest is named, and
// the book is sound.
func FuzzJournal(f *testing.F) {
	var lines bytes.Buffer
	for _, e := range numbered(2, append(settings(1), life(stumpAt(1, 1, 1), 12)...)) {
		lines.Write(append(record.Line(e), '\n'))
	}
	f.Add(lines.Bytes())
	f.Add([]byte("{}\n\n\xff\n" + `{"v":9,"kind":"new"}`))
	f.Add(bytes.Repeat([]byte("a"), record.LongestLine+2))
	f.Fuzz(func(t *testing.T, text []byte) {
		dir, done := scratchDir(t)
		defer done()
		b, err := Create(filepath.Join(dir, "book"), options(1))
		if err != nil {
			t.Fatal(err)
		}
		defer b.Close()
		bad := 0
		report, err := b.JoinEntries(context.Background(), func(yield func(Entry, error) bool) {
			for e, err := range Lines(context.Background(), bytes.NewReader(text)) {
				if err != nil {
					bad++
				}
				if !yield(e, err) {
					return
				}
			}
		})
		if err != nil && bad == 0 {
			t.Fatal(err)
		}
		if n, _ := b.Count(); n != report.Added {
			t.Errorf("%d added, %d in the book", report.Added, n)
		}
		if found, err := b.Check(); err != nil || len(found) > 0 {
			t.Errorf("the check: %v, %v", found, err)
		}
		var out bytes.Buffer
		if err := WriteLines(&out, b); err != nil || bytes.Count(out.Bytes(), []byte("\n")) != report.Added {
			t.Errorf("%d lines of %d events, %v", bytes.Count(out.Bytes(), []byte("\n")), report.Added, err)
		}
	})
}
