package paper

import (
	"strings"
	"unicode/utf8"

	"github.com/mattn/go-runewidth"
)

// Span is a stretch of text in one ink.
type Span struct {
	Text string
	Ink  Ink
}

// Line is spans side by side.
type Line []Span

// Text is a line of one span.
func Text(ink Ink, s string) Line { return Line{{s, ink}} }

// Width is the columns a text takes.
func Width(s string) int {
	for i := 0; i < len(s); i++ {
		if s[i] >= utf8.RuneSelf {
			return runewidth.StringWidth(s)
		}
	}
	return len(s)
}

// Width is the columns of the line.
func (l Line) Width() int {
	w := 0
	for _, s := range l {
		w += Width(s.Text)
	}
	return w
}

// Words is the line as text alone.
func (l Line) Words() string {
	var b strings.Builder
	for _, s := range l {
		b.WriteString(s.Text)
	}
	return strings.TrimRight(b.String(), " ")
}

// Add appends a span.
func (l Line) Add(ink Ink, s string) Line { return append(l, Span{s, ink}) }

// Pad fills the line with spaces up to w columns.
func (l Line) Pad(w int) Line {
	if have := l.Width(); have < w {
		return append(l, Span{strings.Repeat(" ", w-have), Plain})
	}
	return l
}

// Cut shortens the line to w columns, ending in an ellipsis where text is lost.
func (l Line) Cut(w int) Line {
	if l.Width() <= w {
		return l
	}
	out, left := Line(nil), w
	for _, s := range l {
		sw := Width(s.Text)
		if sw < left || sw == left && left > 0 && out.Width()+sw < w {
			out = append(out, s)
			left -= sw
			continue
		}
		return append(out, Span{Shorten(s.Text+"   ", left), s.Ink})
	}
	return out
}

// Shorten cuts a text to w columns, with an ellipsis where something is lost.
func Shorten(s string, w int) string {
	switch {
	case w <= 0:
		return ""
	case Width(s) <= w:
		return s
	}
	return runewidth.Truncate(s, w, "…")
}

// Beside puts another line at column w of this one.
func (l Line) Beside(w int, other Line) Line {
	return append(append(Line(nil), l.Cut(w).Pad(w)...), other...)
}

// Wrap breaks a text into lines of at most w columns, between words where it
// can.
func Wrap(s string, w int) []string {
	if w < 1 {
		return nil
	}
	var out []string
	line := ""
	for _, word := range strings.Fields(s) {
		for { // a word longer than the line is broken
			begins := beginning(word, w)
			if Width(begins) <= w {
				break
			}
			if line != "" {
				out = append(out, line)
				line = ""
			}
			head := runewidth.Truncate(begins, w, "")
			if head == "" {
				break
			}
			out = append(out, head)
			word = word[len(head):]
		}
		switch {
		case line == "":
			line = word
		case Width(line)+1+Width(word) <= w:
			line += " " + word
		default:
			out = append(out, line)
			line = word
		}
	}
	if line != "" {
		out = append(out, line)
	}
	return out
}

// beginning is as much of a word as surely is wider than w columns, or all of it: a word may
// be as long as the longest note.
func beginning(word string, w int) string {
	for most := 2*w + 16; most < len(word); most *= 2 {
		for !utf8.RuneStart(word[most]) {
			most--
		}
		if begins := word[:most]; Width(begins) > w {
			return begins
		}
	}
	return word
}

// Paint makes the screen: exactly w columns and h lines.
func (t Theme) Paint(lines []Line, w, h int) string {
	var b strings.Builder
	b.Grow(w * h * 2)
	for y := range h {
		if y > 0 {
			b.WriteByte('\n')
		}
		var l Line
		if y < len(lines) {
			l = lines[y].Cut(w)
		}
		t.paintLine(&b, l.Pad(w))
	}
	return b.String()
}

func (t Theme) paintLine(b *strings.Builder, l Line) {
	for _, s := range l {
		if s.Text == "" {
			continue
		}
		ink := t.ink[s.Ink]
		if t.ASCII {
			s.Text = strings.ReplaceAll(s.Text, "…", "~")
			n := strings.Count(s.Text, "°")
			s.Text = strings.ReplaceAll(s.Text, "°", "") + strings.Repeat(" ", n)
		}
		b.WriteString(ink[0])
		b.WriteString(s.Text)
		b.WriteString(ink[1])
	}
}
