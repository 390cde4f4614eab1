package ui

import (
	"unicode"
	"unicode/utf8"

	"barkslip/core/record"
	"barkslip/ui/paper"
)

// field is one line of typed text.
type field struct {
	text  string
	any   bool // any text: letters are never commands
	limit int
}

const fieldLimit = 200

// takes says whether a key is text for the field as it stands. In a field of
// numbers a letter is a command until something has been typed.
func (f *field) takes(key string) bool {
	r, size := utf8.DecodeRuneInString(key)
	if size != len(key) || !unicode.IsPrint(r) {
		return false
	}
	if f.any || f.text != "" {
		return true
	}
	return unicode.IsDigit(r) || r == '.' || r == '-' // a minus is read, and refused in words
}

// typed adds or removes text; it says whether the key was for the field.
func (f *field) typed(key string) bool {
	switch {
	case key == "backspace" && f.text != "":
		_, size := utf8.DecodeLastRuneInString(f.text)
		f.text = f.text[:len(f.text)-size]
		return true
	case key == "ctrl+u":
		f.text = ""
		return true
	case f.takes(key):
		limit := f.limit
		if limit == 0 {
			limit = fieldLimit
		}
		if len(f.text) < limit {
			f.text += key
		}
		return true
	}
	return false
}

// paste adds text from the clipboard, cleaned.
func (f *field) paste(s string) {
	for _, r := range record.Clean(s) {
		if len(f.text) < fieldLimit {
			f.text += string(r)
		}
	}
}

// line shows the field with its cursor.
// A text longer than the room shows its end.
func (f *field) line(likely string, width int) paper.Line {
	l := paper.Line{{Text: "> ", Ink: paper.Accent}}
	if f.text == "" && likely != "" {
		return l.Add(paper.Turned, " ").Add(paper.Faint, " Enter takes "+likely)
	}
	text := []rune(f.text)
	for len(text) > 1 && paper.Width(string(text)) > max(width-4, 8) {
		text = text[1:]
	}
	if len(text) < len([]rune(f.text)) {
		text[0] = '…'
	}
	return l.Add(paper.Strong, string(text)).Add(paper.Turned, " ")
}
