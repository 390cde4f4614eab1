package store

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// filledFile is a closed book with a few dozen stumps, and its export.
func filledFile(t testing.TB, stumps int) (path, exported string) {
	t.Helper()
	b := newBook(t)
	fill(t, b, stumps)
	exported = export(t, b)
	checkAndClose(t, b)
	return b.Path(), exported
}

func fill(t testing.TB, b *Book, stumps int) {
	t.Helper()
	events := settings(1)
	for i := range stumps {
		events = append(events, life(stumpAt(1, uint16(i/10+1), uint16(i%10+1)), 14)...)
	}
	if err := b.Bulk(slices.Values(numbered(9, events))); err != nil {
		t.Fatal(err)
	}
}

// wantProblem fails unless err is of a kind and one plain sentence.
func wantProblem(t *testing.T, what string, err error, kinds ...error) {
	t.Helper()
	var p *Error
	if !errors.As(err, &p) {
		t.Errorf("%s: got %v", what, err)
		return
	}
	if strings.ContainsAny(p.Text, "\n\r") || p.Text == "" {
		t.Errorf("%s: not one sentence: %q", what, p.Text)
	}
	for _, kind := range kinds {
		if errors.Is(err, kind) {
			return
		}
	}
	t.Errorf("%s: got %v, want one of %v", what, err, kinds)
}

func TestCreateWritesNothingOver(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "there")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := Create(path, options(1))
	wantProblem(t, "an empty file", err, ErrExists)
	_, err = OpenOrCreate(path, options(1))
	wantProblem(t, "opening an empty file", err, ErrNotABook)
	if info, _ := os.Stat(path); info.Size() != 0 {
		t.Error("the empty file was written to")
	}
	_, err = Create(filepath.Join(dir, "none", "book"), options(1))
	wantProblem(t, "a folder that is not there", err, ErrMissing)
	b, err := OpenOrCreate(filepath.Join(dir, "new"), options(1))
	if err != nil {
		t.Fatal(err)
	}
	checkAndClose(t, b)
	if left, _ := filepath.Glob(filepath.Join(dir, ".new*")); len(left) > 0 {
		t.Error("left behind:", left)
	}
}

