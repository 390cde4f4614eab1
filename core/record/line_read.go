package record

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"time"
	"unicode/utf8"

	"github.com/go-faster/jx"

	"barkslip/core/unit"
)

// member is a member of a JSON object: its name, and its value as it stands.
type member struct {
	name string
	raw  []byte
	read bool
}

var (
	errNotWhole = errors.New("it is not a whole JSON object")
	errTooMany  = fmt.Errorf("it has more than %d members", MostMembers)
)

// object splits a JSON object into its members, in order, behind those given, refusing a
// name that stands twice. Their values are parts of the text.
func (r *lineReader) object(members []member, text []byte) ([]member, error) {
	dec := r.dec
	dec.ResetBytes(text)
	if dec.Next() != jx.Object {
		return members, errors.New("it is not a JSON object")
	}
	var twice error
	err := dec.ObjBytes(func(dec *jx.Decoder, name []byte) error {
		if len(members) == MostMembers {
			return errTooMany
		}
		raw, err := dec.Raw()
		if twice == nil && slices.ContainsFunc(members, func(m member) bool { return m.name == string(name) }) {
			twice = fmt.Errorf("%q stands twice", Clean(string(name)))
		}
		members = append(members, member{name: r.names.of(name), raw: raw})
		return err
	})
	switch {
	case errors.Is(err, errTooMany):
		return members, errTooMany
	case err != nil:
		return members, errNotWhole
	case twice != nil:
		return members, twice
	case !errors.Is(dec.Skip(), io.EOF):
		return members, errors.New("something stands behind the JSON object")
	}
	return members, nil
}

// met are texts met before, so that each is made once: names of members, words, hands.
type met map[string]string

// Of how many texts, and how long, the memory is kept: more and longer than the names of
// any kind.
const (
	mostMet    = 512
	longestMet = 64
)

func (m met) of(text []byte) string {
	if len(text) > longestMet {
		return string(text)
	}
	if known, ok := m[string(text)]; ok {
		return known
	}
	made := string(text)
	if len(m) < mostMet {
		m[made] = made
	}
	return made
}

// lineReader reads fields from the members of a JSON object.
type lineReader struct {
	dec     *jx.Decoder
	names   met
	words   met // short texts
	members []member
	next    int // the member behind the one found last: they mostly come in order
	err     error
	inner   *lineReader // for the items of a list
}

// forget lets go of all that was read of the line; its memory goes with the reader's.
func (r *lineReader) forget() {
	*r = lineReader{dec: r.dec, names: r.names, words: r.words, members: r.members[:0], inner: r.inner}
	r.dec.ResetBytes(nil)
}

func newLineReader(names, words met) *lineReader {
	return &lineReader{dec: jx.DecodeBytes(nil), names: names, words: words, members: make([]member, 0, 16)}
}

// LineReader reads line after line of a journal in the same memory. One is for one
// goroutine.
type LineReader struct{ of *lineReader }

// NewLineReader makes a reader of lines.
func NewLineReader() LineReader { return LineReader{newLineReader(met{}, met{})} }

// Parse reads one line of the journal, see ParseLine.
func (r LineReader) Parse(line []byte) (Event, error) {
	defer r.of.forget()
	return r.of.parse(line)
}

// find is the value of a member as it stands, nil where there is none.
func (r *lineReader) find(name string) []byte {
	for n := range r.members {
		i := (r.next + n) % len(r.members)
		if m := &r.members[i]; m.name == name {
			m.read, r.next = true, i+1
			return m.raw
		}
	}
	return nil
}

// unread is the first member that nothing asked for.
func (r *lineReader) unread() (name string, stands bool) {
	for _, m := range r.members {
		if !m.read {
			return m.name, true
		}
	}
	return "", false
}

// read decodes one member; absent ones are left at nought.
func (r *lineReader) read(name, what string, into func(dec *jx.Decoder) error) bool {
	raw := r.find(name)
	if raw == nil || r.err != nil {
		return false
	}
	r.dec.ResetBytes(raw)
	if err := into(r.dec); err != nil {
		r.err = fmt.Errorf("%s is not %s", name, what)
		return false
	}
	return true
}

// str reads a text.
func (r *lineReader) str(v *string) func(*jx.Decoder) error {
	return func(dec *jx.Decoder) error {
		text, err := dec.StrBytes()
		*v = r.words.of(text)
		return err
	}
}

// bytesOf reads a text as its bytes, which hold until more is read.
func bytesOf(v *[]byte) func(*jx.Decoder) error {
	return func(dec *jx.Decoder) (err error) {
		*v, err = dec.StrBytes()
		return err
	}
}

// longestPlain is more letters than the place of a stump has.
const longestPlain = 100

// plain is a text that is met once or seldom, as it stands.
func (r *lineReader) plain(name string) string {
	var text []byte
	if r.read(name, "text", bytesOf(&text)) {
		if n := utf8.RuneCount(text); n > longestPlain {
			r.err = fmt.Errorf("%s has %d letters; %d are the most", name, n, longestPlain)
		}
	}
	return string(text)
}

// num reads a number.
func num(v *float64) func(*jx.Decoder) error {
	return func(dec *jx.Decoder) error {
		n, err := dec.Num()
		if err != nil || n.Str() {
			return errOtherShape
		}
		*v, err = strconv.ParseFloat(string(n), 64)
		return err
	}
}

var errOtherShape = errors.New("it has another shape")

