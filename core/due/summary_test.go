package due

import (
	"bytes"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// unusedKind is the number of no kind.
const unusedKind = 255

func drawSummary(t *rapid.T) Summary {
	p := ddrawn(t)
	at := func() time.Time { return time.Unix(1_500_000_000+int64(p(500_000_000)), 0).In(recordtest.EDT) }
	s := Summary{
		ID: recordtest.Stump417, Stage: record.Stage(p(len(record.Stages()))), Clash: p(2) == 1, Noted: p(2) == 1, Against: p(2) == 1,
		Scions: p(25), Events: p(5000), Clock: uint64(p(1 << 40)), Across: unit.Length(p(8000)) / 32, Newest: at(),
		Taken: p(25), Known: p(25), CutBack: unit.Date(p(40_000)), Set: unit.Date(p(40_000)),
	}
	for range p(4) {
		d := Due{Stump: recordtest.Stump417, Kind: Kinds()[p(len(table))], Opens: at(), By: at(), Since: at(), Hint: uint8(p(yearlyBit)), Yearly: p(2) == 1}
		if p(2) == 1 {
			d.Ends = at()
		}
		s.Dues = append(s.Dues, d)
	}
	s.Touched, s.Hand = at(), []string{"", "MK", "ØÅ"}[p(3)]
	for i := range p(3) {
		s.Used = append(s.Used, LotUse{record.ID{byte(i + 1)}, p(2000),
			p(25), p(25), p(25), append(record.FollowUps, "")[p(4)], uint64(p(1 << 40))})
	}
	if n := p(4); n > 0 {
		s.Rows = GraftRows{2, 2, 'M', 'K', 4, 'b', 'l', 'e', 'd'}
		for range n {
			row := make([]byte, graftRow)
			row[5], row[6], row[7], row[8], row[9], row[10] = byte(p(3)), byte(p(24)), noByte, noByte, byte(p(2)), noByte
			row[11], row[12], row[13], row[19] = byte(p(5)), byte(p(3)), byte(p(256)), byte(p(256))
			s.Rows = append(s.Rows, row...)
		}
	}
	return s
}

func TestSummaryRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSummary(t)
		packed := PackSummary(nil, s)
		got, ok := new(Unpacker).Unpack(packed, s.ID, recordtest.EDT)
		if d := cmp.Diff(s, got); !ok || d != "" {
			t.Fatalf("unpacked %v:\n%s", ok, d)
		}
		if before := []byte("before"); !bytes.Equal(PackSummary(before, s), append(before, packed...)) {
			t.Fatal("packing does not append")
		}
		if _, ok := new(Unpacker).Unpack(packed[:rapid.IntRange(0, len(packed)-1).Draw(t, "cut")], s.ID, recordtest.EDT); ok {
			t.Fatal("a summary cut short was taken")
		}
		if _, ok := new(Unpacker).Unpack(append(packed, 0), s.ID, recordtest.EDT); ok {
			t.Fatal("a summary with something behind it was taken")
		}
	})
}

func TestSummaryRefusesWhatItDoesNotKnow(t *testing.T) {
	s := Summary{ID: recordtest.Stump417, Dues: []Due{{Stump: recordtest.Stump417, Kind: White, Opens: recordtest.May(1, 9, 0), By: recordtest.May(1, 10, 0), Since: recordtest.May(1, 7, 0)}}}
	packed := PackSummary(nil, s)
	for at, unknown := range map[int]byte{0: byte(len(record.Stages())), summaryHead: unusedKind} {
		broken := bytes.Clone(packed)
		broken[at] = unknown
		if _, ok := new(Unpacker).Unpack(broken, s.ID, recordtest.EDT); ok {
			t.Errorf("byte %d set to %d was taken", at, unknown)
		}
	}
	if got, ok := new(Unpacker).Unpack(packed, s.ID, recordtest.EDT); !ok || !got.Newest.IsZero() {
		t.Errorf("a stump with no event: %v, newest %v", ok, got.Newest)
	}
}

func TestSummarizeFollowsTheRecord(t *testing.T) {
	l := recordtest.NewLaptop("AB")
	l.Say(recordtest.May(1, 9, 0), &record.StumpAdded{Across: record.Measure{Length: 80, Typed: "80mm"}})
	l.Say(recordtest.May(2, 9, 0), &record.CutBack{})
	l.Say(recordtest.May(12, 10, 0), &record.AgainstAdvice{Verdict: ready.Gash, Why: "no time"})
	l.Say(recordtest.May(12, 10, 0), &record.ScionSet{Slot: 1})
	l.Say(recordtest.May(12, 10, 5), &record.Sealed{Cover: record.Bare})
	last := l.Say(recordtest.May(12, 10, 1), &record.Noted{Text: "by the gate"})
	got := Summarize(l.Fold(), recordtest.BlockEDT(), len(l.Events))
	if got.Stage != record.StageSealed || !got.Noted || !got.Against || got.Clash || got.Scions != 1 || got.Events != 6 ||
		got.Clock != last.Clock || got.Across != 80 || !got.Newest.Equal(recordtest.May(12, 10, 5)) || got.ID != recordtest.Stump417 {
		t.Errorf("%+v", got)
	}
	if len(got.Dues) == 0 || got.Dues[0].Kind != White {
		t.Errorf("dues %v", got.Dues)
	}
}
