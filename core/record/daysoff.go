package record

import (
	"slices"
	"strings"
	"time"

	"barkslip/core/unit"
)

// DaysOff are the days on which nobody works on a block.
type DaysOff struct {
	Week  []time.Weekday // each week
	Dates []unit.Date
}

// none is the value of a setting of several things that is set to none of them.
const none = "none"

const daysOffAccepted = "days of the week and dates, such as sat sun 2027-05-09, or none"

// readDaysOff reads days of the week and dates with spaces or commas between.
func readDaysOff(v string, into *DaysOff) error {
	words := listed(v)
	if len(words) == 0 {
		return &unit.Error{Given: v, Accepted: daysOffAccepted}
	}
	var off DaysOff
	for _, word := range words {
		if word == none && len(words) == 1 {
			break
		}
		if day, ok := Weekday(word); ok {
			if !slices.Contains(off.Week, day) {
				off.Week = append(off.Week, day)
			}
			continue
		}
		d, err := unit.ParseDate(word)
		if err != nil {
			return &unit.Error{Given: word, Accepted: daysOffAccepted}
		}
		if !slices.Contains(off.Dates, d) {
			off.Dates = append(off.Dates, d)
		}
	}
	slices.Sort(off.Week)
	slices.Sort(off.Dates)
	*into = off
	return nil
}

// Weekday reads a day of the week, by its name or the first letters of it, three
// at the least.
func Weekday(text string) (time.Weekday, bool) {
	text = strings.ToLower(text)
	for day := time.Sunday; day <= time.Saturday; day++ {
		if len(text) >= 3 && strings.HasPrefix(strings.ToLower(day.String()), text) {
			return day, true
		}
	}
	return 0, false
}

func listed(v string) []string {
	return strings.FieldsFunc(v, func(c rune) bool { return c == ',' || c == ' ' || c == ';' })
}

// Off says whether nobody works on a day.
func (o DaysOff) Off(d unit.Date) bool {
	return slices.Contains(o.Week, d.Weekday()) || slices.Contains(o.Dates, d)
}

// Words are the days off in words, "" where there are none.
func (o DaysOff) Words() string {
	var words []string
	for _, day := range o.Week {
		words = append(words, day.String()[:3])
	}
	for _, d := range o.Dates {
		words = append(words, d.Long())
	}
	return strings.Join(words, ", ")
}

// readHands reads the initials of a crew; one who stands twice is one.
func readHands(v string, into *[]string) error {
	words := listed(v)
	if len(words) == 0 {
		return &unit.Error{Given: v, Accepted: "initials with spaces between, such as MK RK, or none"}
	}
	var hands []string
	for _, word := range words {
		if word == none && len(words) == 1 {
			break
		}
		word = strings.ToUpper(word)
		if !Initials(word) {
			return &unit.Error{Given: word, Accepted: "initials of one to four letters with spaces between, such as MK RK, or none"}
		}
		if !slices.Contains(hands, word) {
			hands = append(hands, word)
		}
	}
	slices.Sort(hands)
	*into = hands
	return nil
}
