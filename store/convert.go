package store

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"go.etcd.io/bbolt"
)

// convert brings a book of an older layout up to date, once it is locked for
// writing and before anything is written to it. First a copy of the file as it is
// goes beside it, synced; then one transaction changes the version. A record of
// version 1 is one of version 2 without an act, so none has to be written anew:
// whenever the program is stopped, the book is whole and of one version or the
// other, however large it is.
func (b *Book) convert() error {
	older := false
	err := guard(func() error {
		tx, err := b.begin(false)
		if err != nil {
			return err
		}
		defer tx.Rollback()
		if err := checkSchema(tx, b.path); err != nil {
			return err
		}
		older = schemaOf(tx) < schema
		return nil
	})
	if err != nil || !older {
		return err
	}
	if b.kept, err = b.keepOlder(); err != nil {
		return problem(kindOf(err), err, "the book %s is of an older version and was left as it is, as no copy of it could be kept: %v", b.path, err)
	}
	return guard(func() error {
		return b.db.Update(func(tx *bbolt.Tx) error {
			return tx.Bucket(bucketMeta).Put(keySchema, binary.BigEndian.AppendUint32(nil, schema))
		})
	})
}

// keepOlder copies the file of the book, byte for byte, under a name that is free
// beside it.
func (b *Book) keepOlder() (string, error) {
	temp, err := b.fileBeside()
	if err != nil {
		return "", explain(b.path, err)
	}
	defer os.Remove(temp)
	for n := 1; ; n++ {
		name := fmt.Sprintf("%s.before-version-%d", b.path, schema)
		if n > 1 {
			name = fmt.Sprintf("%s-%d", name, n)
		}
		if err := publish(temp, name); !errors.Is(err, fs.ErrExist) {
			return name, err
		}
	}
}

// fileBeside copies the file under a passing name in its folder, synced.
func (b *Book) fileBeside() (temp string, err error) {
	info, err := b.file.Stat()
	if err != nil {
		return "", err
	}
	to, err := os.CreateTemp(filepath.Dir(b.path), ".copy-*")
	if err != nil {
		return "", err
	}
	_, err = io.Copy(to, io.NewSectionReader(b.file, 0, info.Size()))
	if err = errors.Join(err, to.Sync(), to.Close()); err != nil {
		_ = os.Remove(to.Name())
		return "", err
	}
	return to.Name(), nil
}

// KeptOlder is the copy of the book that was kept beside it when it was brought
// up to date on opening, "" where it was of this version.
func (b *Book) KeptOlder() string { return b.kept }

func schemaOf(tx *bbolt.Tx) uint32 {
	return binary.BigEndian.Uint32(tx.Bucket(bucketMeta).Get(keySchema))
}

// kindOf is the kind of a problem, ErrDisk where it has none.
func kindOf(err error) error {
	var known *Error
	if errors.As(err, &known) {
		return known.Kind
	}
	return ErrDisk
}
