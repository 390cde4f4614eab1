package part

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/paper"
)

// List picks one of some items: by its key, or with the arrows and Enter.
type List struct {
	Still
	x     *Session
	title string
	why   string
	items []Item
	at    int
	keys  string // of the first items
	stays bool   // it is still there when one was picked
}

// Item is one thing to pick.
type Item struct {
	Word    string
	Meaning string
	Take    func() Msgs
}

// itemKeys are the keys of the first items; digits first, and no letter that does a
// deed over a list. A list that is a screen leaves the letters to its commands.
const itemKeys = "123456789abdefgmnoprtvxyz"

// ItemColumn is where the meanings of the items stand.
const ItemColumn = 35

// NewList is a list with its cursor on the first item.
func NewList(x *Session, title, why string, items []Item) *List {
	return &List{x: x, title: title, why: why, items: items, keys: itemKeys}
}

// Picks is the message of a list.
func (x *Session) Picks(title, why string, items []Item) Msgs {
	return Msgs{PickList{NewList(x, title, why, items)}}
}

// Unpicked has no item picked at first, so that Enter takes none unseen.
func (l *List) Unpicked() *List {
	l.at = -1
	return l
}

// AsScreen has the list be there still when one of its items was picked, by a
// digit or with the arrows.
func (l *List) AsScreen() *List {
	l.keys, l.stays = itemKeys[:9], true
	return l
}

// On puts the cursor on an item, or the last there is.
func (l *List) On(at int) *List {
	l.at = max(0, min(at, len(l.items)-1))
	return l
}

// At is the place of the cursor among the items, -1 for none.
func (l *List) At() int { return l.at }

// Items are what can be picked.
func (l *List) Items() []Item { return l.items }

// KeyOf is the key that picks an item, "" if it has none.
func (l *List) KeyOf(i int) string {
	if i < len(l.keys) {
		return l.keys[i : i+1]
	}
	return ""
}

// Key moves, picks or leaves.
func (l *List) Key(k tea.KeyMsg) Msgs {
	for i := range l.items {
		if l.KeyOf(i) == small(k).String() {
			return l.take(i)
		}
	}
	return Press(append(l.table(), l.x.Leaving(l.help)...), k, Useless)
}

// table is the keys of a list beside those of its items.
func (l *List) table() []Row {
	step := func(by int) Msgs {
		if len(l.items) > 0 {
			l.at = max(0, min(l.at+by, len(l.items)-1))
		}
		return nil
	}
	return append([]Row{
		ToOpen.Row(func() Msgs { return l.take(l.at) }).Named("take").Told("Take the one under the cursor."),
		ToBack.Row(Does(Back{})).Told("Back; nothing is picked."),
	}, Moves("Move the cursor.", step)...)
}

func (l *List) help() Msgs {
	picks := []Row{{Binding: On("1-9 a-z", ""), Says: "Pick the line that begins with it."}}
	return l.x.Help("a list", picks, l.table(), l.x.Leaving(nil))
}

func (l *List) take(i int) Msgs {
	if i < 0 || i >= len(l.items) {
		return Msgs{NoUse{"Nothing is picked yet: move to a line, or press the key before it."}}
	}
	msgs := l.items[i].Take()
	if l.stays {
		return msgs
	}
	return append(Msgs{Back{}}, msgs...)
}

// Frame shows as many items as there is room for. Meanings go on below where all of
// them have room, else that of the item under the cursor alone.
func (l *List) Frame() Frame {
	body := []paper.Line{nil, paper.Text(paper.Strong, "  "+l.title)}
	if l.why != "" {
		body = append(body, Indent(2, Wrapped(paper.Plain, l.why, l.x.Width-4))...)
	}
	body = append(body, nil)
	room := max(l.x.BodyHeight()-len(body), 1)
	frame := Frame{Title: "Barkslip", Keys: l.x.KeyLine(paper.Text(paper.Faint, " the key before a line picks it "), l.table())}
	if all := l.whole(room); all != nil {
		frame.Body = append(body, all...)
		return frame
	}
	if l.at < len(l.items) {
		room = max(room+1-len(l.row(l.at)), 1)
	}
	from := max(0, min(l.at-room/2, len(l.items)-room))
	if l.at == from+room-1 && from+room < len(l.items) {
		from++ // the last line says how many more there are
	}
	for i := from; i < min(len(l.items), from+room); i++ {
		if row := l.row(i); i == l.at || len(row) == 1 {
			body = append(body, row...)
		} else {
			body = append(body, l.begun(i).Add(paper.Faint, l.items[i].Meaning).Cut(l.x.Width-1))
		}
	}
	if below := len(l.items) - from - room; below > 0 {
		body[len(body)-1] = paper.Text(paper.Faint, fmt.Sprintf("   and %d more below", below+1))
	}
	frame.Body = body
	return frame
}

// whole is all items with all of their meanings, nil where they have no room.
func (l *List) whole(room int) (all []paper.Line) {
	if len(l.items) > room {
		return nil
	}
	for i := range l.items {
		if all = append(all, l.row(i)...); len(all) > room {
			return nil
		}
	}
	return all
}

// begun is the line of an item up to its meaning.
func (l *List) begun(i int) paper.Line {
	mark, ink := "   ", paper.Plain
	if i == l.at {
		mark, ink = " > ", paper.Strong
	}
	line := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: fmt.Sprintf("%-3s", l.KeyOf(i)), Ink: paper.Accent}, {Text: l.items[i].Word, Ink: ink}}
	return line.Pad(ItemColumn-1).Add(paper.Faint, " ")
}

// row is the lines of an item.
func (l *List) row(i int) []paper.Line {
	line := l.begun(i)
	words := paper.Wrap(l.items[i].Meaning, max(l.x.Width-1-line.Width(), 12))
	if len(words) == 0 {
		return []paper.Line{line}
	}
	rows := []paper.Line{line.Add(paper.Faint, words[0])}
	for _, more := range words[1:] {
		rows = append(rows, paper.Line(nil).Pad(ItemColumn).Add(paper.Faint, more))
	}
	return rows
}
