package record

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"barkslip/core/unit"
)

// The journal's text form: one JSON object a line. The envelope comes first
// (v, id, at, hand, stump, kind, clock, act, replaces), then the body's fields.
// In version 1 there is no act; an event of that version is written again as one
// of this version without an act.

var envelope = []string{"v", "id", "at", "hand", "stump", "kind", "clock", "act", "replaces"}

// Line is the event as one line of JSON without the newline.
func Line(e Event) []byte {
	w := lineWriter{buf: []byte{'{'}}
	v, kind := Version, e.Body.Kind()
	if f, ok := e.Body.(*Foreign); ok {
		v = f.V
	}
	w.raw("v", strconv.Itoa(v))
	w.put("id", e.ID.String())
	w.put("at", e.At.Format(time.RFC3339))
	w.put("hand", e.Hand)
	w.put("stump", e.Stump.String())
	w.put("kind", kind)
	w.raw("clock", strconv.FormatUint(e.Clock, 10))
	if e.Act != None {
		w.put("act", e.Act.String())
	}
	if len(e.Replaces) > 0 {
		w.put("replaces", e.Replaces)
	}
	if f, ok := e.Body.(*Foreign); ok {
		if inner := bytes.TrimSpace(f.Raw); len(inner) > 2 {
			w.buf = append(w.buf, ',')
			w.buf = append(w.buf, inner[1:len(inner)-1]...)
		}
	} else {
		e.Body.fields(&w)
	}
	return append(w.buf, '}')
}

// What a journal may hold, so that no line from outside fills the memory or a screen.
const (
	LongestLine = 64 << 10 // bytes of a line
	LongestText = 10_000   // letters of one text
	MostMembers = 256      // of an object: each is held against all others
	FirstYear   = 1900
	LastYear    = 2200
)

// ParseLine reads one line of the journal. Errors say what is wrong in words.
func ParseLine(line []byte) (Event, error) { return NewLineReader().Parse(line) }

func (r *lineReader) parse(line []byte) (Event, error) {
	var e Event
	if len(line) > LongestLine {
		return e, fmt.Errorf("it is longer than %d bytes", LongestLine)
	}
	if !utf8.Valid(line) {
		return e, errors.New("it is not text in UTF-8")
	}
	members, err := r.object(r.members[:0], line)
	if err != nil {
		return e, err
	}
	r.members = members
	v, kind := 0, ""
	r.number("v", &v)
	r.id("id", &e.ID)
	r.instant("at", &e.At)
	r.text("hand", &e.Hand)
	stump := r.plain("stump")
	r.text("kind", &kind)
	clock := string(r.find("clock"))
	e.Act = r.act(v)
	e.Replaces = r.ids("replaces")
	switch {
	case r.err != nil:
		return e, r.err
	case v < 1:
		return e, errors.New("v is missing")
	case e.ID == None:
		return e, errors.New("id is missing")
	case e.At.IsZero():
		return e, errors.New("at is missing")
	case kind == "":
		return e, errors.New("kind is missing")
	}
	if e.Stump, err = ParseStumpID(stump); err != nil {
		return e, err
	}
	if e.Clock, err = strconv.ParseUint(clock, 10, 63); err != nil || e.Clock == 0 {
		return e, fmt.Errorf("clock is %s, not a whole number over 0", cmp.Or(Clean(clock), "missing"))
	}
	code, known := kindByName[kind]
	if !known || v > Version {
		raw, err := rest(members, e.Act != None)
		e.Body = &Foreign{Name: kind, V: v, Raw: raw}
		return e, err
	}
	e.Body = newBody(code)
	e.Body.fields(r)
	if r.err != nil {
		return e, r.err
	}
	if name, stands := r.unread(); stands {
		return e, fmt.Errorf("%s has no field %q", kind, Clean(name))
	}
	return e, Check(e)
}

// Check says what is wrong with an event in itself, such as a word that is no
// answer or a stump where none belongs.
func Check(e Event) error {
	if _, ok := e.Body.(onStump); ok && e.Stump == NoStump {
		return fmt.Errorf("%s needs a stump", e.Body.Kind())
	}
	if _, ok := e.Body.(onBook); ok && e.Stump != NoStump {
		return fmt.Errorf("%s is about no single stump", e.Body.Kind())
	}
	if c, ok := e.Body.(checked); ok {
		return c.check()
	}
	return nil
}

