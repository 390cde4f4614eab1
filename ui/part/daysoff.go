package part

import (
	"strings"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// DaysOff is the value of the setting of days off in what was typed: days of the
// week and dates, with commas between where dates are written in words.
func DaysOff(text string, today unit.Date, sys unit.System) (string, error) {
	var out []string
	for _, piece := range strings.FieldsFunc(text, func(c rune) bool { return c == ',' || c == ';' }) {
		words := strings.Fields(piece)
		for len(words) > 0 {
			if _, ok := record.Weekday(words[0]); !ok && words[0] != "none" {
				break
			}
			out, words = append(out, words[0]), words[1:]
		}
		if len(words) == 0 {
			continue
		}
		if len(words) > 1 && allDates(words) {
			out = append(out, words...)
			continue
		}
		d, err := unit.ReadDate(strings.Join(words, " "), today, sys)
		if err != nil {
			return "", err
		}
		out = append(out, d.String())
	}
	return strings.Join(out, " "), nil
}

// allDates says whether each word is a date of its own, as 2027-05-09.
func allDates(words []string) bool {
	for _, w := range words {
		if _, err := unit.ParseDate(w); err != nil {
			return false
		}
	}
	return true
}
