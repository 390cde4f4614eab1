package ui

import "barkslip/ui/paper"

// binding is one row of a screen's key table. The table feeds the keys, the
// key line and the help.
type binding struct {
	keys []string // as they arrive; the first is the one shown
	show string   // how it is shown, if not as the key
	word string   // in the key line; "" keeps it to the help
	help string   // one sentence
	do   func()
}

func (b binding) name() string {
	if b.show != "" {
		return b.show
	}
	return b.keys[0]
}

// press runs the binding of a key, if the table has one.
func press(table []binding, key string) bool {
	for _, b := range table {
		for _, k := range b.keys {
			if k == key && b.do != nil {
				b.do()
				return true
			}
		}
	}
	return false
}

// keyLine is the words of the table that fit the width.
func keyLine(table []binding, width int) paper.Line {
	line := paper.Line{}
	for _, b := range table {
		if b.word == "" {
			continue
		}
		if line.Width()+paper.Width(b.name())+paper.Width(b.word)+4 > width {
			break
		}
		line = line.Add(paper.Plain, " ").Add(paper.Accent, b.name()).Add(paper.Faint, " "+b.word+" ")
	}
	return line
}

// keysOf is the key line of a screen: its own keys as far as there is room, and
// always the keys for help and for leaving.
func (r *root) keysOf(table []binding) paper.Line {
	tail := keyLine(r.common(nil), r.x.width)
	return append(keyLine(table, r.x.width-tail.Width()), tail...)
}
