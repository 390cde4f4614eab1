package part

import (
	"fmt"
	"slices"
	"unicode"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/paper"
)

// Row is one row of a screen's key table. The table feeds the keys, the key line
// and the help.
type Row struct {
	key.Binding        // its keys, the key as shown, and its word in the key line
	Says        string // one sentence for the help; "" keeps it out
	Do          func() Msgs
}

// On binds keys under the key as it is shown, which is the one key where none is
// given. A word stands in the key line; "" keeps it to the help.
func On(shown, word string, keys ...string) key.Binding {
	if len(keys) == 0 {
		keys = []string{shown}
	}
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(shown, word))
}

// Press runs the row of a key. A letter does the same with Shift or Caps Lock,
// unless a row has it so. A key that no row has goes on to rest.
func Press(table []Row, k tea.KeyMsg, rest func(tea.KeyMsg) Msgs) Msgs {
	for _, k := range []tea.KeyMsg{k, small(k)} {
		for _, row := range table {
			if key.Matches(k, row.Binding) {
				return row.Do()
			}
		}
	}
	return rest(k)
}

// small is a key without Shift or Caps Lock, where it is a letter.
func small(k tea.KeyMsg) tea.KeyMsg {
	if k.Type == tea.KeyRunes && len(k.Runes) == 1 {
		k.Runes = []rune{unicode.ToLower(k.Runes[0])}
	}
	return k
}

// Useless says that a key has no use on the screen.
func Useless(tea.KeyMsg) Msgs { return Msgs{NoUse{}} }

// Does is what a row does whose key only sends messages.
func Does(msgs ...Msg) func() Msgs { return func() Msgs { return msgs } }

// words is the key line of the rows that fit the width, in their order.
func words(table []Row, width int) paper.Line {
	line := paper.Line{}
	for _, row := range table {
		w := rowWords(row)
		if line.Width()+w.Width() <= width {
			line = append(line, w...)
		}
	}
	return line
}

// rowWords is a row as it stands in the key line; nothing for one that is only in
// the help.
func rowWords(row Row) paper.Line {
	h := row.Help()
	if h.Desc == "" {
		return nil
	}
	return paper.Line{{Text: " ", Ink: paper.Plain}, {Text: h.Key, Ink: paper.Accent}, {Text: " " + h.Desc + " ", Ink: paper.Faint}}
}

// Common are the keys that work on every screen.
func (x *Session) Common(help func() Msgs) []Row {
	return append(x.Leaving(help), ToHand.Row(x.AskHand), ToTime.Row(x.AskTime), ToMeet.Row(x.Meet), ToPractice.Row(x.toPractice))
}

// Leaving are the keys that work wherever nothing is typed: for help, the words,
// the theme and for leaving.
func (x *Session) Leaving(help func() Msgs) []Row {
	return []Row{ToHelp.Row(help), ToWords.Row(Does(Words{})), ToTheme.Row(x.SwitchTheme), ToLeave.Row(Does(Quit{}))}
}

// KeyLine is what may be done now: what leads, then the rows of the table as far
// as there is room, the most used first, and always the keys for help and for
// leaving. The one for the words stands there where it costs none of the first.
func (x *Session) KeyLine(lead paper.Line, table []Row) paper.Line {
	room := x.Width - lead.Width()
	tail := words([]Row{shortly(ToHelp), ToLeave.Row(nil)}, room)
	line := words(table, room-tail.Width())
	withWords := words([]Row{shortly(ToHelp), shortly(ToWords), ToLeave.Row(nil)}, room)
	first := min(len(line), spansOfARow*mostUsed)
	if fewer := words(table, room-withWords.Width()); len(fewer) >= first && slices.Equal(fewer[:first], line[:first]) {
		line, tail = fewer, withWords
	}
	return append(append(lead, line...), tail...)
}

// mostUsed is how many keys of a screen come before the one for the words, and
// spansOfARow how many spans of a line show one.
const mostUsed, spansOfARow = 4, 3

// shortly is the row of a deed that shows the first of its keys alone.
func shortly(d Deed) Row { return Row{Binding: On(d.Keys[0], d.Word)} }

// Shows says whether the key line has room for every row that has a word.
func (x *Session) Shows(lead paper.Line, table []Row) bool {
	need := lead.Width() + words([]Row{shortly(ToHelp), ToLeave.Row(nil)}, x.Width).Width()
	for _, row := range table {
		need += rowWords(row).Width()
	}
	return need <= x.Width
}

// Help shows every key of a screen.
func (x *Session) Help(title string, tables ...[]Row) Msgs {
	return Msgs{Read{NewPage(x, "Keys", title, func(width int) []paper.Line {
		lines := []paper.Line{nil}
		for _, table := range tables {
			for _, row := range table {
				if row.Says != "" {
					lines = append(lines, Indent(2, Under(fmt.Sprintf("%-9s", row.Help().Key), paper.Accent, paper.Plain, row.Says, width-4))...)
				}
			}
			lines = append(lines, nil)
		}
		return lines
	})}}
}
