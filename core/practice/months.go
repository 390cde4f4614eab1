package practice

import (
	"strings"
	"time"
)

// here is a text written for the north as it holds where the tale is: in the south each
// month that it names is half a year on. Dates are printed short and are right already.
func (t *tale) here(text string) string {
	if !t.b.South() {
		return text
	}
	return southern.Replace(text)
}

// southern puts the months of the south for those of the north, but for May, which is a
// word besides.
var southern = func() *strings.Replacer {
	var pairs []string
	for m := time.January; m <= time.December; m++ {
		if m != time.May {
			pairs = append(pairs, m.String(), ((m+5)%12 + 1).String())
		}
	}
	return strings.NewReplacer(pairs...)
}()
