package part

import "barkslip/ui/paper"

// Choice is the beginning of an answer's line: its key, turned where Enter takes it,
// and its word.
func Choice(key, word string, likely bool) paper.Line {
	if likely {
		return paper.Line{{Text: " ", Ink: paper.Plain}, {Text: " " + key + " ", Ink: paper.Turned}, {Text: " ", Ink: paper.Plain}, {Text: word, Ink: paper.Strong}}
	}
	return paper.Line{{Text: "  " + key + "  ", Ink: paper.Accent}, {Text: word, Ink: paper.Plain}}
}
