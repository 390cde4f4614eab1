package store

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"go.etcd.io/bbolt"
	berrors "go.etcd.io/bbolt/errors"

	"barkslip/core/due"
)

// Open opens a book. For reading only, it also opens one that another process
// holds, as it stands at that moment.
func Open(path string, o Options) (*Book, error) {
	o = o.filled()
	err := probe(path)
	if o.ReadOnly && errors.Is(err, ErrLocked) { // written too often to be judged where it stands
		return openCopy(path, o)
	}
	if err != nil {
		return nil, err
	}
	if o.ReadOnly {
		return openToRead(path, o)
	}
	return openFile(path, nil, o, toWrite)
}

// OpenOrCreate opens a book, or makes it if there is none.
func OpenOrCreate(path string, o Options) (*Book, error) {
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) && !o.ReadOnly {
		b, err := Create(path, o)
		if !errors.Is(err, ErrExists) {
			return b, err
		}
	}
	return Open(path, o)
}

// openToRead opens the book itself if no other process writes to it and its
// summaries are up to date, else a copy.
func openToRead(path string, o Options) (*Book, error) {
	direct := o
	direct.Timeout = time.Nanosecond
	b, err := openFile(path, nil, direct, toRead)
	if err == nil || !errors.Is(err, ErrLocked) && !errors.Is(err, errStale) {
		return b, err
	}
	return openCopy(path, o)
}

// openCopy opens a copy of the book as it stands at this moment.
func openCopy(path string, o Options) (*Book, error) {
	copied, err := rawCopy(path)
	if err != nil {
		return nil, err
	}
	if err := judgeFile(copied, path); err != nil {
		dropCopy(copied)
		return nil, err
	}
	b, err := openFile(path, copied, o, passing)
	if err != nil {
		dropCopy(copied)
		return nil, err
	}
	b.readOnly = true
	return b, nil
}

// errStale is a book opened for reading whose summaries must be made anew.
var errStale = errors.New("the summaries are stale")

// way is how a file is opened.
type way int

const (
	toWrite way = iota // the book itself, brought up to date
	toRead             // the book itself, as it is
	passing            // a passing copy of it: its summaries may be made anew
)

// openFile opens the book at path, or a copy of it where one is given.
func openFile(path string, copied *os.File, o Options, how way) (*Book, error) {
	readOnly := how == toRead
	b := &Book{path: path, readOnly: readOnly, zones: o.Zones, random: o.Random}
	if copied != nil {
		b.copied = copied.Name()
	}
	err := guard(func() (err error) {
		b.db, err = bbolt.Open(path, 0o600, &bbolt.Options{
			Timeout:         o.Timeout,
			ReadOnly:        readOnly,
			FreelistType:    bbolt.FreelistMapType,
			NoStatistics:    true,
			InitialMmapSize: room(o),
			OpenFile: func(name string, flag int, mode os.FileMode) (*os.File, error) {
				if b.file = copied; copied != nil {
					return copied, nil
				}
				f, err := os.OpenFile(name, flag&^os.O_CREATE, mode)
				b.file = f
				return f, err
			},
		})
		if err == nil && o.Much {
			b.db.AllocSize = growth
		}
		return err
	})
	if err == nil {
		err = b.seeHalved(how == toWrite && !o.GoOn)
	}
	if err == nil && how == toWrite {
		err = b.convert()
	}
	if err == nil {
		err = b.load()
	}
	if err != nil {
		b.abandon()
		return nil, b.explainOpening(err)
	}
	return b, nil
}

// seeHalved sees whether the book may have lost its last change; with refuse it is then not
// opened, as the next change would write over what tells of it.
func (b *Book) seeHalved(refuse bool) error {
	h, err := readHead(b.file)
	if err != nil {
		return err
	}
	if b.halved = h.halved(); b.halved && refuse {
		return problem(ErrHalved, nil, "%s; nothing was written to it. Check it, then open it on the screens to go on with it, or bring it back from a copy", HalvedWords(b.path))
	}
	return nil
}

// HalvedWords tell of a book that may have lost its last change.
func HalvedWords(path string) string {
	return fmt.Sprintf("one of the two first pages of the book %s does not hold, so its last change may be lost", path)
}

// room is how much of the memory's addresses, in bytes, is set apart for a book to which
// much is written: as long as it fits in there, what is being written need not be copied
// where the file grows. Where the file itself would grow by it, or addresses are few, none
// is.
func room(o Options) int {
	if !o.Much || o.ReadOnly || runtime.GOOS == "windows" || math.MaxInt == math.MaxInt32 {
		return 0
	}
	return 512 << 20
}

// growth is by how many bytes at least the file of such a book grows.
const growth = 1 << 20

// abandon lets go of a file whose opening failed, and of its lock.
func (b *Book) abandon() {
	if b.db != nil && !b.dead.Load() {
		_ = guard(b.db.Close)
	}
	if b.file != nil {
		_ = b.file.Close()
	}
}

func (b *Book) explainOpening(err error) error {
	if errors.Is(err, errStale) {
		return err
	}
	if errors.Is(err, berrors.ErrInvalid) {
		return problem(ErrNotABook, err, "%s is not a book of this program; choose another file", b.path)
	}
	return b.explain(err)
}