// inEnvelope says whether a member is about the event and not of its body.
func inEnvelope(name string, withAct bool) bool {
	return slices.Contains(envelope, name) && (withAct || name != "act")
}

// rest is the body's part of an unknown event, compact and in its own order.
func rest(members []member, withAct bool) (json.RawMessage, error) {
	w := lineWriter{buf: []byte{'{'}}
	for _, m := range members {
		if inEnvelope(m.name, withAct) {
			continue
		}
		var compact bytes.Buffer
		if err := json.Compact(&compact, m.raw); err != nil {
			return nil, errNotWhole
		}
		w.raw(m.name, compact.String())
	}
	return append(w.buf, '}'), nil
}

// lineWriter writes fields as members of a JSON object.
type lineWriter struct{ buf []byte }

func (w *lineWriter) raw(name, value string) {
	if w.buf[len(w.buf)-1] != '{' {
		w.buf = append(w.buf, ',')
	}
	w.buf = append(w.buf, quoted(name)...)
	w.buf = append(w.buf, ':')
	w.buf = append(w.buf, value...)
}

// quoted is a text or a number as JSON has it.
func quoted(v any) []byte {
	if s, ok := v.(string); ok && plain(s) {
		return append(append(append(make([]byte, 0, len(s)+2), '"'), s...), '"')
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return []byte("null")
	}
	return bytes.TrimSuffix(b.Bytes(), []byte{'\n'})
}

// plain says whether a text stands in JSON as it is, between quotes.
func plain(s string) bool {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' {
			return false
		}
	}
	return true
}

func (w *lineWriter) put(name string, v any) { w.raw(name, string(quoted(v))) }

func (w *lineWriter) text(name string, v *string) {
	if *v != "" {
		w.put(name, *v)
	}
}

func (w *lineWriter) number(name string, v *int) {
	if *v != 0 {
		w.put(name, *v)
	}
}

func (w *lineWriter) real(name string, v *float64) {
	if *v != 0 {
		w.put(name, *v)
	}
}

func (w *lineWriter) flag(name string, v *bool) {
	if *v {
		w.raw(name, "true")
	}
}

type typedMM struct {
	MM    float64 `json:"mm"`
	Typed string  `json:"typed,omitempty"`
}

type typedC struct {
	C     float64 `json:"c"`
	Typed string  `json:"typed"`
}

func (w *lineWriter) length(name string, v *Measure) {
	if v.Given() {
		w.put(name, typedMM{v.MM(), v.Typed})
	}
}

func (w *lineWriter) degrees(name string, v *Degrees) {
	if v.Given() {
		w.put(name, typedC{v.C(), v.Typed})
	}
}

func (w *lineWriter) bearing(name string, v *unit.Bearing) {
	if *v != 0 {
		w.put(name, v.Deg())
	}
}

func (w *lineWriter) date(name string, v *unit.Date) {
	if *v != 0 {
		w.put(name, v.String())
	}
}

func (w *lineWriter) id(name string, v *ID) {
	if *v != None {
		w.put(name, v.String())
	}
}

func (w *lineWriter) list(name string, n int, _ func(int), each func(int, fields)) {
	if n == 0 {
		return
	}
	items := make([]string, n)
	for i := range n {
		item := lineWriter{buf: []byte{'{'}}
		each(i, &item)
		items[i] = string(append(item.buf, '}'))
	}
	w.raw(name, "["+strings.Join(items, ",")+"]")
}

// Clean takes control characters out of text that came from outside.
func Clean(s string) string {
	if plain(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		if r < 0x20 || r >= 0x7f && r < 0xa0 || r == utf8.RuneError || turnsText(r) {
			return -1
		}
		return r
	}, s)
}

// turnsText says whether a letter that is not seen ends lines or turns the way
// text is read.
func turnsText(r rune) bool {
	switch {
	case r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069, r >= 0x2028 && r <= 0x2029:
		return true
	}
	return r == 0x200e || r == 0x200f || r == 0x061c || r == 0xfeff
}
