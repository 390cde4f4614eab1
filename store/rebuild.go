package store

import "bytes"

// rebuild counts the journal and makes all summaries anew.
func (b *Book) rebuild() error {
	b.writing.Lock()
	defer b.writing.Unlock()
	return b.write(0.95, false, func(c *change) error {
		if err := c.dropSummaries(nil); err != nil {
			return err
		}
		c.recount, c.now.head.stumps = true, 0
		for _, id := range c.now.standing() {
			for _, s := range stumpsOf(c.tx, &c.now, id) {
				c.touched[s] = true
			}
		}
		return nil
	})
}

// dropSummaries takes away the summaries whose keys begin with prefix.
func (c *change) dropSummaries(prefix []byte) error {
	var keys [][]byte
	cursor := c.summaries.Cursor()
	for k, _ := cursor.Seek(prefix); k != nil && bytes.HasPrefix(k, prefix); k, _ = cursor.Next() {
		keys = append(keys, bytes.Clone(k))
	}
	for _, k := range keys {
		if err := c.summaries.Delete(k); err != nil {
			return err
		}
	}
	c.now.head.stumps -= uint64(len(keys))
	return nil
}
