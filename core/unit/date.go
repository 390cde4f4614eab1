package unit

import (
	"fmt"
	"time"
)

// Date is a calendar day, counted from 1970-01-01. The zero Date stands for
// "none" wherever a record may lack a date.
type Date int32

// DateOf is the calendar day of an instant in the zone the instant carries.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return MakeDate(y, m, d)
}

// MakeDate is the day y-m-d; out-of-range parts carry over as in time.Date.
func MakeDate(y int, m time.Month, d int) Date {
	return Date(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// ParseDate reads 2027-05-04.
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return 0, &Error{Given: s, Accepted: "a date such as 2027-05-04"}
	}
	return DateOf(t), nil
}

func (d Date) utc() time.Time { return time.Unix(int64(d)*86400, 0).UTC() }

// In is the first instant of the day in a zone: midnight, or the first moment
// after it where a clock change skips midnight.
func (d Date) In(zone *time.Location) time.Time {
	y, m, day := d.utc().Date()
	t := time.Date(y, m, day, 0, 0, 0, 0, zone)
	if DateOf(t) < d { // midnight does not exist on this day
		t = t.Add(time.Hour)
	}
	return t
}

// At is a clock time on the day in a zone.
func (d Date) At(hour, minute int, zone *time.Location) time.Time {
	y, m, day := d.utc().Date()
	return time.Date(y, m, day, hour, minute, 0, 0, zone)
}

// Add is the day n days later.
func (d Date) Add(n int) Date { return d + Date(n) }

// AddYears is the same day n years later; 29 February becomes 1 March.
func (d Date) AddYears(n int) Date {
	y, m, day := d.utc().Date()
	return MakeDate(y+n, m, day)
}

// Parts are the year, month and day of the month.
func (d Date) Parts() (year int, month time.Month, day int) { return d.utc().Date() }

// Year is the calendar year.
func (d Date) Year() int { return d.utc().Year() }

// YearDay is the day of the year, 1 to 366.
func (d Date) YearDay() int { return d.utc().YearDay() }

// Weekday is the day of the week.
func (d Date) Weekday() time.Weekday { return d.utc().Weekday() }

// String is the ISO form, 2027-05-04.
func (d Date) String() string { return d.utc().Format(time.DateOnly) }

// Short is the form people read: 4 May.
func (d Date) Short() string { return d.utc().Format("2 Jan") }

// Long is the form people read with its year: 4 May 2027.
func (d Date) Long() string { return d.utc().Format("2 Jan 2006") }

// MarshalText writes the ISO form.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads the ISO form.
func (d *Date) UnmarshalText(b []byte) (err error) {
	*d, err = ParseDate(string(b))
	return err
}

// Clock is a time of day in minutes after midnight, 0 to 1439.
type Clock int

// ParseClock reads 14:30, also 9:05 and 1430.
func ParseClock(s string) (Clock, error) {
	for _, layout := range []string{"15:04", "1504"} {
		if t, err := time.Parse(layout, s); err == nil {
			return Clock(t.Hour()*60 + t.Minute()), nil
		}
	}
	return 0, &Error{Given: s, Accepted: "a time such as 14:30"}
}

// On is the instant of the clock time on a day in a zone.
func (c Clock) On(d Date, zone *time.Location) time.Time { return d.At(int(c)/60, int(c)%60, zone) }

// String is 14:30.
func (c Clock) String() string { return fmt.Sprintf("%02d:%02d", int(c)/60, int(c)%60) }
