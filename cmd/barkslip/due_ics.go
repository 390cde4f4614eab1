package main

import (
	"bufio"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// dueCalendar writes the dues as a calendar, RFC 5545. Times are in UTC, so
// that no time zone has to be described; work that runs by days takes whole
// days. An entry keeps its UID as long as its cause stands, and SEQUENCE grows
// with the journal, so that importing it again replaces it.
func (a *app) dueCalendar(list dueList) error {
	c := calendar{a.out}
	c.lines("BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//barkslip//due//EN", "CALSCALE:GREGORIAN")
	stamp := []string{"DTSTAMP:" + utc(list.ask.now), "SEQUENCE:" + strconv.Itoa(list.events)}
	for _, d := range list.blocks {
		name := strings.ToValidUTF8(record.Clean(d.Name), "")
		for _, due := range d.dues {
			c.line("BEGIN:VEVENT")
			c.line("UID:" + dueUID(due, d.Block))
			c.lines(stamp...)
			c.lines(span(due)...)
			c.text("SUMMARY", due.Kind.String()+": "+name+" "+due.Stump.Place())
			c.text("LOCATION", name+", "+due.Stump.Long())
			c.text("DESCRIPTION", due.Why(d.Block))
			c.line("TRANSP:TRANSPARENT")
			c.alarms(due, name)
			c.line("END:VEVENT")
		}
	}
	if !slices.ContainsFunc(list.blocks, func(d blockDues) bool { return len(d.dues) > 0 }) {
		// a calendar has at least one component, so one without entries names its zone
		c.lines("BEGIN:VTIMEZONE", "TZID:UTC", "BEGIN:STANDARD", "DTSTART:19700101T000000", "TZOFFSETFROM:+0000", "TZOFFSETTO:+0000", "END:STANDARD", "END:VTIMEZONE")
	}
	c.line("END:VCALENDAR")
	return nil
}

// dueUID names a due for as long as its cause stands.
func dueUID(d due.Due, b *record.Block) string {
	cause := utc(d.Since)
	switch d.Kind {
	case due.White: // wet still or not, it is the same coat, of the same day
		cause = basic(unit.DateOf(d.Since))
	case due.Sprouts, due.Tie, due.TiesOff: // one cause, and a due in each of several seasons
		cause += "-" + strconv.Itoa(b.SeasonOf(unit.DateOf(d.Opens)))
	}
	return d.Kind.String() + "-" + cause + "-" + strings.ReplaceAll(d.Stump.String(), "/", "-") + "@barkslip"
}

// span is from when to when an entry stands. An end comes after its start, or
// is left out; that of whole days is the day behind the last.
func span(d due.Due) []string {
	if !d.Kind.Timed() {
		return []string{"DTSTART;VALUE=DATE:" + basic(unit.DateOf(d.Opens)), "DTEND;VALUE=DATE:" + basic(unit.DateOf(d.By).Add(1))}
	}
	if !d.By.After(d.Opens) {
		return []string{"DTSTART:" + utc(d.Opens)}
	}
	return []string{"DTSTART:" + utc(d.Opens), "DTEND:" + utc(d.By)}
}

// utc is an instant as calendars write it.
func utc(t time.Time) string { return t.UTC().Format("20060102T150405Z") }

// basic is a day as calendars write it.
func basic(d unit.Date) string { return strings.ReplaceAll(d.String(), "-", "") }

// calendar writes the lines of a calendar.
type calendar struct{ out *bufio.Writer }

// alarms ring for white, when it opens and when it is to be done.
func (c calendar) alarms(d due.Due, name string) {
	if d.Kind != due.White {
		return
	}
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
