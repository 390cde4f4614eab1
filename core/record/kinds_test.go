package record

import (
	"regexp"
	"slices"
	"testing"

	"barkslip/core/unit"
)

// names lists the fields of a body, and of the items of its lists.
type names struct{ own, inner []string }

func (n *names) see(name string)                      { n.own = append(n.own, name) }
func (n *names) text(name string, _ *string)          { n.see(name) }
func (n *names) number(name string, _ *int)           { n.see(name) }
func (n *names) real(name string, _ *float64)         { n.see(name) }
func (n *names) flag(name string, _ *bool)            { n.see(name) }
func (n *names) length(name string, _ *Measure)       { n.see(name) }
func (n *names) degrees(name string, _ *Degrees)      { n.see(name) }
func (n *names) bearing(name string, _ *unit.Bearing) { n.see(name) }
func (n *names) date(name string, _ *unit.Date)       { n.see(name) }
func (n *names) id(name string, _ *ID)                { n.see(name) }
func (n *names) list(name string, _ int, grow func(int), each func(int, fields)) {
	n.see(name)
	grow(1)
	item := &names{}
	each(0, item)
	n.inner = append(n.inner, item.own...)
}

var (
	kebab = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	snake = regexp.MustCompile(`^[a-z]+[0-9]?(_[a-z]+)*$`)
)

func TestKindsAreKebabCaseAndUnique(t *testing.T) {
	seen := map[string]bool{}
	for code, make := range kinds {
		if code == 0 {
			continue
		}
		kind := make().Kind()
		if !kebab.MatchString(kind) {
			t.Errorf("kind %d is %q, not kebab case", code, kind)
		}
		if seen[kind] {
			t.Errorf("two kinds are called %q", kind)
		}
		seen[kind] = true
		if got := kindCode(make()); got != uint64(code) {
			t.Errorf("%s has code %d, listed under %d", kind, got, code)
		}
	}
}

func TestFieldNames(t *testing.T) {
	for _, make := range kinds[1:] {
		body := make()
		n := &names{}
		body.fields(n)
		seen := map[string]bool{}
		for _, name := range n.own {
			if slices.Contains(envelope, name) {
				t.Errorf("%s: field %q stands in every line already", body.Kind(), name)
			}
			if seen[name] {
				t.Errorf("%s: two fields are called %q", body.Kind(), name)
			}
			seen[name] = true
		}
		for _, name := range append(n.own, n.inner...) {
			if !snake.MatchString(name) {
				t.Errorf("%s: field %q is not snake case", body.Kind(), name)
			}
		}
	}
}

// Each body changes a stump's record or the book's, apart from a withdrawal,
// which changes what stands.
func TestEveryKindHasAPlaceInTheFold(t *testing.T) {
	for _, make := range kinds[1:] {
		body := make()
		_, stump := body.(onStump)
		_, book := body.(onBook)
		_, taking := body.(*Withdrawn)
		if stump == book && !taking {
			t.Errorf("%s changes neither a stump nor the book, or both", body.Kind())
		}
	}
}

func TestSettingsReadTheirValues(t *testing.T) {
	good := map[string]string{
		"units": "metric", "latitude": "-42.7", "longitude": "180", "altitude": "200m", "zone": "Europe/Zurich",
		"species": "black walnut", "variety": "Lantern", "graft-height": "5ft", "browse": "6ft", "frosty": "yes",
		"earwigs": "no", "row-spacing": "20ft", "tree-spacing": "12ft", "slip-from": "05-10", "slip-to": "06-10", "pinch-until": "02-29",
		"wait-days": "14", "a-day": "12", "made-up": "yes", "away": "no",
		"days-off": "Sat, sunday 2027-05-09", "hands": "mk RK", "load-sticks": "3", "load-nails": "2", "load-wrap": "2", "load-stakes": "1",
		"load-ties": "4", "load-sealer": "1mm", "load-paint": "0.2mm", "load-tape": "12in", "load-twine": "1ft",
		"corner": "42.70012 -77.20034", "row-bearing": "20", "next-row": "left",
	}
	bad := map[string]string{
		"units": "cubits", "latitude": "90.1", "longitude": "NaN", "altitude": "200", "graft-height": "five", "browse": "-6ft",
		"frosty": "maybe", "earwigs": "", "row-spacing": "", "tree-spacing": "12", "slip-from": "5-10", "slip-to": "02-30", "pinch-until": "13-01",
		"wait-days": "2", "a-day": "1.5", "made-up": "1", "away": "",
		"days-off": "someday", "hands": "R2", "load-sticks": "0", "load-nails": "0", "load-wrap": "some", "load-stakes": "-1", "load-ties": "0",
		"load-sealer": "0mm", "load-paint": "2in", "load-tape": "12", "load-twine": "11ft",
		"corner": "42.7", "row-bearing": "400", "next-row": "up",
	}
	for _, name := range SettingNames() {
		if value, ok := good[name]; !ok {
			t.Errorf("%s is not tried", name)
		} else if err := (&BlockSet{Block: ID{1}, Setting: name, Value: value}).check(); err != nil {
			t.Errorf("%s = %q: %v", name, value, err)
		}
		if value, ok := bad[name]; ok && (&BlockSet{Block: ID{1}, Setting: name, Value: value}).check() == nil {
			t.Errorf("%s = %q was taken", name, value)
		}
	}
}
