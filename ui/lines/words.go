package lines

import (
	"regexp"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/part"
)

// Each key of the screens is a word here, by its name as it is shown, and each deed
// by its own word. These are further words for some.
var further = map[string]string{
	"undo": "u", "redo": "U", "put": "U", "note": "m", "hand": "h", "time": "t", "story": "j", "skip": "s",
	"quit": "q", "exit": "q", "help": "?", "back": "esc", "ok": "enter", "find": "/", "go": "/", "rounds": "g", "why": "w", "next": "n",
	"practise": ";", "learn": ";", "blocks": "b", "settings": "o", "coach": "c",
}

// keyTypes are the keys that have a name and no letter.
var keyTypes = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "tab": tea.KeyTab, "shift-tab": tea.KeyShiftTab, "up": tea.KeyUp, "down": tea.KeyDown,
	"left": tea.KeyLeft, "right": tea.KeyRight, "home": tea.KeyHome, "end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdn": tea.KeyPgDown,
	"ctrl-p": tea.KeyCtrlP, "ctrl-u": tea.KeyCtrlU, "f1": tea.KeyF1, "f2": tea.KeyF2,
}

// keyNamed is the key of a word; ok is false where it is none.
func keyNamed(word string) (k tea.KeyMsg, ok bool) {
	if letter(word) {
		return runes(word), true
	}
	word = strings.ToLower(word)
	if key, has := further[word]; has {
		word = key
	} else {
		for _, d := range part.Deeds() {
			if strings.EqualFold(d.Word, word) || strings.EqualFold(d.Shown, word) {
				word = shortest(d)
			}
		}
	}
	if word == "space" || word == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}, true
	}
	if t, has := keyTypes[strings.ReplaceAll(word, "+", "-")]; has {
		return tea.KeyMsg{Type: t}, true
	}
	return runes(word), letter(word)
}

// shortest is the first key of a deed.
func shortest(d part.Deed) string {
	if d.Keys[0] == "pgdown" {
		return "pgdn"
	}
	return d.Keys[0]
}

// letter says whether a word is a key by itself: one sign that is no digit.
func letter(word string) bool {
	r := []rune(word)
	return len(r) == 1 && (r[0] < '0' || r[0] > '9') && r[0] != '.'
}

func runes(word string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(word)} }

// A place is row/tree with its limb, or row and tree.
var place = regexp.MustCompile(`^\d+\s*(/|\s)\s*\d+\s*[a-z]?(/\d+)?$`)

// number is a whole number.
var number = regexp.MustCompile(`^\d{1,6}$`)

// worded is a word with a text behind it, as m TEXT or /4 17.
func worded(text string) (word, rest string) {
	if r, ok := strings.CutPrefix(text, "/"); ok {
		return "/", strings.TrimSpace(r)
	}
	word, rest, _ = strings.Cut(text, " ")
	return word, strings.TrimSpace(rest)
}
