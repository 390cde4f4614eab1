package store

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/record"
)

// Saving an answer against a bare put of the same bytes in the same store, synced, each in
// turn in the same folder. With BARKSLIP_BENCH=1; the ratio depends on the disk.
func TestSavingAgainstABarePut(t *testing.T) {
	if os.Getenv("BARKSLIP_BENCH") == "" {
		t.Skip("a measurement; BARKSLIP_BENCH=1")
	}
	const rounds = 400
	path := seasonBook(t, 500, 40)
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	bare, err := bbolt.Open(filepath.Join(filepath.Dir(path), "bare"), 0o600, &bbolt.Options{FreelistType: bbolt.FreelistMapType, NoStatistics: true})
	if err != nil {
		t.Fatal(err)
	}
	defer bare.Close()
	same := map[string]map[string][]byte{} // what the last answer wrote, by bucket
	fill := func() error {
		return b.view(func(from *bbolt.Tx, _ *state) error {
			return bare.Update(func(to *bbolt.Tx) error {
				for _, name := range [][]byte{bucketJournal, bucketSummaries, bucketMeta} {
					bucket, err := to.CreateBucketIfNotExists(name)
					if err != nil {
						return err
					}
					if err := from.Bucket(name).ForEach(func(k, v []byte) error { return bucket.Put(k, v) }); err != nil {
						return err
					}
				}
				return nil
			})
		})
	}
	if err := fill(); err != nil {
		t.Fatal(err)
	}
	changed := func(e record.Event) {
		clear(same)
		_ = b.view(func(tx *bbolt.Tx, st *state) error {
			p := spotOf(st.numbers[e.Stump.Block], e.Stump)
			key := recordKey(p, e.Clock, e.ID)
			for _, x := range []struct {
				bucket, key []byte
			}{{bucketJournal, key}, {bucketSummaries, p[:]}, {bucketMeta, keyHead}, {bucketMeta, keyStamp}} {
				name := string(x.bucket)
				if same[name] == nil {
					same[name] = map[string][]byte{}
				}
				same[name][string(x.key)] = bytes.Clone(tx.Bucket(x.bucket).Get(x.key))
			}
			return nil
		})
	}
	var ours, theirs []time.Duration
	for i := range rounds {
		began := time.Now()
		out := mustAppend(t, b, on(stumpAt(1, uint16(i%5+1), uint16(i%100+1)), day, &record.Noted{Text: fmt.Sprint("note ", i)}))
		ours = append(ours, time.Since(began))
		changed(out[0])
		began = time.Now()
		err := bare.Update(func(tx *bbolt.Tx) error {
			for name, pairs := range same {
				for k, v := range pairs {
					if err := tx.Bucket([]byte(name)).Put([]byte(k), v); err != nil {
						return err
					}
				}
			}
			return nil
		})
		theirs = append(theirs, time.Since(began))
		if err != nil {
			t.Fatal(err)
		}
	}
	slices.Sort(ours)
	slices.Sort(theirs)
	t.Logf("saving an answer: median %v, a bare put %v: %.2f times (at most 1.3 wanted)", ours[rounds/2], theirs[rounds/2], float64(ours[rounds/2])/float64(theirs[rounds/2]))
}
