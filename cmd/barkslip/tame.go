package main

import (
	"io"
	"strings"
	"unicode/utf8"

	"barkslip/core/record"
)

// tame writes text for people: what is no letter and would act on a terminal or turn the way
// text is read, as it may come in by the name of a file, a kind that is not known or an
// error, is left out.
type tame struct {
	to   io.Writer
	rest []byte // the beginning of a letter, of which the rest is still to come
}

func (t *tame) Write(p []byte) (int, error) {
	text := append(t.rest, p...)
	whole := len(text)
	for back := 1; back < utf8.UTFMax && back <= len(text); back++ {
		if at := len(text) - back; utf8.RuneStart(text[at]) {
			if !utf8.FullRune(text[at:]) {
				whole = at
			}
			break
		}
	}
	clean := tamed(string(text[:whole]))
	t.rest = append([]byte(nil), text[whole:]...)
	if _, err := io.WriteString(t.to, clean); err != nil {
		return 0, err
	}
	return len(p), nil
}

// tamed is a text of lines without what would act on a terminal.
func tamed(s string) string {
	lines := strings.Split(s, "\n")
	for i, line := range lines {
		cells := strings.Split(line, "\t")
		for k, cell := range cells {
			cells[k] = record.Clean(cell)
		}
		lines[i] = strings.Join(cells, "\t")
	}
	return strings.Join(lines, "\n")
}
