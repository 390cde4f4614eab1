package record

import (
	"reflect"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// dated is where something said stands in time, and in the journal.
type dated struct {
	at    time.Time
	clock uint64
}

// datedLists gives every list of what was done or seen in a value, by its name;
// lists of standing answers are not dated.
func datedLists(of any) map[string][]dated {
	lists := map[string][]dated{}
	v := reflect.Indirect(reflect.ValueOf(of))
	for i := range v.NumField() {
		f := v.Field(i)
		if !f.CanInterface() || f.Kind() != reflect.Slice || f.Type().Elem().Kind() != reflect.Struct {
			continue
		}
		what, said := f.Type().Elem().FieldByName("What")
		if !said || reflect.PointerTo(what.Type).Implements(reflect.TypeFor[answers]()) {
			continue
		}
		list := []dated{}
		for j := range f.Len() {
			list = append(list, dated{f.Index(j).FieldByName("At").Interface().(time.Time), f.Index(j).FieldByName("Clock").Uint()})
		}
		lists[v.Type().Field(i).Name] = list
	}
	return lists
}

func inOrderOfTime(list []dated) bool {
	for i := range list {
		if i > 0 && (list[i].at.Before(list[i-1].at) || list[i].at.Equal(list[i-1].at) && list[i].clock <= list[i-1].clock) {
			return false
		}
	}
	return true
}

// Each kind that is done or seen again and again stands in order of time in the
// record, then in order of the journal, whenever it was put down.
func TestEveryDatedListIsInOrderOfTime(t *testing.T) {
	full := map[string]bool{}
	for code := range kinds {
		p := counted(code)
		body := newBody(uint64(code))
		if code == 0 || (Event{Body: body}).Question() != "" {
			continue
		}
		l := newLaptop("AB")
		for _, day := range []int{12, 10, 14, 11, 11} {
			l.say(may(day, 9, 0), p.body(code))
		}
		stump, book := l.fold(), FoldBook(l.events, utc)
		all := []any{stump, stump.Now()}
		for _, lot := range book.Lots {
			all = append(all, lot)
		}
		for _, of := range all {
			for name, list := range datedLists(of) {
				full[name] = full[name] || len(list) == 5
				if !inOrderOfTime(list) {
					t.Errorf("%s after %s: %v", name, body.Kind(), list)
				}
			}
		}
	}
	for _, of := range []any{&Stump{}, &Attempt{}} {
		for name := range datedLists(of) {
			if !full[name] {
				t.Errorf("nothing was put into %s", name)
			}
		}
	}
}

func TestDatedListsOfRandomWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		l := newLaptop("AB")
		l.say(may(1, 8, 0), &StumpAdded{})
		for range rapid.IntRange(1, 40).Draw(t, "work") {
			l.work(t, p)
		}
		s := l.fold()
		all := []any{s}
		for _, a := range s.Attempts {
			all = append(all, a)
		}
		for _, of := range all {
			for name, list := range datedLists(of) {
				if !inOrderOfTime(list) {
					t.Fatalf("%s: %v", name, list)
				}
			}
		}
	})
}

// Readings of one lot, known by two names, are one list in order of time.
func TestReadingsOfLotsThatAreOne(t *testing.T) {
	l := newLaptop("AB")
	one, two := ID{1}, ID{2}
	l.say(may(5, 9, 0), &StoreRead{two, Degrees{5, "5C"}})
	l.say(may(2, 9, 0), &StoreRead{one, Degrees{2, "2C"}})
	l.say(may(4, 9, 0), &StoreRead{two, Degrees{4, "4C"}})
	l.say(may(3, 9, 0), &StoreRead{one, Degrees{3, "3C"}})
	l.say(may(1, 9, 0), &LotReceived{Lot: one, Name: "L1"})
	l.say(may(6, 9, 0), &Same{"lot", one.String(), two.String()})
	var got []float64
	for _, r := range FoldBook(l.events, utc).Lots[one].Readings {
		got = append(got, r.What.Temp.C())
	}
	if !reflect.DeepEqual(got, []float64{2, 3, 4, 5}) {
		t.Errorf("read %v", got)
	}
}
