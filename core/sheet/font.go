package sheet

import (
	"strings"
	"unicode"

	"barkslip/core/record"
)

// Font tells how wide a text is in mm at a size in points.
type Font interface {
	Width(words string, points float64, bold bool) float64
}

// mostLetters is how much of a text is looked at; no name or note that fits a
// sheet is longer.
const mostLetters = 600

// clean is a text of a user's or of a file, fit for paper: one line, without
// letters that are not seen, and not endlessly long.
func clean(words string) string {
	words = record.Clean(strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return ' '
		}
		return r
	}, words))
	words = strings.Join(strings.Fields(words), " ")
	if r := []rune(words); len(r) > mostLetters {
		words = string(r[:mostLetters]) + "…"
	}
	return words
}

// fit cuts a text to a width, with an ellipsis where something was cut.
func fit(f Font, words string, points float64, bold bool, wide float64) string {
	if f.Width(words, points, bold) <= wide {
		return words
	}
	r := []rune(words)
	least, most := 0, len(r)
	for least < most {
		n := (least + most + 1) / 2
		if f.Width(string(r[:n])+"…", points, bold) <= wide {
			least = n
		} else {
			most = n - 1
		}
	}
	return strings.TrimRight(string(r[:least]), " ") + "…"
}

// wrap breaks a text into lines no wider than so much; a word that is wider
// by itself is cut.
func wrap(f Font, words string, points float64, wide float64) (lines []string) {
	line := ""
	for _, word := range strings.Fields(words) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		switch {
		case f.Width(longer, points, false) <= wide:
			line = longer
			continue
		case line != "":
			lines = append(lines, line)
		}
		line = fit(f, word, points, false, wide)
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// widest is the largest size, from most down to least points, at which a text
// fits a width.
func widest(f Font, words string, bold bool, wide, most, least float64) float64 {
	points := most
	for points > least && f.Width(words, points, bold) > wide {
		points -= 0.5
	}
	return points
}
