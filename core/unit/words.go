package unit

import (
	"fmt"
	"strings"
	"time"
)

// Count is a number with its noun: 1 gash, 2 gashes.
func Count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	if stem, ok := strings.CutSuffix(noun, "h"); ok {
		return fmt.Sprintf("%d %shes", n, stem)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// When prints an instant as people say it seen from now: 14:35 on the same day,
// 4 May or 4 May 14:35 otherwise, with the year where that is another.
func When(t, now time.Time, zone *time.Location) string {
	t, now = t.In(zone), now.In(zone)
	day, today := DateOf(t), DateOf(now)
	switch {
	case day == today && !lastOfDay(t):
		return t.Format("15:04")
	case (t.Hour() == 0 && t.Minute() == 0 || lastOfDay(t)) && day.Year() == today.Year():
		return t.Format("2 Jan")
	case day.Year() != today.Year():
		return t.Format("2 Jan 2006")
	}
	return t.Format("2 Jan 15:04")
}

// lastOfDay says whether an instant stands for the whole of its day.
func lastOfDay(t time.Time) bool {
	hour, minute, second := t.Clock()
	return hour == 23 && minute == 59 && second == 59
}

// Lasting prints how long something was, in whole minutes: 55 min, 2 h, 2 h 5 min.
func Lasting(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	switch {
	case m < 60:
		return fmt.Sprintf("%d min", m)
	case m < 24*60 && m%60 == 0:
		return fmt.Sprintf("%d h", m/60)
	case m < 24*60:
		return fmt.Sprintf("%d h %d min", m/60, m%60)
	}
	return Count(m/(24*60), "day")
}