// load reads what is held in memory, and makes the summaries anew if they do
// not go with the journal.
func (b *Book) load() error {
	stale := false
	err := guard(func() error {
		tx, err := b.begin(false)
		if err != nil {
			return err
		}
		defer tx.Rollback()
		st, err := loadState(tx, b.path, b.zones)
		if err != nil {
			return err
		}
		of, ok := fresh(tx, st.head)
		switch {
		case !ok, st.head.clock > furthestClock:
			stale = true
		case of.last != uint64(tx.ID()):
			return problem(ErrDamaged, nil, "the book %s is damaged: its last change did not reach the disk as a whole; bring it back from a copy", b.path)
		case basePrint(tx) != of.base:
			return problem(ErrDamaged, nil, "the book %s is damaged: what it keeps of its blocks does not agree with its counts; bring it back from a copy", b.path)
		default:
			stale = sumsPrint(tx) != of.sums
		}
		if stale && ok { // not older, but damaged
			err = b.canRemake(tx)
		}
		st.prints, st.based = of, ok
		b.state.Store(st)
		return err
	})
	if err != nil || !stale {
		return err
	}
	if b.readOnly {
		return errStale
	}
	return b.rebuild()
}

// canRemake says why damaged summaries cannot be made anew where they stand: a page that
// belongs elsewhere would be written to.
func (b *Book) canRemake(tx *bbolt.Tx) error {
	h, err := readHead(b.file)
	if err != nil {
		return err
	}
	m, _ := h.newest()
	said := walkPages(b.file, m, true)
	for k := range rising(tx.Bucket(bucketSummaries), nil) {
		if len(k) != len(spot{}) {
			said = append(said, "a page stands in the place of one with summaries")
			break
		}
	}
	if len(said) > 0 {
		return problem(ErrDamaged, nil, "the book %s is damaged: %s; bring it back from a copy", b.path, said[0])
	}
	return nil
}

// Create makes a new book. It refuses if anything stands at the path.
func Create(path string, o Options) (*Book, error) {
	if _, err := os.Lstat(path); err == nil {
		return nil, exists(path)
	}
	if err := folderFor(path, "the book"); err != nil {
		return nil, err
	}
	temp, err := makeEmpty(filepath.Dir(path))
	if err != nil {
		return nil, explain(path, err)
	}
	defer os.Remove(temp)
	if err := publish(temp, path); err != nil {
		return nil, err
	}
	return Open(path, o)
}

// CreateFilled makes a new book that holds what fill writes into it. It has its name only
// once it is whole: of a program that is stopped meanwhile nothing is left under it.
func CreateFilled(path string, o Options, fill func(*Book) error) error {
	if _, err := os.Lstat(path); err == nil {
		return exists(path)
	}
	if err := folderFor(path, "the book"); err != nil {
		return err
	}
	temp, err := makeEmpty(filepath.Dir(path))
	if err != nil {
		return explain(path, err)
	}
	defer os.Remove(temp)
	b, err := Open(temp, o)
	if err == nil {
		err = errors.Join(fill(b), b.Close())
	}
	if err != nil {
		return underName(err, temp, path)
	}
	return publish(temp, path)
}

// underName words a problem with a file that has not got its name yet.
func underName(err error, temp, path string) error {
	var known *Error
	if !errors.As(err, &known) {
		return err
	}
	return problem(known.Kind, err, "%s", strings.ReplaceAll(known.Text, temp, path))
}

// folderFor says so if what is to be written at path has no folder.
func folderFor(path, what string) error {
	dir := filepath.Dir(path)
	if info, err := os.Stat(dir); errors.Is(err, fs.ErrNotExist) || err == nil && !info.IsDir() {
		return problem(ErrMissing, err, "there is no folder %s for %s; make it first", dir, what)
	}
	return nil
}

func exists(path string) error {
	return problem(ErrExists, fs.ErrExist, "%s is there already and is not written over; choose another name", path)
}

// makeEmpty writes an empty book under a passing name.
func makeEmpty(dir string) (temp string, err error) {
	f, err := os.CreateTemp(dir, ".new-book-*")
	if err != nil {
		return "", err
	}
	temp = f.Name()
	if err := f.Close(); err != nil {
		return "", err
	}
	db, err := bbolt.Open(temp, 0o600, &bbolt.Options{FreelistType: bbolt.FreelistMapType})
	if err == nil {
		err = errors.Join(db.Update(layOut), db.Close())
	}
	if err != nil {
		_ = os.Remove(temp)
	}
	return temp, err
}

// layOut makes the buckets of an empty book.
func layOut(tx *bbolt.Tx) error {
	for _, name := range [][]byte{bucketMeta, bucketBlocks, bucketJournal, bucketSummaries} {
		if _, err := tx.CreateBucket(name); err != nil {
			return err
		}
	}
	meta := tx.Bucket(bucketMeta)
	if err := errors.Join(meta.Put(keySchema, binary.BigEndian.AppendUint32(nil, schema)), meta.Put(keyHead, head{}.pack())); err != nil {
		return err
	}
	return meta.Put(keyStamp, head{}.stamp(due.SummaryVersion, prints{base: basePrint(tx), last: uint64(tx.ID())}))
}

// publish gives a finished file its name, never over another one, and makes
// the name last.
func publish(temp, path string) error {
	err := os.Link(temp, path)
	if errors.Is(err, fs.ErrExist) {
		return exists(path)
	}
	if err != nil { // some disks know no second name for a file
		if _, there := os.Lstat(path); there == nil {
			return exists(path)
		}
		if err := os.Rename(temp, path); err != nil {
			return explain(path, err)
		}
	}
	_ = os.Remove(temp)
	return explain(path, syncDir(filepath.Dir(path)))
}

// syncDir makes names in a folder last, where the system can.
func syncDir(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}
