package store

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"iter"
	"os"
	"path/filepath"
	"slices"

	"barkslip/core/record"
)

// Salvaged is what holds of a book, read page by page.
type Salvaged struct {
	Events  []record.Event // by clock and id, each once
	Of      int            // how many the book should hold by its own count; 0 where that is lost
	Old     int            // of Events, those that stand only on pages no longer in use
	Damaged int            // records found that do not hold, and of which no other copy does
	Broken  int            // pages in use that hold nothing that can be read
	Lacking []Lacking      // stumps of which answers are missing, by their summaries
}

// Lacking is a stump of which answers are missing.
type Lacking struct {
	Stump  record.StumpID
	Events int
}

// Missing is how many events are known to be missing.
func (s *Salvaged) Missing() int {
	named := 0
	for _, l := range s.Lacking {
		named += l.Events
	}
	return max(s.Of-len(s.Events), named, s.Damaged)
}

// Say is what was found and what is missing, a sentence each.
func (s *Salvaged) Say() (out []string) {
	n := len(s.Events)
	switch missing := s.Missing(); {
	case s.Of == 0:
		out = append(out, fmt.Sprintf("%d records can be read; how many there should be is lost", n))
	case missing == 0:
		out = append(out, fmt.Sprintf("all %d records of the book can be read", n))
	default:
		out = append(out, canRead(n, n+missing))
	}
	if s.Old > 0 {
		out = append(out, fmt.Sprintf("%d of them stand only on pages that were no longer in use", s.Old))
	}
	for i, l := range s.Lacking {
		if i == mostFindings {
			out = append(out, fmt.Sprintf("and %d more stumps have answers missing", len(s.Lacking)-i))
			break
		}
		answers := "1 answer is"
		if l.Events != 1 {
			answers = fmt.Sprintf("%d answers are", l.Events)
		}
		out = append(out, fmt.Sprintf("%s missing of %s", answers, l.Stump.Long()))
	}
	return out
}

