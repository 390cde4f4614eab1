package store

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"

	"go.etcd.io/bbolt"
)

// CopyFile writes a copy of the book at from as it stands at this moment, also while
// another program writes to it, and gives it its name once it is found sound from end to
// end. It takes no more room than the book. Nothing is written over.
func CopyFile(from, to string, o Options) error {
	if _, err := os.Lstat(to); err == nil {
		return exists(to)
	}
	if err := folderFor(to, "the copy"); err != nil {
		return err
	}
	temp, found, err := checkedCopy(from, to, o)
	if err != nil {
		return err
	}
	defer os.Remove(temp)
	if len(found) > 0 {
		return problem(ErrDamaged, nil, "the book %s is damaged, so no copy of it was kept as a safe one: %s; save what holds with barkslip salvage", from, found[0])
	}
	return publish(temp, to)
}

// checkedCopy copies a book under a passing name in the folder of to, and says what is
// found wrong with the copy from end to end.
func checkedCopy(from, to string, o Options) (temp string, found []string, err error) {
	if err := probe(from); err != nil {
		return "", nil, err
	}
	f, err := os.CreateTemp(filepath.Dir(to), ".copy-*")
	if err != nil {
		return "", nil, explain(to, err)
	}
	temp = f.Name()
	err = errors.Join(copyLevel(from, f, func(err error) error { return explain(to, err) }), f.Sync(), f.Close())
	if err == nil {
		found, err = checkAt(temp, from, o)
	}
	if err != nil {
		_ = os.Remove(temp)
		return "", nil, explain(to, err)
	}
	return temp, found, nil
}

// checkAt checks the copy at temp of a book; what is found is said of the book.
func checkAt(temp, from string, o Options) (found []string, err error) {
	o = o.filled()
	o.ReadOnly = true
	b, err := Open(temp, o)
	if err != nil && (errors.Is(err, ErrDamaged) || errors.Is(err, ErrCutShort)) {
		return []string{strings.ReplaceAll(strings.TrimSuffix(err.Error(), "; bring it back from a copy"), temp, from)}, nil
	}
	if err != nil {
		return nil, err
	}
	found, err = b.Check()
	return found, errors.Join(err, b.Close())
}

// rawCopy copies a book that another process holds. The copy loses its name before
// anything is in it, where the system can, so that nothing is left behind however the
// program ends.
func rawCopy(path string) (*os.File, error) {
	to, err := os.CreateTemp("", "read-*.book")
	if err != nil {
		return nil, noRoom(path, err)
	}
	_ = os.Remove(to.Name())
	if err := copyLevel(path, to, func(err error) error { return noRoom(path, err) }); err != nil {
		dropCopy(to)
		return nil, err
	}
	return to, nil
}

// copyLevel copies a book that another process may hold into an empty file, between two
// readings of its first pages that are equal: no transaction ended meanwhile, so the
// pages that they lead to were not written over. unwritten says why the copy could not be
// written.
func copyLevel(path string, to *os.File, unwritten func(error) error) error {
	from, err := os.Open(path)
	if err != nil {
		return explain(path, err)
	}
	defer from.Close()
	c := copier{from: from, to: to, here: make([]byte, atOnce), there: make([]byte, atOnce), unwritten: unwritten}
	for last := time.Now().Add(patience); time.Now().Before(last); {
		done, err := c.try()
		if done || err != nil {
			return explain(path, err)
		}
		time.Sleep(time.Duration(1+rand.IntN(10)) * time.Millisecond)
	}
	return busy(path)
}

// noRoom says why no copy can be made to read a book from.
func noRoom(path string, err error) error {
	if dir := os.TempDir(); isFull(err) {
		return problem(ErrFull, err, "there is no room in %s for a copy of the book %s to read from; make room there", dir, path)
	}
	return problem(ErrDisk, err, "the book %s is open elsewhere, and no copy to read from can be made in %s; set TMPDIR to another folder", path, os.TempDir())
}

// dropCopy takes away a copy that was made for reading.
func dropCopy(f *os.File) {
	_ = f.Close()
	_ = os.Remove(f.Name()) // on most systems it is gone already
}

// atOnce is how much of a book is read at once, in bytes.
const atOnce = 1 << 20

// patience is how long a reader waits for a moment in which the book that another
// process writes to stands still.
const patience = 10 * time.Second

// halfWritten is for how long a first page may not hold because it is being written.
const halfWritten = 100 * time.Millisecond