func TestOpeningWhatIsNoBook(t *testing.T) {
	dir := t.TempDir()
	file := func(name, content string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	other := filepath.Join(dir, "other")
	db, err := bbolt.Open(other, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	for what, path := range map[string]string{
		"empty": file("empty", ""), "text": file("text", strings.Repeat("row,tree\n1,1\n", 900)), "noughts": file("noughts", string(make([]byte, 1<<16))),
		"short": file("short", "x"), "folder": dir, "other": other,
	} {
		for _, readOnly := range []bool{false, true} {
			o := options(1)
			o.ReadOnly = readOnly
			_, err := Open(path, o)
			wantProblem(t, what, err, ErrNotABook)
		}
	}
	_, err = Open(filepath.Join(dir, "missing"), options(1))
	wantProblem(t, "missing", err, ErrMissing)
	if _, err := os.Stat(filepath.Join(dir, "missing")); err == nil {
		t.Error("opening made a file")
	}
}

func TestOpeningACutFile(t *testing.T) {
	path, exported := filledFile(t, 30)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	inUse, pageSize := int64(usedBytes(t, path)), int64(4096)
	lengths := []int64{1, 8, 16, 20, 24, 79, 80, 81, 100, 512, 1000}
	for at := pageSize; at <= int64(len(whole)); at += pageSize {
		lengths = append(lengths, at-1, at, at+1, at+80, at+2000)
	}
	dir, done := scratchDir(t)
	defer done()
	cut := filepath.Join(dir, "cut")
	for _, n := range lengths {
		if n >= int64(len(whole)) {
			continue
		}
		for _, readOnly := range []bool{true, false} {
			if err := os.WriteFile(cut, whole[:n], 0o600); err != nil {
				t.Fatal(err)
			}
			o := options(1)
			o.ReadOnly = readOnly
			b, err := Open(cut, o)
			switch {
			case n >= inUse: // only spare room is gone
				if err != nil {
					t.Fatalf("%d bytes: %v", n, err)
				}
				if export(t, b) != exported {
					t.Errorf("%d bytes: another journal", n)
				}
				checkAndClose(t, b)
			case n < 24:
				wantProblem(t, "a few bytes", err, ErrNotABook)
			default:
				wantProblem(t, "a cut file", err, ErrCutShort)
			}
		}
	}
}

func TestOpeningANewerBook(t *testing.T) {
	path, _ := filledFile(t, 1)
	alter(t, path, func(tx *bbolt.Tx) error {
		return tx.Bucket(bucketMeta).Put(keySchema, binary.BigEndian.AppendUint32(nil, schema+1))
	})
	for _, readOnly := range []bool{false, true} {
		o := options(1)
		o.ReadOnly = readOnly
		_, err := Open(path, o)
		wantProblem(t, "newer", err, ErrNewer)
	}
}

// alter changes a closed book behind the program's back.
func alter(t testing.TB, path string, change func(tx *bbolt.Tx) error) {
	t.Helper()
	db, err := bbolt.Open(path, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	counted := func(tx *bbolt.Tx) error { return errors.Join(change(tx), asLast(tx)) }
	if err := errors.Join(db.Update(counted), db.Close()); err != nil {
		t.Fatal(err)
	}
}

// asLast has a change made behind the program's back be the last one known, where one is.
func asLast(tx *bbolt.Tx) error {
	meta := tx.Bucket(bucketMeta)
	if meta == nil || len(meta.Get(keyStamp)) != stampLen {
		return nil
	}
	p := bytes.Clone(meta.Get(keyStamp)[:stampLen-4])
	binary.BigEndian.PutUint64(p[44:], uint64(tx.ID()))
	return meta.Put(keyStamp, checksummed(p))
}

func TestOpeningABookHeldElsewhere(t *testing.T) {
	path, exported := filledFile(t, 5)
	holdElsewhere(t, path)
	o := options(1)
	o.Timeout = 150 * time.Millisecond
	began := time.Now()
	_, err := Open(path, o)
	wantProblem(t, "held", err, ErrLocked)
	if took := time.Since(began); took > 2*time.Second {
		t.Error("waited for", took)
	}
	o.ReadOnly = true
	b, err := Open(path, o)
	if err != nil {
		t.Fatal(err)
	}
	if export(t, b) != exported {
		t.Error("another journal was read")
	}
	_, err = b.Append(on(stumpAt(1, 1, 1), day, &record.PaintedWhite{}))
	wantProblem(t, "writing to a copy", err, ErrReadOnly)
	copied := filepath.Join(t.TempDir(), "copy")
	if err := CopyFile(b.Path(), copied, options(1)); err != nil {
		t.Fatal(err)
	}
	checkAndClose(t, b)
	wantProblem(t, "restoring over it", Restore(copied, path, o), ErrLocked)
}

// Reading commands work while another process writes as fast as it can.
func TestReadingWhileWritten(t *testing.T) {
	path, _ := filledFile(t, 5)
	cmd := childProcess(t, "write", path, 1_000_000)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	defer func() { _ = cmd.Process.Kill(); _ = cmd.Wait() }()
	said := bufio.NewReader(out)
	if _, err := said.ReadString('\n'); err != nil { // its first answer is kept
		t.Fatal(err)
	}
	go func() { _, _ = io.Copy(io.Discard, said) }()
	first, last, o := 0, 0, options(1)
	o.ReadOnly = true
	for i := 0; i < 25 || last == first && i < 2000; i++ {
		b, err := Open(path, o)
		if err != nil {
			t.Fatal(err)
		}
		n, _ := b.Count()
		if n < last {
			t.Errorf("read %d events after %d", n, last)
		}
		if last = n; i == 0 {
			first = n
		}
		checkAndClose(t, b)
	}
	if last == first {
		t.Error("the other process wrote nothing")
	}
}

func TestReadersShareABook(t *testing.T) {
	path, _ := filledFile(t, 2)
	o := options(1)
	o.ReadOnly = true
	a, err := Open(path, o)
	if err != nil {
		t.Fatal(err)
	}
	b, err := Open(path, o)
	if err != nil {
		t.Fatal(err)
	}
	if a.copied != "" || b.copied != "" {
		t.Error("a book that nobody writes to was copied")
	}
	checkAndClose(t, a)
	checkAndClose(t, b)
}

func TestStaleSummariesAreMadeAnew(t *testing.T) {
	path, exported := filledFile(t, 12)
	alter(t, path, func(tx *bbolt.Tx) error {
		c := tx.Bucket(bucketSummaries).Cursor()
		k, _ := c.First()
		return errors.Join(
			tx.Bucket(bucketMeta).Put(keyStamp, head{}.stamp(0, prints{})),
			tx.Bucket(bucketMeta).Put(keyHead, []byte("?")),
			tx.Bucket(bucketSummaries).Put(k, []byte("old layout")),
			tx.Bucket(bucketSummaries).Put([]byte{9, 9, 9, 9, 9, 9, 9}, []byte("no such stump")),
		)
	})
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	o := options(1)
	o.ReadOnly = true
	b, err := Open(path, o)
	if err != nil {
		t.Fatal(err)
	}
	checkAndClose(t, b)
	if after, _ := os.ReadFile(path); string(after) != string(before) {
		t.Error("opening for reading changed the file")
	}
	b, err = Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	list, err := b.Summaries(blockID(1))
	if err != nil || len(list) != 12 || list[0].Stage != record.StagePainted {
		t.Errorf("%v, %v", list, err)
	}
	if export(t, b) != exported {
		t.Error("another journal")
	}
	checkAndClose(t, b)
}
