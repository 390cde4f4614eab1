package store

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// versionOne copies the book that a program of version 1 made into a folder of
// its own, and gives its bytes and its export.
func versionOne(t testing.TB) (path string, book []byte, journal string) {
	t.Helper()
	book, err := os.ReadFile("../testdata/version1/book.barkslip")
	lines, errLines := os.ReadFile("../testdata/version1/journal.jsonl")
	path = filepath.Join(t.TempDir(), "book.barkslip")
	if err := errors.Join(err, errLines, os.WriteFile(path, book, 0o600)); err != nil {
		t.Fatal(err)
	}
	return path, book, string(lines)
}

// asNow is an export of version 1 as this version writes it.
func asNow(journal string) string { return strings.ReplaceAll(journal, `{"v":1,`, `{"v":2,`) }

func schemaIn(t testing.TB, path string) (v uint32) {
	t.Helper()
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{ReadOnly: true, Timeout: time.Second})
	if err != nil {
		t.Fatal(err)
	}
	err = db.View(func(tx *bbolt.Tx) error { v = schemaOf(tx); return nil })
	if err = errors.Join(err, db.Close()); err != nil {
		t.Fatal(err)
	}
	return v
}

func TestABookOfVersionOneIsBroughtUpToDate(t *testing.T) {
	path, before, journal := versionOne(t)
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	checkSound(t, b)
	if got := export(t, b); got != asNow(journal) {
		t.Error("the journal became another one")
	}
	kept, err := os.ReadFile(b.KeptOlder())
	if err != nil || !bytes.Equal(kept, before) || filepath.Dir(b.KeptOlder()) != filepath.Dir(path) {
		t.Errorf("the copy kept is %s: %v", b.KeptOlder(), err)
	}
	summaries := 0
	for _, block := range b.Folded().List() {
		list, err := b.Summaries(block.ID)
		if err != nil {
			t.Fatal(err)
		}
		summaries += len(list)
	}
	if summaries != 24 {
		t.Errorf("%d stumps in the list", summaries)
	}
	events, _ := b.Count()
	made := mustAppend(t, b, on(record.StumpID{Block: b.Folded().List()[0].ID, Row: 1, Tree: 1}, day, &record.Noted{Text: "since"}))
	if made[0].Act == record.None || made[0].Clock <= uint64(events)/2 {
		t.Errorf("the next answer has act %s and clock %d", made[0].Act, made[0].Clock)
	}
	b = reopen(t, b)
	if v := b.KeptOlder(); v != "" {
		t.Errorf("opened again, it was copied to %s", v)
	}
	checkAndClose(t, b)
	if v := schemaIn(t, path); v != schema {
		t.Errorf("it is of version %d", v)
	}
}

func TestReadingABookOfVersionOneLeavesItAsItIs(t *testing.T) {
	path, before, journal := versionOne(t)
	o := options(1)
	o.ReadOnly = true
	for range 2 {
		b, err := Open(path, o)
		if err != nil {
			t.Fatal(err)
		}
		if got := export(t, b); got != asNow(journal) {
			t.Error("the journal became another one")
		}
		if b.KeptOlder() != "" {
			t.Errorf("a copy was kept as %s", b.KeptOlder())
		}
		checkAndClose(t, b)
	}
	now, err := os.ReadFile(path)
	files, _ := os.ReadDir(filepath.Dir(path))
	if err != nil || !bytes.Equal(now, before) || len(files) != 1 {
		t.Errorf("the book was changed, %d files: %v", len(files), err)
	}
}

func TestAnOlderCopyIsNotWrittenOver(t *testing.T) {
	path, before, _ := versionOne(t)
	for _, name := range []string{path + ".before-version-2", path + ".before-version-2-2"} {
		if err := os.WriteFile(name, []byte("mine"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	checkAndClose(t, b)
	kept, err := os.ReadFile(path + ".before-version-2-3")
	if err != nil || !bytes.Equal(kept, before) || b.KeptOlder() != path+".before-version-2-3" {
		t.Errorf("kept as %s: %v", b.KeptOlder(), err)
	}
	if mine, _ := os.ReadFile(path + ".before-version-2"); string(mine) != "mine" {
		t.Error("a file was written over")
	}
}

// Without room for its copy a book stays of the version it is.
func TestABookThatCannotBeCopiedIsLeft(t *testing.T) {
	path, before, _ := versionOne(t)
	b := &Book{path: filepath.Join(t.TempDir(), "away", "book")}
	if _, err := b.keepOlder(); err == nil {
		t.Error("a book without a file was copied")
	}
	if os.Getuid() == 0 {
		t.Skip("this user may write anywhere")
	}
	if err := os.Chmod(filepath.Dir(path), 0o500); err != nil {
		t.Fatal(err)
	}
	defer func() { _ = os.Chmod(filepath.Dir(path), 0o700) }()
	if _, err := Open(path, options(1)); err == nil || !strings.Contains(err.Error(), "was left as it is") {
		t.Errorf("it says %v", err)
	}
	if now, _ := os.ReadFile(path); !bytes.Equal(now, before) {
		t.Error("the book was changed")
	}
}

// A program killed while it brings a book up to date leaves it whole, of the one
// version or the other, and with its copy where it is of the newer.
func TestKilledWhileBroughtUpToDate(t *testing.T) {
	const rounds = 15
	for range rounds {
		path, before, journal := versionOne(t)
		cmd := childProcess(t, "hold", path, 0)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(rand.IntN(60_000)) * time.Microsecond)
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
		if v := schemaIn(t, path); v == schema {
			if kept, err := os.ReadFile(path + ".before-version-2"); err != nil || !bytes.Equal(kept, before) {
				t.Errorf("it is of version %d and its copy is not there: %v", v, err)
			}
		}
		b, err := Open(path, options(1))
		if err != nil {
			t.Fatal(err)
		}
		if got := export(t, b); got != asNow(journal) {
			t.Error("the journal became another one")
		}
		checkAndClose(t, b)
	}
}

func TestAJournalOfVersionOneIsJoined(t *testing.T) {
	path, _, journal := versionOne(t)
	whole, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer checkAndClose(t, whole)
	b := newBook(t)
	report, err := b.Join(ReadLines(strings.NewReader(journal)))
	if err != nil || len(report.Refused)+len(report.Clashing) > 0 {
		t.Fatal(report, err)
	}
	if export(t, b) != export(t, whole) {
		t.Error("the journal joined is not the journal of the book")
	}
	report, err = b.Join(whole.All())
	if err != nil || report.Added != 0 || len(report.Clashing) != 0 {
		t.Errorf("the book joined to it: %+v, %v", report, err)
	}
	for _, block := range whole.Folded().List() {
		one, _ := whole.Summaries(block.ID)
		two, _ := b.Summaries(block.ID)
		if len(one) != 24 || len(two) != 24 {
			t.Errorf("%d and %d stumps", len(one), len(two))
		}
		for i := range two {
			if p := (spot{1}); !bytes.Equal(packSummary(p, one[i], 0), packSummary(p, two[i], 0)) {
				t.Errorf("the summaries of %s differ", one[i].ID.Place())
			}
		}
	}
}