// copier brings a copy level with a book that another process holds.
type copier struct {
	from, to    *os.File
	here, there []byte // what stands in each, atOnce bytes of it
	unwritten   func(error) error
}

// try brings the copy level with the book; done is false where a transaction
// ended meanwhile. Tried again, it writes only what is not the same already, so it
// comes to an end also while answers are given.
func (c copier) try() (done bool, err error) {
	before, err := readHead(c.from)
	m, ok := before.newest()
	if err != nil || !ok {
		return false, err
	}
	if err := c.level(int64(m.high) * m.pageSize); err != nil {
		return false, err
	}
	if before.halved() {
		time.Sleep(halfWritten) // is it broken, or being written?
	}
	after, err := readHead(c.from)
	return err == nil && before.same(after), err
}

// level makes the first bytes of the copy those of the book.
func (c copier) level(size int64) error {
	for at := int64(0); at < size; at += atOnce {
		n, err := c.from.ReadAt(c.here[:min(atOnce, size-at)], at)
		if err != nil && !errors.Is(err, io.EOF) { // cut short meanwhile: the first pages tell
			return err
		}
		if have, _ := c.to.ReadAt(c.there[:n], at); have == n && bytes.Equal(c.here[:n], c.there[:n]) {
			continue
		}
		if _, err := c.to.WriteAt(c.here[:n], at); err != nil {
			return c.unwritten(err)
		}
	}
	return nil
}

// Restore puts a copy in the place of a book, after checking the copy from end
// to end. A book that stands there is kept as NAME.before-restore-1, or the
// next number that is free.
func Restore(from, to string, o Options) error {
	if real, err := filepath.EvalSymlinks(to); err == nil {
		to = real
	}
	if a, err := os.Stat(from); err == nil {
		if b, err := os.Stat(to); err == nil && os.SameFile(a, b) {
			return problem(ErrExists, nil, "%s and %s are the same file; give a copy to restore from", from, to)
		}
	}
	if err := folderFor(to, "the book"); err != nil {
		return err
	}
	temp, found, err := checkedCopy(from, to, o)
	if err != nil {
		return aboutCopy(err, from)
	}
	defer os.Remove(temp)
	if len(found) > 0 {
		return problem(ErrDamaged, nil, "the copy %s is damaged and was not restored: %s", from, found[0])
	}
	info, err := os.Lstat(to)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return publish(temp, to)
	case err != nil:
		return explain(to, err)
	case info.IsDir():
		return problem(ErrNotABook, nil, "%s is a folder; give the name of the book in it", to)
	case lockedElsewhere(to):
		return problem(ErrLocked, nil, "the book %s is open elsewhere; close it there before restoring", to)
	}
	if err := os.Chmod(temp, info.Mode().Perm()); err != nil {
		return explain(to, err)
	}
	if err := keepAside(to); err != nil {
		return err
	}
	if err := os.Rename(temp, to); err != nil {
		return explain(to, err)
	}
	return explain(to, syncDir(filepath.Dir(to)))
}

// aboutCopy words what is wrong with the copy that was to be restored: to bring
// it back from a copy is no advice there.
func aboutCopy(err error, from string) error {
	var known *Error
	if !errors.As(err, &known) {
		return err
	}
	text := strings.ReplaceAll(known.Text, "the book "+from, "the copy "+from)
	return problem(known.Kind, err, "%s", strings.ReplaceAll(text, "bring it back from a copy", "try another copy"))
}

// keepAside gives the file at path a second name, or moves it to that name
// where a disk knows no second names.
func keepAside(path string) error {
	for n := 1; ; n++ {
		aside := fmt.Sprintf("%s.before-restore-%d", path, n)
		if _, err := os.Lstat(aside); err == nil {
			continue
		}
		err := os.Link(path, aside)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			err = os.Rename(path, aside)
		}
		return explain(path, err)
	}
}

// lockedElsewhere says whether another process writes to the file.
func lockedElsewhere(path string) bool {
	var f *os.File
	err := guard(func() error {
		open := func(name string, flag int, mode os.FileMode) (_ *os.File, err error) {
			f, err = os.OpenFile(name, flag, mode)
			return f, err
		}
		db, err := bbolt.Open(path, 0, &bbolt.Options{ReadOnly: true, Timeout: time.Nanosecond, OpenFile: open})
		if err == nil {
			err = db.Close()
		}
		return err
	})
	if f != nil {
		_ = f.Close()
	}
	return errors.Is(explain(path, err), ErrLocked)
}