// Salvage reads what holds of a book whose pages are broken: every leaf page, whether or
// not anything leads to it, and each record by its checksum. It writes nothing. The error
// is for a file that cannot be read, or in which nothing of a book is.
func Salvage(path string) (*Salvaged, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, explain(path, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err == nil && !info.Mode().IsRegular() {
		return nil, problem(ErrNotABook, nil, "%s is not a file, so it is no book; choose another", path)
	}
	s, err := salvage(f)
	if err == nil && len(s.Events) == 0 && s.Of == 0 {
		return nil, problem(ErrNotABook, nil, "nothing of a book is found in %s", path)
	}
	return s, explain(path, err)
}

// Journal gives every event in fold order; what is missing is told by Say.
func (s *Salvaged) Journal(fn func(record.Event) error) error {
	for _, e := range s.Events {
		if err := fn(e); err != nil {
			return err
		}
	}
	return nil
}

// All is the events as a sequence, as for joining them into a book.
func (s *Salvaged) All() iter.Seq2[record.Event, error] { return all(s) }

// foundRecord is a record as it stands on a page, not yet read.
type foundRecord struct {
	key, value []byte
	used       bool
}

// salvor collects what stands on leaf pages.
type salvor struct {
	records   []foundRecord
	numbers   map[uint16]map[record.ID]bool // blocks that a number was given to, as any page has it
	known     map[record.ID]bool            // blocks that are named anywhere
	summaries map[spot]uint32               // events of each stump, by the pages in use
	head      head
	hasHead   bool
}

func salvage(f *os.File) (*Salvaged, error) {
	l, err := openLeaves(f)
	if err != nil {
		return nil, err
	}
	v := &salvor{numbers: map[uint16]map[record.ID]bool{}, known: map[record.ID]bool{}, summaries: map[spot]uint32{}}
	l.each(v.take)
	s := v.read()
	s.Broken = l.broken
	return s, nil
}

// take takes one element by the form of its key and value.
func (v *salvor) take(key, value []byte, used bool) {
	switch {
	case len(key) == keyLen:
		v.records = append(v.records, foundRecord{bytes.Clone(key), bytes.Clone(value), used})
	case len(key) == 16 && len(value) == 2:
		n := binary.BigEndian.Uint16(value)
		if v.numbers[n] == nil {
			v.numbers[n] = map[record.ID]bool{}
		}
		v.numbers[n][record.ID(key)], v.known[record.ID(key)] = true, true
	case len(key) == len(spot{}) && used && len(value) > summaryEvents+4+4:
		body, sum := value[:len(value)-4], binary.BigEndian.Uint32(value[len(value)-4:])
		if crc32.Update(crc32.Checksum(key, castagnoli), castagnoli, body) == sum {
			v.summaries[spot(key)] = max(v.summaries[spot(key)], binary.BigEndian.Uint32(value[summaryEvents:]))
		}
	case bytes.Equal(key, keyHead) && used:
		if h, ok := unpackHead(value); ok && (!v.hasHead || h.events > v.head.events) {
			v.head, v.hasHead = h, true
		}
	}
}

// summaryEvents is where a summary tells how many events its stump has.
const summaryEvents = 4

// read reads the records: those of no stump first, which name the blocks.
func (v *salvor) read() *Salvaged {
	s := &Salvaged{}
	slices.SortStableFunc(v.records, func(a, b foundRecord) int {
		return cmp.Or(bytes.Compare(a.key[:2], b.key[:2]), cmp.Compare(unused(a), unused(b)))
	})
	at, old, hurt := map[record.ID]int{}, map[record.ID]bool{}, map[record.ID]bool{}
	for _, r := range v.records {
		e, err := v.unpack(r)
		if err != nil {
			if _, _, id, ok := splitKey(r.key); ok && r.used {
				hurt[id] = true
			}
			continue
		}
		if made, ok := e.Body.(*record.BlockMade); ok {
			v.known[made.Block] = true
		}
		if !r.used && v.hasHead && e.Clock > v.head.clock && e.Clock <= furthestClock {
			continue // of a change that was never ended
		}
		i, twice := at[e.ID]
		if !twice {
			at[e.ID] = len(s.Events)
			old[e.ID] = !r.used
			s.Events = append(s.Events, e)
			continue
		}
		if r.used == !old[e.ID] && bytes.Compare(record.Line(e), record.Line(s.Events[i])) < 0 {
			s.Events[i] = e
		}
	}
	for id, is := range old {
		if is {
			s.Old++
		}
		delete(hurt, id)
	}
	s.Damaged = len(hurt)
	if v.hasHead && int(v.head.events) >= len(s.Events)-s.Old { // else it is an older one
		s.Of = int(v.head.events)
	}
	v.lacking(s)
	slices.SortFunc(s.Events, func(a, b record.Event) int { return cmp.Or(cmp.Compare(a.Clock, b.Clock), a.ID.Compare(b.ID)) })
	return s
}

func unused(r foundRecord) int {
	if r.used {
		return 0
	}
	return 1
}

// unpack reads a record. Its checksum goes over its block too, so that among blocks that
// its number may stand for only the right one holds.
func (v *salvor) unpack(r foundRecord) (record.Event, error) {
	p, clock, id, ok := splitKey(r.key)
	if !ok {
		return record.Event{}, record.ErrDamaged
	}
	if p == general {
		e, err := record.Unpack(r.value, record.NoStump, clock, id)
		if err != nil {
			return e, err
		}
		return knownNow(e), nil
	}
	for _, blocks := range []map[record.ID]bool{v.numbers[p.number()], v.known} {
		for block := range blocks {
			if e, err := record.Unpack(r.value, p.stump(block), clock, id); err == nil {
				v.numbered(p.number(), block)
				return knownNow(e), nil
			}
		}
	}
	return record.Event{}, record.ErrDamaged
}

// numbered remembers what a number stands for.
func (v *salvor) numbered(n uint16, block record.ID) {
	if v.numbers[n] == nil {
		v.numbers[n] = map[record.ID]bool{}
	}
	v.numbers[n][block] = true
}

// lacking compares what was found with what the summaries say of each stump, under the
// block that its block goes on as.
func (v *salvor) lacking(s *Salvaged) {
	var general []record.Event
	for _, e := range s.Events {
		if e.Stump == record.NoStump {
			general = append(general, e)
		}
	}
	book := record.FoldBook(general, utcOnly)
	on := func(id record.StumpID) record.StumpID {
		id.Block = book.CanonicalBlock(id.Block)
		return id
	}
	have := map[record.StumpID]int{}
	for _, e := range s.Events {
		have[on(e.Stump)]++
	}
	for p, of := range v.summaries {
		best, stump := -1, record.StumpID{}
		for block := range v.numbers[p.number()] {
			if id := on(p.stump(block)); have[id] > best {
				best, stump = have[id], id
			}
		}
		if best >= 0 && best < int(of) {
			s.Lacking = append(s.Lacking, Lacking{stump, int(of) - best})
		}
	}
	slices.SortFunc(s.Lacking, func(a, b Lacking) int { return a.Stump.Compare(b.Stump) })
}

// SalvageInto makes a sound book at path of what was salvaged.
func SalvageInto(s *Salvaged, path string, o Options) error {
	if _, err := os.Lstat(path); err == nil {
		return exists(path)
	}
	if err := folderFor(path, "the book"); err != nil {
		return err
	}
	temp, err := newBookBeside(path, s, o)
	if err != nil {
		return err
	}
	defer os.Remove(temp)
	return publish(temp, path)
}

// newBookBeside makes a book of events under a passing name, and checks it.
func newBookBeside(path string, s *Salvaged, o Options) (temp string, err error) {
	if temp, err = makeEmpty(filepath.Dir(path)); err != nil {
		return "", explain(path, err)
	}
	defer func() {
		if err != nil {
			_ = os.Remove(temp)
		}
	}()
	b, err := Open(temp, o)
	if err != nil {
		return "", err
	}
	report, err := b.Join(s.All())
	var found []string
	if err == nil {
		found, err = b.Check()
	}
	if err = errors.Join(err, b.Close()); err != nil {
		return "", err
	}
	if report.Added != len(s.Events)-len(report.Refused)-report.More || len(found) > 0 {
		return "", problem(ErrProgram, nil, "the book made of what was salvaged is not sound: %d of %d records, %v", report.Added, len(s.Events), found)
	}
	return temp, nil
}