// typed reads an object of a number and of what was typed for it.
func (r *lineReader) typed(number string, v *float64, words *string) func(*jx.Decoder) error {
	return func(dec *jx.Decoder) error {
		return dec.ObjBytes(func(dec *jx.Decoder, name []byte) error {
			switch string(name) {
			case number:
				return num(v)(dec)
			case "typed":
				return r.str(words)(dec)
			}
			return errOtherShape
		})
	}
}

func (r *lineReader) text(name string, v *string) {
	if r.read(name, "text", r.str(v)) {
		*v = Clean(*v)
		if n := utf8.RuneCountInString(*v); n > LongestText {
			r.err = fmt.Errorf("%s has %d letters; %d are the most", name, n, LongestText)
		}
	}
}

func (r *lineReader) number(name string, v *int) {
	whole := func(dec *jx.Decoder) error {
		n, err := dec.Num()
		if err != nil || n.Str() {
			return errOtherShape
		}
		*v, err = strconv.Atoi(string(n))
		return err
	}
	if r.read(name, "a whole number", whole) && *v < 0 {
		r.err = fmt.Errorf("%s is %d, below nought", name, *v)
	}
}

func (r *lineReader) real(name string, v *float64) { r.read(name, "a number", num(v)) }

func (r *lineReader) flag(name string, v *bool) {
	r.read(name, "true or false", func(dec *jx.Decoder) (err error) {
		*v, err = dec.Bool()
		return err
	})
}

func (r *lineReader) length(name string, v *Measure) {
	var t typedMM
	if r.read(name, "a length in mm", r.typed("mm", &t.MM, &t.Typed)) {
		*v = Measure{unit.Length(t.MM), Clean(t.Typed)}
		if t.MM < 0 || t.MM > 1e6 || math.IsNaN(t.MM) {
			r.err = fmt.Errorf("%s is %v mm, out of range", name, t.MM)
		}
	}
}

func (r *lineReader) degrees(name string, v *Degrees) {
	var t typedC
	if r.read(name, "a temperature in C", r.typed("c", &t.C, &t.Typed)) {
		*v = Degrees{unit.Temperature(t.C), cmp.Or(Clean(t.Typed), fmt.Sprint(t.C, "C"))}
		if t.C < -273.15 || t.C > 1000 {
			r.err = fmt.Errorf("%s is %v C, out of range", name, t.C)
		}
	}
}

func (r *lineReader) bearing(name string, v *unit.Bearing) {
	var deg float64
	if r.read(name, "a bearing in degrees", num(&deg)) {
		*v = unit.Bearing(deg)
		if deg < 0 || deg >= 360 {
			r.err = fmt.Errorf("%s is %v, not 0 to under 360", name, deg)
		}
	}
}

func (r *lineReader) date(name string, v *unit.Date) {
	r.read(name, "a date", func(dec *jx.Decoder) error {
		text, err := dec.StrBytes()
		if err != nil {
			return err
		}
		return v.UnmarshalText(text)
	})
}

func (r *lineReader) instant(name string, v *time.Time) {
	var text []byte
	if !r.read(name, "an instant", bytesOf(&text)) {
		return
	}
	var t time.Time
	err := t.UnmarshalText(text) // quicker, but it takes less
	if err != nil {
		t, err = time.Parse(time.RFC3339, string(text))
	}
	if err != nil || t.Year() < FirstYear || t.Year() > LastYear {
		r.err = fmt.Errorf("%s is not an instant such as 2027-05-04T14:30:00-04:00, of the years %d to %d", name, FirstYear, LastYear)
		return
	}
	_, offset := t.Zone()
	*v = t.Truncate(time.Second).In(offsetZone(offset / 60))
}

func (r *lineReader) id(name string, v *ID) {
	var text []byte
	if !r.read(name, "an id", bytesOf(&text)) {
		return
	}
	id, err := parseID(text)
	if err != nil {
		r.err = fmt.Errorf("%s: %w", name, err)
	}
	*v = id
}

// act reads the act. Version 1 has none, and what a newer version means by it is
// known only where it is an id as here.
func (r *lineReader) act(v int) (act ID) {
	before := r.err
	if v <= 1 || before != nil {
		return None
	}
	r.id("act", &act)
	if r.err != nil {
		act = None
		if v > Version {
			r.err = nil
		}
	}
	return act
}

// ids reads a list of ids.
func (r *lineReader) ids(name string) (ids []ID) {
	r.read(name, "a list of ids", func(dec *jx.Decoder) error {
		return dec.Arr(func(dec *jx.Decoder) error {
			text, err := dec.StrBytes()
			if err != nil {
				return err
			}
			id, err := parseID(text)
			ids = append(ids, id)
			return err
		})
	})
	return ids
}

func (r *lineReader) list(name string, _ int, grow func(int), each func(int, fields)) {
	var items [][]byte
	split := func(dec *jx.Decoder) error {
		return dec.Arr(func(dec *jx.Decoder) error {
			raw, err := dec.Raw()
			items = append(items, raw)
			return err
		})
	}
	if !r.read(name, "a list", split) {
		return
	}
	grow(len(items))
	if r.inner == nil {
		r.inner = newLineReader(r.names, r.words)
	}
	inner := r.inner
	defer inner.forget()
	for i, text := range items {
		members, err := inner.object(inner.members[:0], text)
		if err != nil {
			r.err = fmt.Errorf("%s is not a list", name)
			return
		}
		inner.members, inner.next, inner.err = members, 0, nil
		each(i, inner)
		if field, stands := inner.unread(); stands && inner.err == nil {
			inner.err = fmt.Errorf("%s has no field %q", name, Clean(field))
		}
		if inner.err != nil && r.err == nil {
			r.err = inner.err
		}
	}
}
