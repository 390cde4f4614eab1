package store

import "bytes"

// rebuild counts the journal and makes all summaries anew.
func (b *Book) rebuild() error {
	b.writing.Lock()
	defer b.writing.Unlock()
	return b.write(0.95, false, func(c *change) error {
		if err := b.wholeJournal(c); err != nil {
			return err
		}
		if err := c.dropSummaries(nil); err != nil {
			return err
		}
		c.now.prints, c.general = prints{}, true
		c.recount, c.anew, c.now.head.stumps = true, true, 0
		for _, id := range c.now.standing() {
			for _, s := range stumpsOf(c.tx, &c.now, id) {
				c.touched[s] = true
			}
		}
		return nil
	})
}

// wholeJournal refuses to count anew a journal of which the head tells that it is not
// whole: the loss would not be seen any more.
func (b *Book) wholeJournal(c *change) error {
	kept, holds := unpackHead(c.tx.Bucket(bucketMeta).Get(keyHead))
	if !holds {
		return nil
	}
	if there := count(c.tx, &c.now, kept.stumps); there.events < kept.events || there.fingerprint != kept.fingerprint {
		return problem(ErrDamaged, nil, "the book %s is damaged: %s; bring it back from a copy", b.path, canRead(int(there.events), int(kept.events)))
	}
	return nil
}

// dropSummaries takes away the summaries whose keys begin with prefix.
func (c *change) dropSummaries(prefix []byte) error {
	var keys [][]byte
	for k, v := range rising(c.summaries, prefix) {
		keys = append(keys, bytes.Clone(k))
		c.now.prints.sums ^= printOf(k, v)
	}
	for _, k := range keys {
		if err := c.summaries.Delete(k); err != nil {
			return err
		}
	}
	c.now.head.stumps -= uint64(len(keys))
	return nil
}
