package record

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "write the golden files anew")

// alike compares events by what they say: the same instant and offset, and
// bodies equal in every field.
func alike(a, b Event) string {
	type said struct {
		Event
		At string
	}
	when := "2006-01-02T15:04:05Z07:00"
	x, y := said{a, a.At.Format(when)}, said{b, b.At.Format(when)}
	x.Event.At, y.Event.At = b.At, b.At
	return cmp.Diff(x, y)
}

func TestEveryKindRoundTrips(t *testing.T) {
	for code, make := range kinds {
		t.Run(make().Kind(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				p := drawn(t)
				e := p.foreign()
				if code > 0 {
					e = p.event(p.body(code))
				}
				if err := Check(e); err != nil {
					t.Fatalf("made-up event does not hold: %v", err)
				}
				unpacked, err := Unpack(Pack(nil, e), e.Stump, e.Clock, e.ID)
				if err != nil {
					t.Fatal(err)
				}
				if d := alike(e, unpacked); d != "" {
					t.Fatalf("packed and unpacked:\n%s", d)
				}
				parsed, err := ParseLine(Line(e))
				if err != nil {
					t.Fatalf("%s\n%v", Line(e), err)
				}
				if d := alike(e, parsed); d != "" {
					t.Fatalf("written and read:\n%s", d)
				}
			})
		})
	}
}

// What is unknown passes through both forms byte for byte, in any mixture.
func TestForeignEventsPassUnchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := drawn(t).foreign()
		first := Line(e)
		for range 3 {
			parsed, err := ParseLine(Line(e))
			if err != nil {
				t.Fatal(err)
			}
			if e, err = Unpack(Pack(nil, parsed), parsed.Stump, parsed.Clock, parsed.ID); err != nil {
				t.Fatal(err)
			}
		}
		if !bytes.Equal(first, Line(e)) {
			t.Fatalf("%s\nbecame\n%s", first, Line(e))
		}
	})
}

func TestUnknownKindOfThisVersionIsKept(t *testing.T) {
	line := `{"v":1,"id":"0102030405060708090a0b0c0d0e0f10","at":"2027-05-04T14:30:00-04:00","hand":"AB","stump":"",` +
		`"kind":"bark-mended","clock":9,"by":{"mm":1.50,"how":"½"},"x":[1,2]}`
	e, err := ParseLine([]byte(line))
	if err != nil {
		t.Fatal(err)
	}
	if got := string(Line(e)); got != line {
		t.Errorf("%s\nbecame\n%s", line, got)
	}
	if s := Fold(StumpID{Block: ID{1}, Row: 1, Tree: 1}, []Event{e}); s.Stage() != StageStanding || len(s.Live) != 1 {
		t.Errorf("an unknown event moved the stump to %s, %d live", s.Stage(), len(s.Live))
	}
}

func TestAFlippedBitIsDetected(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := drawn(t).any()
		packed := Pack(nil, e)
		for i := range len(packed) * 8 {
			broken := bytes.Clone(packed)
			broken[i/8] ^= 1 << (i % 8)
			if _, err := Unpack(broken, e.Stump, e.Clock, e.ID); err == nil {
				t.Fatalf("bit %d of %x flipped, and nothing said", i, packed)
			}
		}
		other := e.ID
		other[3] ^= 4
		stump := e.Stump
		stump.Tree ^= 1
		for what, err := range map[string]error{
			"id": unpackErr(packed, e.Stump, e.Clock, other), "clock": unpackErr(packed, e.Stump, e.Clock^1, e.ID), "stump": unpackErr(packed, stump, e.Clock, e.ID),
			"short": unpackErr(packed[:len(packed)-1], e.Stump, e.Clock, e.ID), "nothing": unpackErr(nil, e.Stump, e.Clock, e.ID),
		} {
			if err == nil {
				t.Fatalf("a wrong %s was taken", what)
			}
		}
	})
}

func unpackErr(packed []byte, s StumpID, clock uint64, id ID) error {
	_, err := Unpack(packed, s, clock, id)
	return err
}

// Both written forms of every kind, so that a change of either is seen: books
// and journals already written must stay readable.
func TestGoldenForms(t *testing.T) {
	var now bytes.Buffer
	for code := range kinds {
		p := counted(code * 31)
		e := p.foreign()
		if code > 0 {
			e = p.event(p.body(code))
		}
		fmt.Fprintf(&now, "%s\npacked %x\n", Line(e), Pack(nil, e))
	}
	const file = "testdata/lines.golden"
	if *update {
		if err := os.WriteFile(file, now.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	golden, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(golden), now.String()); d != "" {
		t.Errorf("the written forms changed:\n%s", d)
	}
	for i, line := range bytes.Split(bytes.TrimSpace(golden), []byte("\n")) {
		if i%2 == 1 {
			continue
		}
		if e, err := ParseLine(line); err != nil || !bytes.Equal(Line(e), line) {
			t.Errorf("golden line %d is not read as written: %v", i+1, err)
		}
	}
}
