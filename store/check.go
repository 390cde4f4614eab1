package store

import (
	"bytes"
	"fmt"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// mostFindings is how many findings of one kind are told one by one.
const mostFindings = 20

// Check goes over the book from end to end and says what it finds wrong, each
// in a sentence; a sound book has none. The error is for a check that could
// not be made.
func (b *Book) Check() ([]string, error) {
	b.writing.Lock()
	defer b.writing.Unlock()
	if b.closed.Load() {
		return nil, problem(ErrClosed, nil, "the book %s is closed", b.path)
	}
	if b.dead.Load() {
		return []string{b.deadError().Error()}, nil
	}
	h, err := readHead(b.file)
	if err != nil {
		return nil, b.explain(err)
	}
	if err := h.judge(b.file, b.path); err != nil {
		return append([]string{err.Error()}, b.readable()...), nil // pages may lead back to themselves: nothing is followed
	}
	if found := checkPages(b, h); len(found) > 0 {
		return append(found, b.readable()...), nil // the rest is not worth comparing
	}
	found := &findings{}
	err = b.view(func(tx *bbolt.Tx, st *state) error {
		for err := range tx.Check() {
			found.say("pages", "the pages do not fit together: %v", err)
		}
		if len(found.kinds) > 0 {
			return nil
		}
		found.blocks(tx)
		found.journal(tx, st)
		return found.summaries(tx, st)
	})
	if found.short {
		return append(found.all(), b.readable()...), err
	}
	return found.all(), err
}

// checkPages looks at the file's pages without following any that is broken.
func checkPages(b *Book, h fileHead) (found []string) {
	for i, m := range h.metas {
		if !m.holds {
			found = append(found, fmt.Sprintf("the first page number %d does not hold; the book was read by the other one", i+1))
		}
	}
	m, _ := h.newest()
	return append(found, walkPages(b.file, m, true)...)
}

// readable says how many of the records can be read, page by page, and whose are
// missing.
func (b *Book) readable() []string {
	s, err := salvage(b.file)
	if err != nil {
		return []string{b.explain(err).Error()}
	}
	return s.Say()
}

func canRead(n, of int) string {
	return fmt.Sprintf("%d of the %d records of the book can be read", n, max(n, of))
}

// findings collects sentences, a few of each kind.
type findings struct {
	short bool // not all records can be read by the tree
	kinds []string
	said  map[string][]string
	more  map[string]int
}

func (f *findings) say(kind, format string, args ...any) {
	if f.said == nil {
		f.said, f.more = map[string][]string{}, map[string]int{}
	}
	if f.said[kind] == nil {
		f.kinds = append(f.kinds, kind)
	}
	if len(f.said[kind]) == mostFindings {
		f.more[kind]++
		return
	}
	f.said[kind] = append(f.said[kind], fmt.Sprintf(format, args...))
}

func (f *findings) all() []string {
	var out []string
	for _, kind := range f.kinds {
		out = append(out, f.said[kind]...)
		if n := f.more[kind]; n > 0 {
			out = append(out, fmt.Sprintf("and %d more of the %s", n, kind))
		}
	}
	return out
}

func (f *findings) blocks(tx *bbolt.Tx) {
	taken := map[string]bool{}
	_ = tx.Bucket(bucketBlocks).ForEach(func(k, v []byte) error {
		if len(k) != 16 || len(v) != 2 || taken[string(v)] || bytes.Equal(v, numberKey(0)) {
			f.say("blocks", "the number of the block %x does not hold", k)
		}
		taken[string(v)] = true
		return nil
	})
}

// journal unpacks every record and compares what is kept about all of them.
func (f *findings) journal(tx *bbolt.Tx, st *state) {
	ids, read, r := map[record.ID]bool{}, 0, recordReader{st: st}
	for k, v := range rising(tx.Bucket(bucketJournal), nil) {
		e, err := r.unpack(k, v)
		if err != nil {
			f.say("records", "the record %x is damaged: %v", k, err)
			continue
		}
		read++
		if ids[e.ID] {
			f.say("ids", "the id %s stands twice in the journal", e.ID)
		}
		ids[e.ID] = true
		if err := record.Check(e); err != nil {
			f.say("events", "the event %s does not hold: %v", e.ID, err)
		}
	}
	f.short = read < int(st.head.events)
	meta := tx.Bucket(bucketMeta)
	if counted := count(tx, st, st.head.stumps); !bytes.Equal(counted.pack(), meta.Get(keyHead)) {
		f.say("counts", "the counts kept do not agree with the journal")
	}
	if of, ok := fresh(tx, st.head); !ok || of != st.prints {
		f.say("counts", "the summaries were not made from this journal")
	} else if of.sums != sumsPrint(tx) || of.base != basePrint(tx) {
		f.say("counts", "what is kept of the blocks and stumps does not agree with its counts")
	}
}

// summaries makes every summary anew and compares it with the one kept.
func (f *findings) summaries(tx *bbolt.Tx, st *state) error {
	kept, made := tx.Bucket(bucketSummaries), uint64(0)
	for _, block := range st.standing() {
		stumps := stumpsOf(tx, st, block)
		has, agrees := make([]bool, len(stumps)), make([]bool, len(stumps))
		err := inParts(len(stumps), 32, func(from, to int) error {
			var m maker
			for i, id := range stumps[from:to] {
				again, of, ok, _ := m.makeSummary(tx, st, id)
				p := spotOf(st.numbers[block], id)
				has[from+i], agrees[from+i] = ok, ok && bytes.Equal(kept.Get(p[:]), packSummary(p, again.Summary, of))
			}
			return nil
		})
		if err != nil {
			return err
		}
		for i, id := range stumps {
			if !has[i] {
				continue
			}
			made++
			if !agrees[i] {
				f.say("summaries", "the summary of %s does not agree with its records", id.Long())
			}
		}
	}
	there := uint64(0)
	_ = kept.ForEach(func(_, _ []byte) error { there++; return nil })
	if there != made || st.head.stumps != made {
		f.say("counts", "%d stumps are in the journal, %d in the list, %d counted", made, there, st.head.stumps)
	}
	return nil
}
