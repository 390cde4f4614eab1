package store

import (
	"bytes"
	"path/filepath"
	"testing"
	"time"

	"go.etcd.io/bbolt"
)

func TestApart(t *testing.T) {
	b := newBook(t)
	if got := b.Apart(); got != 0 {
		t.Fatalf("a new book is %v apart", got)
	}
	ahead := -4521*time.Hour - 90*time.Second
	if err := b.SetApart(ahead - 300*time.Millisecond); err != nil {
		t.Fatal(err)
	}
	if b = reopen(t, b); b.Apart() != ahead {
		t.Errorf("%v apart after opening again, want %v", b.Apart(), ahead)
	}
	mustAppend(t, b, settings(1)...)
	if b = reopen(t, b); b.Apart() != ahead {
		t.Errorf("%v apart after an answer, want %v", b.Apart(), ahead)
	}
	if err := b.SetApart(101 * 366 * 24 * time.Hour); err == nil {
		t.Error("more than 100 years were taken")
	}

	reader, err := Open(b.Path(), Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer reader.Close()
	if reader.Apart() != ahead {
		t.Errorf("%v apart for a reader, want %v", reader.Apart(), ahead)
	}

	other, err := Create(filepath.Join(t.TempDir(), "other.bark"), options(2))
	if err != nil {
		t.Fatal(err)
	}
	defer checkAndClose(t, other)
	if _, err := other.Join(b.All()); err != nil {
		t.Fatal(err)
	}
	if other.Apart() != 0 {
		t.Errorf("joining made a book %v apart", other.Apart())
	}
	checkAndClose(t, b)
}

func TestApartThatDoesNotHold(t *testing.T) {
	b := newBook(t)
	if err := b.SetApart(time.Hour); err != nil {
		t.Fatal(err)
	}
	checkAndClose(t, b)
	alter(t, b.Path(), func(tx *bbolt.Tx) error {
		broken := bytes.Clone(tx.Bucket(bucketMeta).Get(keyApart))
		broken[3] ^= 1
		return tx.Bucket(bucketMeta).Put(keyApart, broken)
	})
	_, err := Open(b.Path(), options(2))
	wantProblem(t, "a day of its own that does not hold", err, ErrDamaged)
}
