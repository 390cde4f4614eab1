package store

import (
	"context"
	"path/filepath"
	"testing"

	"go.etcd.io/bbolt"
	"pgregory.net/rapid"

	"barkslip/core/due"
	"barkslip/core/record"
)

// takenOver is how many of a book's summaries would be taken over from another.
func takenOver(t testing.TB, b, from *Book) (n int) {
	t.Helper()
	there, err := from.toTakeOver()
	if err == nil {
		err = b.view(func(tx *bbolt.Tx, st *state) error {
			there.compare(st)
			var u due.Unpacker
			for _, block := range st.standing() {
				for _, id := range stumpsOf(tx, st, block) {
					if there.of(tx, st, id, &u) != nil {
						n++
					}
				}
			}
			return nil
		})
	}
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func joinBook(t testing.TB, b, from *Book) {
	t.Helper()
	if _, err := b.JoinBook(context.Background(), from, from.Entries(context.Background())); err != nil {
		t.Fatal(err)
	}
	checkSound(t, b)
}

// What is taken over of another book is what would be made here, whatever either had before.
func TestJoinedBooksSummariesAreThoseMadeHere(t *testing.T) {
	taken, made := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		dir, done := scratchDir(rt)
		defer done()
		pool := make([]record.Event, rapid.IntRange(1, 30).Draw(rt, "pool"))
		for i := range pool {
			pool[i] = anyEvent(rt, pool[:i])
			pool[i].ID, pool[i].Clock = record.ID{byte(i), 1}, uint64(i+1)
		}
		var books [2]*Book
		for i, name := range []string{"one", "two"} {
			b, err := Create(filepath.Join(dir, name), options(uint64(i+1)))
			if err != nil {
				rt.Fatal(err)
			}
			defer b.Close()
			some := rapid.SliceOfN(rapid.SampledFrom(pool), 0, 30).Draw(rt, name)
			if _, err := b.Join(sequence(some)); err != nil {
				rt.Fatal(err)
			}
			books[i] = b
		}
		joinBook(t, books[0], books[1])
		n := takenOver(t, books[0], books[1])
		_, stumps := books[0].Count()
		taken, made = taken+n, made+stumps-n
		if t.Failed() {
			rt.Fatal("see above")
		}
	})
	t.Logf("%d summaries taken over, %d made", taken, made)
	if taken == 0 || made == 0 {
		t.Error("one of the two was never tried")
	}
}

func TestTakingOver(t *testing.T) {
	other := newBook(t)
	fill(t, other, 40)

	bare := newBook(t)
	joinBook(t, bare, other)
	if n := takenOver(t, bare, other); n != 40 {
		t.Errorf("a new book: %d of 40", n)
	}
	numbered := newBook(t) // whose block has another number
	mustAppend(t, numbered, settings(2)...)
	mustAppend(t, numbered, life(stumpAt(2, 1, 1), 12)...)
	joinBook(t, numbered, other)
	if n := takenOver(t, numbered, other); n != 40 {
		t.Errorf("under another number: %d of 40", n)
	}
	further := newBook(t) // which has more of three stumps, one by a limb
	joinBook(t, further, other)
	for tree := range uint16(2) {
		mustAppend(t, further, on(stumpAt(1, 1, tree+1), day, &record.Noted{Text: "seen here alone"}))
	}
	limb := stumpAt(1, 2, 1)
	limb.Limb = 2
	mustAppend(t, further, on(limb, day, &record.StumpAdded{}))
	joinBook(t, further, other)
	if n := takenOver(t, further, other); n != 37 {
		t.Errorf("with more records: %d of 37", n)
	}
	for what, e := range map[string]record.Event{
		"another setting": about(&record.BlockSet{Block: blockID(1), Setting: "latitude", Value: "44"}),
		"a day's weather": about(&record.DayWeather{Block: blockID(1), Day: unitDate(2027, 5, 4), Low: celsius(9), High: celsius(30)}),
		"the same block":  about(&record.Same{What: "block", A: blockID(1).String(), B: blockID(2).String()}),
	} {
		b := newBook(t)
		joinBook(t, b, other)
		mustAppend(t, b, append(life(stumpAt(2, 1, 1), 1), e)...)
		joinBook(t, b, other)
		if n := takenOver(t, b, other); n != 0 {
			t.Errorf("%s here: %d taken over", what, n)
		}
	}
}

// A summary that is not what this program makes, though it holds in itself, is not let in.
func TestFalseSummariesAreNotTakenOver(t *testing.T) {
	other, err := Create(filepath.Join(t.TempDir(), "other"), options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	fill(t, other, 10)
	err = other.db.Update(func(tx *bbolt.Tx) error {
		st := other.state.Load()
		for _, s := range summariesOf(tx, nil) {
			var u due.Unpacker
			sum, ok := unpackSummary(&u, s.at, s.value, st.block(blockID(1)))
			if !ok {
				t.Fatal("it does not hold")
			}
			sum.Dues = nil
			of := uint64(0)
			for _, x := range s.value[len(s.value)-12 : len(s.value)-4] {
				of = of<<8 | uint64(x)
			}
			if err := tx.Bucket(bucketSummaries).Put(s.at[:], packSummary(s.at, sum, of)); err != nil {
				return err
			}
		}
		return asLast(tx)
	})
	if err != nil {
		t.Fatal(err)
	}
	b := newBook(t)
	if n := takenOver(t, b, other); n != 0 {
		t.Fatal("an empty book takes over", n)
	}
	joinBook(t, b, other) // which is checked
	if n := takenOver(t, b, other); n != 10 {
		t.Errorf("only %d of 10 would have been taken over: nothing was tried", n)
	}
}
