package main

import (
	"bufio"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// dueCalendar writes the dues as a calendar, RFC 5545: an entry for each day and
// kind of work, with its stumps in the text, and one with alarms for each white
// clock. Work that is open already stands on the day judged, the rest on the day
// it opens. Times are in UTC, so that no time zone has to be described. An entry
// keeps its UID, and SEQUENCE grows with the journal, so that importing it again
// replaces it.
func (a *app) dueCalendar(list dueList) error {
	c := calendar{a.out}
	c.lines("BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//barkslip//due//EN", "CALSCALE:GREGORIAN")
	stamp := []string{"DTSTAMP:" + utc(list.ask.now), "SEQUENCE:" + strconv.Itoa(list.events)}
	empty := true
	for i := range list.blocks {
		for _, e := range list.blocks[i].entries() {
			empty = false
			c.entry(e, stamp)
		}
	}
	if empty {
		// a calendar has at least one component, so one without entries names its zone
		c.lines("BEGIN:VTIMEZONE", "TZID:UTC", "BEGIN:STANDARD", "DTSTART:19700101T000000", "TZOFFSETFROM:+0000", "TZOFFSETTO:+0000", "END:STANDARD", "END:VTIMEZONE")
	}
	c.line("END:VCALENDAR")
	return nil
}

// entry is one entry of the calendar: a white clock, or the work of one kind on
// one day.
type entry struct {
	of    *blockDues
	kind  due.Kind
	day   unit.Date
	dues  []due.Due // in walking order
	clock bool      // one stump's white clock
}

// entries puts the dues of a block together by day and kind, each white clock by
// itself.
func (d *blockDues) entries() (out []entry) {
	type slot struct {
		day  unit.Date
		kind due.Kind
	}
	at := map[slot]int{}
	for _, w := range d.dues {
		s := slot{max(d.on, unit.DateOf(w.Opens)), w.Kind}
		i, begun := at[s]
		switch {
		case w.Kind == due.White:
			out = append(out, entry{of: d, kind: w.Kind, day: s.day, dues: []due.Due{w}, clock: true})
		case begun:
			out[i].dues = append(out[i].dues, w)
		default:
			at[s] = len(out)
			out = append(out, entry{of: d, kind: w.Kind, day: s.day, dues: []due.Due{w}})
		}
	}
	slices.SortStableFunc(out, func(x, y entry) int { return int(x.day - y.day) })
	return out
}

// name of the block, fit for a line.
func (e entry) name() string { return strings.ToValidUTF8(record.Clean(e.of.Name), "") }

// uid names an entry: a white clock by its coat's day, the rest by day and kind.
func (e entry) uid() string {
	if e.clock { // wet still or not, it is the same coat, of the same day
		return "white-" + basic(unit.DateOf(e.dues[0].Since)) + "-" + strings.ReplaceAll(e.dues[0].Stump.String(), "/", "-") + "@barkslip"
	}
	return e.kind.String() + "-" + basic(e.day) + "-" + e.of.ID.String() + "@barkslip"
}

// span is from when to when an entry stands. An end comes after its start, or is
// left out; that of whole days is the day behind the last.
func (e entry) span() []string {
	if !e.clock {
		return []string{"DTSTART;VALUE=DATE:" + basic(e.day), "DTEND;VALUE=DATE:" + basic(e.day.Add(1))}
	}
	d := e.dues[0]
	if !d.By.After(d.Opens) {
		return []string{"DTSTART:" + utc(d.Opens)}
	}
	return []string{"DTSTART:" + utc(d.Opens), "DTEND:" + utc(d.By)}
}

// summary is the entry in a line.
func (e entry) summary() string {
	what := count(len(e.dues), "stump")
	if e.clock {
		what = e.dues[0].Stump.Place()
	}
	if n := e.late(); n > 0 && !e.clock {
		what += fmt.Sprintf(", %d late", n)
	}
	return e.kind.String() + ": " + e.name() + ", " + what
}

func (e entry) late() (n int) {
	for _, d := range e.dues {
		if d.Late(e.of.at) {
			n++
		}
	}
	return n
}

// tells is a line a stump: where, when, why.
func (e entry) tells() string {
	lines := make([]string, len(e.dues))
	for i, d := range e.dues {
		late := ""
		if d.Late(e.of.at) {
			late = "late: "
		}
		lines[i] = late + d.Stump.Place() + ", " + e.of.window(d) + ": " + d.Why(e.of.Block)
	}
	return strings.Join(lines, "\n")
}

func (c calendar) entry(e entry, stamp []string) {
	c.line("BEGIN:VEVENT")
	c.line("UID:" + e.uid())
	c.lines(stamp...)
	c.lines(e.span()...)
	c.text("SUMMARY", e.summary())
	where := e.name()
	if len(e.dues) == 1 {
		where += ", " + e.dues[0].Stump.Long()
	}
	c.text("LOCATION", where)
	c.text("DESCRIPTION", e.tells())
	c.line("TRANSP:TRANSPARENT")
	if e.clock {
		c.alarms(e.dues[0], e.name())
	}
	c.line("END:VEVENT")
}

// utc is an instant as calendars write it.
func utc(t time.Time) string { return t.UTC().Format("20060102T150405Z") }

// basic is a day as calendars write it.
func basic(d unit.Date) string { return strings.ReplaceAll(d.String(), "-", "") }

// calendar writes the lines of a calendar.
type calendar struct{ out *bufio.Writer }

// alarms ring for white, when it opens and when it is to be done.
func (c calendar) alarms(d due.Due, name string) {
	says := name + " " + d.Stump.Place()
	c.alarm("START", "Paint white if the sealer is dry: "+says)
	if d.By.After(d.Opens) {
		c.alarm("END", "Paint white now: "+says)
	}
}

func (c calendar) alarm(at, says string) {
	c.lines("BEGIN:VALARM", "ACTION:DISPLAY", "TRIGGER;RELATED="+at+":PT0S")
	c.text("DESCRIPTION", says)
	c.line("END:VALARM")
}

// escapes are the characters that stand for themselves in no text.
var escapes = strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\r\n", `\n`, "\n", `\n`)

func (c calendar) text(name, value string) {
	if strings.ContainsAny(value, "\\;,\r\n") {
		value = escapes.Replace(value)
	}
	c.line(name + ":" + value)
}

func (c calendar) lines(all ...string) {
	for _, s := range all {
		c.line(s)
	}
}

// octets is the most a line may have, without its end.
const octets = 75

// line writes one line of valid UTF-8, folded between characters where it is
// too long: each part after the first begins with a blank.
func (c calendar) line(s string) {
	room := octets
	for len(s) > room {
		cut := room
		for !utf8.RuneStart(s[cut]) {
			cut--
		}
		c.write(s[:cut], "\r\n ")
		s, room = s[cut:], octets-1
	}
	c.write(s, "\r\n")
}

// write writes a part of a line; the writer keeps the first error to the end.
func (c calendar) write(part, end string) {
	_, _ = c.out.WriteString(part)
	_, _ = c.out.WriteString(end)
}
