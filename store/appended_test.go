package store

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"go.etcd.io/bbolt"

	"barkslip/core/due"
	"barkslip/core/record"
)

// What Append returns of a stump is what reading and reckoning it again gives.
func TestAppendReturnsWhatItChanged(t *testing.T) {
	b := newBook(t)
	one, two := stumpAt(1, 1, 1), stumpAt(1, 1, 2)
	mustAppend(t, b, append(settings(1), life(one, 9)...)...)
	out, err := b.Append(append(life(two, 11), on(one, day, &record.Sealed{Cover: record.Bare}))...)
	if err != nil {
		t.Fatal(err)
	}
	if len(out.Changed) != 2 || out.Changed[0].Stump.ID != one || out.Of(two) == nil || out.Of(stumpAt(1, 9, 9)) != nil {
		t.Fatalf("%d stumps changed", len(out.Changed))
	}
	list, err := b.Summaries(blockID(1))
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range out.Changed {
		read, err := b.Stump(c.Stump.ID)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(lines(read.All), lines(c.Stump.All)); diff != "" || c.Stump.Stage() != read.Stage() {
			t.Errorf("%s: %s", c.Stump.ID.Place(), diff)
		}
		if string(due.PackSummary(nil, c.Summary)) != string(due.PackSummary(nil, list[i])) {
			t.Errorf("the summary of %s is %v, not %v", c.Stump.ID.Place(), c.Summary, list[i])
		}
	}
}

// A change of the block alone returns no stumps, however many it moves.
func TestAppendOfASettingReturnsNoStumps(t *testing.T) {
	b := newBook(t)
	mustAppend(t, b, append(settings(1), life(stumpAt(1, 1, 1), 9)...)...)
	out, err := b.Append(about(&record.BlockSet{Block: blockID(1), Setting: "frosty", Value: "yes"}))
	if err != nil || len(out.Events) != 1 || len(out.Changed) != 0 {
		t.Errorf("%d events, %d stumps, %v", len(out.Events), len(out.Changed), err)
	}
}

// What is given in one call is one act, apart from what belongs to one already
// and from what is not known.
func TestOneCallIsOneAct(t *testing.T) {
	b := newBook(t)
	own := on(stumpAt(1, 1, 3), day, &record.Noted{Text: "of an act before"})
	own.Act = record.ID{7}
	first := mustAppend(t, b, on(stumpAt(1, 1, 1), day, &record.RingSet{}), on(stumpAt(1, 1, 2), day, &record.RingSet{}), own,
		on(stumpAt(1, 1, 1), day, &record.Foreign{Name: "polled", V: 9, Raw: []byte(`{"by":"hand"}`)}))
	second := mustAppend(t, b, on(stumpAt(1, 1, 1), day, &record.RingSet{}))
	if first[0].Act == record.None || first[0].Act != first[1].Act || first[2].Act != own.Act || first[3].Act != record.None || second[0].Act == first[0].Act {
		t.Errorf("acts %s %s %s %s, then %s", first[0].Act, first[1].Act, first[2].Act, first[3].Act, second[0].Act)
	}
	stump, err := b.Stump(stumpAt(1, 1, 2))
	if err != nil || stump.Live[0].Act != first[1].Act {
		t.Errorf("kept with act %s: %v", stump.Live[0].Act, err)
	}
}

// A stump of which a record is damaged is left out, to be read and told of.
func TestAppendLeavesADamagedStumpOut(t *testing.T) {
	b := newBook(t)
	stump := stumpAt(1, 1, 1)
	mustAppend(t, b, life(stump, 3)...)
	path := b.Path()
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	alter(t, path, func(tx *bbolt.Tx) error { return spoil(tx, stump) })
	b, err := Open(path, options(3))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	out, err := b.Append(on(stump, day, &record.Noted{Text: "more"}))
	if err != nil || len(out.Events) != 1 || len(out.Changed) != 0 {
		t.Errorf("%d events, %d stumps, %v", len(out.Events), len(out.Changed), err)
	}
	_, err = b.Stump(stump)
	wantProblem(t, "damaged", err, ErrDamaged)
}
