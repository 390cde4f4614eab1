package unit

import (
	"errors"
	"testing"
	"time"
)

func TestReadDate(t *testing.T) {
	today := MakeDate(2027, time.May, 20)
	on := func(y int, m time.Month, d int) Date { return MakeDate(y, m, d) }
	for text, want := range map[string]Date{
		"2027-05-04": on(2027, 5, 4), "05-04": on(2027, 5, 4), "4 May": on(2027, 5, 4), "May 4": on(2027, 5, 4), "4. May": on(2027, 5, 4),
		"4 may 2026": on(2026, 5, 4), "May 4, 2026": on(2026, 5, 4), "4th May": on(2027, 5, 4), "4.5.": on(2027, 5, 4), "4.5": on(2027, 5, 4),
		"4.5.2026": on(2026, 5, 4), "04.05.26": on(2026, 5, 4), "today": today, "Yesterday": today - 1, "tomorrow": today + 1, "-2": today - 2,
		"+3": today + 3, "-0": today, "5/5": on(2027, 5, 5), "20 Dec": on(2026, 12, 20), "10 Nov": on(2027, 11, 10), "1 Dec": on(2026, 12, 1),
		"29 Feb": on(2028, 2, 29), "Sept 3": on(2027, 9, 3), " 4 August ": on(2027, 8, 4),
	} {
		for _, sys := range []System{US, Metric} {
			if got, err := ReadDate(text, today, sys); err != nil || got != want {
				t.Errorf("%s, %q: %s, %v; want %s", sys, text, got, err, want)
			}
		}
	}
	for _, text := range []string{"", "soon", "32 Jun", "13-01", "2027-02-30", "30.2.", "May", "4", "4 May 20277", "99/99", "1/2/3/4", "-", "-9999",
		"4 Mayhem", "1/2/3", "2250-01-01", "4..5", "Ma 4", "4 5", "29 Feb 2027", "0/5", "-2 -2"} {
		for _, sys := range []System{US, Metric} {
			got, err := ReadDate(text, today, sys)
			var fault *Error
			if !errors.As(err, &fault) || fault.Given != text {
				t.Errorf("%s, %q: taken as %s, or %v", sys, text, got, err)
			}
		}
	}
}

// Behind a slash stands the day where the block is kept in inches; in a metric
// one either may be meant, which is asked.
func TestReadSlashedDate(t *testing.T) {
	today := MakeDate(2027, time.May, 20)
	for text, want := range map[string]Date{"5/6": MakeDate(2027, 5, 6), "5/6/26": MakeDate(2026, 5, 6), "05/13/2027": MakeDate(2027, 5, 13)} {
		if got, err := ReadDate(text, today, US); err != nil || got != want {
			t.Errorf("%q: %s, %v; want %s", text, got, err, want)
		}
	}
	if got, err := ReadDate("13/5", today, US); err == nil {
		t.Errorf("13/5 is taken as %s", got)
	}
	for text, want := range map[string]Date{"5/5": MakeDate(2027, 5, 5), "13/5": MakeDate(2027, 5, 13), "5/13": MakeDate(2027, 5, 13)} {
		if got, err := ReadDate(text, today, Metric); err != nil || got != want {
			t.Errorf("metric %q: %s, %v; want %s", text, got, err, want)
		}
	}
	_, err := ReadDate("5/6", today, Metric)
	var either *EitherDay
	if !errors.As(err, &either) || either.First != MakeDate(2027, 6, 5) || either.Second != MakeDate(2027, 5, 6) {
		t.Errorf("metric 5/6: %v", err)
	}
}
