package store

import (
	"bytes"
	"testing"
	"time"

	"go.etcd.io/bbolt"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// TestOnlyWhatChangedIsMadeAnew leaves summaries alone when an event about no
// stump changes nothing they depend on, also once heat was reckoned, and makes
// anew those that do.
func TestOnlyWhatChangedIsMadeAnew(t *testing.T) {
	b := newBook(t)
	mustAppend(t, b, settings(1)...)
	var all []record.StumpID
	for tree := uint16(1); tree <= 6; tree++ {
		all = append(all, stumpAt(1, 1, tree))
		mustAppend(t, b, life(stumpAt(1, 1, tree), 12)...)
	}
	weather := func(high float64) record.Event {
		return about(&record.DayWeather{Block: blockID(1), Day: unit.DateOf(day), Low: celsius(12), High: celsius(high)})
	}
	mustAppend(t, b, weather(38))
	block := b.Folded().Blocks[blockID(1)]
	if s, err := b.Stump(all[0]); err != nil || !func() bool { _, ok := due.Heat(s, block, day.Add(2*time.Hour)); return ok }() {
		t.Fatalf("no heat is reckoned: %v", err)
	}
	for _, c := range []struct {
		name string
		body record.Body
		anew bool
	}{
		{"a lot", &record.LotReceived{Lot: record.ID{7}, Name: "L-1", Variety: "Lantern"}, false},
		{"a reading of the store", &record.StoreRead{Lot: record.ID{7}, Temp: celsius(2)}, false},
		{"the name", &record.BlockMade{Block: blockID(1), Name: "Other"}, false},
		{"units", &record.BlockSet{Block: blockID(1), Setting: "units", Value: "metric"}, true},
		{"variety", &record.BlockSet{Block: blockID(1), Setting: "variety", Value: "Brisk"}, false},
		{"season of slip", &record.BlockSet{Block: blockID(1), Setting: "slip-to", Value: "06-20"}, false},
		{"frosty", &record.BlockSet{Block: blockID(1), Setting: "frosty", Value: "yes"}, true},
		{"days to graft", &record.BlockSet{Block: blockID(1), Setting: "wait-days", Value: "12"}, true},
	} {
		blot(t, b, all)
		mustAppend(t, b, about(c.body))
		if anew := !blotted(t, b, all); anew != c.anew {
			t.Errorf("%s: made anew %v, want %v", c.name, anew, c.anew)
		}
	}
	path := b.Path() // what was blotted is made anew when the book is opened
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	checkAndClose(t, b)
}

// blot breaks the summaries of stumps in the file, so that it can be seen
// whether they were written again.
func blot(t *testing.T, b *Book, stumps []record.StumpID) {
	t.Helper()
	err := b.db.Update(func(tx *bbolt.Tx) error {
		for _, id := range stumps {
			p := spotOf(b.state.Load().numbers[id.Block], id)
			if err := tx.Bucket(bucketSummaries).Put(p[:], []byte("spoiled")); err != nil {
				return err
			}
		}
		return asLast(tx)
	})
	if err != nil {
		t.Fatal(err)
	}
}

func blotted(t *testing.T, b *Book, stumps []record.StumpID) (any bool) {
	t.Helper()
	_ = b.db.View(func(tx *bbolt.Tx) error {
		for _, id := range stumps {
			p := spotOf(b.state.Load().numbers[id.Block], id)
			any = any || bytes.Equal(tx.Bucket(bucketSummaries).Get(p[:]), []byte("spoiled"))
		}
		return nil
	})
	return any
}
