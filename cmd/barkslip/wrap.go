package main

import (
	"strings"
	"unicode/utf8"
)

// textWidth is how wide text for people is set.
const textWidth = 80

// wrap breaks a text into lines of textWidth, the first after head and the
// others after as many spaces as hang.
func wrap(head, text string, hang int) string {
	var out strings.Builder
	out.WriteString(head)
	at, fresh := utf8.RuneCountInString(head), true
	for _, w := range strings.Fields(text) {
		long := utf8.RuneCountInString(w)
		switch {
		case fresh:
		case at+1+long > textWidth:
			out.WriteString("\n" + strings.Repeat(" ", hang))
			at = hang
		default:
			out.WriteByte(' ')
			at++
		}
		out.WriteString(w)
		at, fresh = at+long, false
	}
	return out.String()
}
