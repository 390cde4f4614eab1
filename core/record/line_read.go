package record

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"time"

	"barkslip/core/unit"
)

// lineReader reads fields from the members of a JSON object.
type lineReader struct {
	members map[string]json.RawMessage
	seen    map[string]bool
	err     error
}

// read decodes one member; absent ones are left at nought.
func (r *lineReader) read(name, what string, v any) bool {
	raw, ok := r.members[name]
	if r.seen != nil {
		r.seen[name] = true
	}
	if !ok || r.err != nil {
		return false
	}
	dec := json.NewDecoder(bytes.NewReader(raw))
	dec.DisallowUnknownFields()
	if err := dec.Decode(v); err != nil || string(bytes.TrimSpace(raw)) == "null" {
		r.err = fmt.Errorf("%s is not %s", name, what)
		return false
	}
	return true
}

func (r *lineReader) text(name string, v *string) {
	if r.read(name, "text", v) {
		*v = Clean(*v)
	}
}

func (r *lineReader) number(name string, v *int) {
	if r.read(name, "a whole number", v) && *v < 0 {
		r.err = fmt.Errorf("%s is %d, below nought", name, *v)
	}
}

func (r *lineReader) real(name string, v *float64) { r.read(name, "a number", v) }

func (r *lineReader) flag(name string, v *bool) { r.read(name, "true or false", v) }

func (r *lineReader) length(name string, v *Measure) {
	var t typedMM
	if r.read(name, "a length in mm", &t) {
		*v = Measure{unit.Length(t.MM), Clean(t.Typed)}
		if t.MM < 0 || t.MM > 1e6 || math.IsNaN(t.MM) {
			r.err = fmt.Errorf("%s is %v mm, out of range", name, t.MM)
		}
	}
}

func (r *lineReader) degrees(name string, v *Degrees) {
	var t typedC
	if r.read(name, "a temperature in C", &t) {
		*v = Degrees{unit.Temperature(t.C), cmp.Or(Clean(t.Typed), fmt.Sprint(t.C, "C"))}
		if t.C < -273.15 || t.C > 1000 {
			r.err = fmt.Errorf("%s is %v C, out of range", name, t.C)
		}
	}
}

func (r *lineReader) bearing(name string, v *unit.Bearing) {
	var deg float64
	if r.read(name, "a bearing in degrees", &deg) {
		*v = unit.Bearing(deg)
		if deg < 0 || deg >= 360 {
			r.err = fmt.Errorf("%s is %v, not 0 to under 360", name, deg)
		}
	}
}

func (r *lineReader) date(name string, v *unit.Date) { r.read(name, "a date", v) }

func (r *lineReader) instant(name string, v *time.Time) {
	var s string
	if !r.read(name, "an instant", &s) {
		return
	}
	t, err := time.Parse(time.RFC3339, s)
	if err != nil || t.Year() < 1900 || t.Year() > 9998 {
		r.err = fmt.Errorf("%s is not an instant such as 2027-05-04T14:30:00-04:00", name)
		return
	}
	_, offset := t.Zone()
	*v = t.Truncate(time.Second).In(offsetZone(offset / 60))
}

func (r *lineReader) id(name string, v *ID) {
	var s string
	if !r.read(name, "an id", &s) {
		return
	}
	id, err := ParseID(s)
	if err != nil {
		r.err = fmt.Errorf("%s: %w", name, err)
	}
	*v = id
}

func (r *lineReader) list(name string, _ int, grow func(int), each func(int, fields)) {
	var items []map[string]json.RawMessage
	if !r.read(name, "a list", &items) {
		return
	}
	grow(len(items))
	for i, item := range items {
		inner := &lineReader{members: item, seen: map[string]bool{}}
		each(i, inner)
		for field := range item {
			if inner.err == nil && !inner.seen[field] {
				inner.err = fmt.Errorf("%s has no field %q", name, Clean(field))
			}
		}
		if inner.err != nil && r.err == nil {
			r.err = inner.err
		}
	}
}
