package part

import (
	"strings"
	"unicode"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/ui/paper"
)

// Field is one line of typed text with a cursor in it. In a field of words every
// letter is text. In a field of numbers a letter is a command until something
// has been typed.
type Field struct {
	input textinput.Model
	words bool
}

// FieldLimit is the most characters a field holds.
const FieldLimit = 200

// NewField is a field with a text in it and the cursor behind it.
func NewField(words bool, text string) Field {
	f := Field{input: textinput.New(), words: words}
	f.input.CharLimit = FieldLimit
	f.input.Cursor.SetMode(cursor.CursorStatic)
	f.input.Focus()
	f.input.SetValue(text)
	return f
}

// Text is what stands in the field.
func (f *Field) Text() string { return f.input.Value() }

// Clear empties the field.
func (f *Field) Clear() { f.input.Reset() }

// Letters says whether letters are text in the field as it stands.
func (f *Field) Letters() bool { return f.words || f.Text() != "" }

// Takes says whether a key is text for the field as it stands.
func (f *Field) Takes(k tea.KeyMsg) bool {
	if k.Alt || k.Type != tea.KeyRunes && k.Type != tea.KeySpace || len(k.Runes) != 1 {
		return false
	}
	r := k.Runes[0]
	if !unicode.IsPrint(r) {
		return false
	}
	return f.Letters() || unicode.IsDigit(r) || r == '.' || r == '-' // a minus is read, and refused in words
}

// Edits says whether a key moves in or changes what was typed.
func (f *Field) Edits(k tea.KeyMsg) bool {
	m := f.input.KeyMap
	return f.Text() != "" && key.Matches(k, m.CharacterForward, m.CharacterBackward, m.WordForward, m.WordBackward, m.LineStart, m.LineEnd,
		m.DeleteWordBackward, m.DeleteWordForward, m.DeleteAfterCursor, m.DeleteBeforeCursor, m.DeleteCharacterBackward, m.DeleteCharacterForward)
}

// Key types or edits; it says whether the key was for the field.
func (f *Field) Key(k tea.KeyMsg) bool {
	if !f.Takes(k) && !f.Edits(k) {
		return false
	}
	f.input, _ = f.input.Update(k)
	return true
}

// Held takes out what a key held down has typed, where that is all there is.
func (f *Field) Held(k tea.KeyMsg) {
	if strings.Trim(f.Text(), k.String()) == "" {
		f.Clear()
	}
}

// Paste puts text from the clipboard in at the cursor, cleaned.
func (f *Field) Paste(s string) {
	text := []rune(record.Clean(s))
	text = text[:min(len(text), FieldLimit)]
	f.input, _ = f.input.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: text})
}

// Line shows the field with its cursor. Of a text longer than the room it shows
// what stands about the cursor.
func (f *Field) Line(likely string, width int) paper.Line {
	l := paper.Line{{Text: "> ", Ink: paper.Accent}}
	text, at := []rune(f.Text()), f.input.Position()
	if len(text) == 0 && likely != "" {
		return l.Add(paper.Turned, " ").Add(paper.Faint, " Enter takes "+likely)
	}
	room, from, to := max(width-4, 8), 0, len(text)
	for from < at && paper.Width(string(text[from:at])) > room {
		from++
	}
	for to > at+1 && paper.Width(string(text[from:to])) > room {
		to--
	}
	if 0 < from && from < at {
		text[from] = '…'
	}
	if at+1 < to && to < len(text) {
		text[to-1] = '…'
	}
	if at == len(text) {
		return l.Add(paper.Strong, string(text[from:])).Add(paper.Turned, " ")
	}
	return l.Add(paper.Strong, string(text[from:at])).Add(paper.Turned, string(text[at])).Add(paper.Strong, string(text[at+1:to]))
}
