package ui

import (
	"fmt"

	"barkslip/ui/paper"
)

// listScreen picks one of a list: by its key, or with the arrows and Enter.
type listScreen struct {
	r     *root
	title string
	why   string
	items []listItem
	at    int
}

type listItem struct {
	word    string
	meaning string
	take    func() error
}

// listKeys are the keys of the first items; digits first.
const listKeys = "123456789abcdefgimnoprstvwxyz"

func (r *root) pick(title, why string, items []listItem) {
	r.list = &listScreen{r: r, title: title, why: why, items: items}
}

func (l *listScreen) key(key string) {
	switch key {
	case "esc":
		l.r.list = nil
		return
	case "q":
		l.r.quit = true
		return
	case "up", "k":
		l.at = max(l.at-1, 0)
		return
	case "down", "j":
		l.at = min(l.at+1, len(l.items)-1)
		return
	case "enter":
		l.take(l.at)
		return
	}
	for i := range l.items {
		if i < len(listKeys) && key == string(listKeys[i]) {
			l.take(i)
			return
		}
	}
}

func (l *listScreen) take(i int) {
	if i < 0 || i >= len(l.items) {
		return
	}
	l.r.list = nil
	if err := l.items[i].take(); err != nil {
		l.r.x.fail(err)
	}
}

func (l *listScreen) view() string {
	x := l.r.x
	body := []paper.Line{nil, paper.Text(paper.Strong, "  "+l.title)}
	if l.why != "" {
		for _, w := range wrapped(paper.Plain, l.why, x.width-4) {
			body = append(body, append(paper.Text(paper.Plain, "  "), w...))
		}
	}
	body = append(body, nil)
	room := max(x.bodyHeight()-len(body), 1)
	from := max(0, min(l.at-room/2, len(l.items)-room))
	if l.at == from+room-1 && from+room < len(l.items) {
		from++ // the last line says how many more there are
	}
	for i := from; i < min(len(l.items), from+room); i++ {
		body = append(body, l.row(i))
	}
	if below := len(l.items) - from - room; below > 0 {
		body[len(body)-1] = paper.Text(paper.Faint, fmt.Sprintf("   and %d more below", below+1))
	}
	keys := paper.Text(paper.Faint, " a key picks   up down and Enter pick   Esc back   q leave")
	return x.draw(frame{title: "Barkslip", body: body, keys: keys})
}

func (l *listScreen) row(i int) paper.Line {
	key := " "
	if i < len(listKeys) {
		key = string(listKeys[i])
	}
	mark, ink := "   ", paper.Plain
	if i == l.at {
		mark, ink = " > ", paper.Strong
	}
	line := paper.Line{{Text: mark, Ink: paper.Accent}, {Text: key + "  ", Ink: paper.Accent}, {Text: l.items[i].word, Ink: ink}}
	return line.Pad(34).Add(paper.Faint, " "+l.items[i].meaning)
}
