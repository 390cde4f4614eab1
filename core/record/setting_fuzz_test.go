package record

import (
	"testing"
	"time"
	"unicode/utf8"
)

// FuzzSetting sets a setting of a block to any text: it is refused or taken, and what is
// taken comes out of its line again and is folded into the same block.
func FuzzSetting(f *testing.F) {
	for name := range settings {
		for _, value := range []string{"", "yes", "42.7", "12", "2027-05-04", "--05-04", "sat sun", "36in", "America/New_York", "MK RK", "-1e309", "ne"} {
			f.Add(name, value)
		}
	}
	zones := func(name string) (*time.Location, error) { return time.UTC, nil }
	f.Fuzz(func(t *testing.T, name, value string) {
		made := Event{ID: ID{1}, Clock: 1, At: time.Unix(1.8e9, 0).UTC(), Hand: "RK", Body: &BlockMade{Block: ID{1}, Name: "Hollow Lane"}}
		set := Event{ID: ID{2}, Clock: 2, At: made.At, Hand: "RK", Body: &BlockSet{Block: ID{1}, Setting: name, Value: value}}
		if Check(set) != nil || !utf8.ValidString(value) {
			return
		}
		read, err := ParseLine(Line(set))
		if err != nil {
			return // too long, or cleaned away
		}
		one, two := FoldBook([]Event{made, read}, zones), FoldBook([]Event{read, made, read}, zones)
		if string(Line(read)) != string(Line(mustParse(t, Line(read)))) {
			t.Errorf("%q=%q does not come out of its line", name, value)
		}
		if a, b := one.Blocks[ID{1}], two.Blocks[ID{1}]; a == nil || b == nil || a.Name != b.Name || a.Units != b.Units || a.Wait != b.Wait || a.Lat != b.Lat {
			t.Errorf("%q=%q: %+v and %+v", name, value, a, b)
		}
	})
}

func mustParse(t *testing.T, line []byte) Event {
	t.Helper()
	e, err := ParseLine(line)
	if err != nil {
		t.Fatal(err)
	}
	return e
}
