package pdf

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/bidi"
	"golang.org/x/text/unicode/norm"
)

// box stands for a letter that the font does not hold.
const box = '□'

// drawn is a text letter by letter from left to right as it is drawn: what is
// written from right to left is turned, what no font holds is a box, and what is
// not seen is left out.
func drawn(words string) string {
	if ascii(words) {
		return words
	}
	words = strings.Map(held, norm.NFC.String(words))
	if !strings.ContainsFunc(words, rightToLeft) {
		return words
	}
	return turned(joined(words))
}

func ascii(words string) bool {
	for i := range len(words) {
		if words[i] < ' ' || words[i] > '~' {
			return false
		}
	}
	return true
}

// held is a letter as far as the font holds it.
func held(r rune) rune {
	switch {
	case unicode.Is(unicode.Variation_Selector, r), unicode.Is(unicode.Cf, r), unicode.IsControl(r), r >= 0x1f3fb && r <= 0x1f3ff:
		return -1
	case plain().advance(r) == none || strong().advance(r) == none:
		return box
	}
	return r
}

func rightToLeft(r rune) bool { return classOf(r) == bidi.R || classOf(r) == bidi.AL }

func classOf(r rune) bidi.Class {
	p, _ := bidi.LookupRune(r)
	return p.Class()
}
