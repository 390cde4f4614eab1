package ui

import (
	"fmt"
	"io"
	"os"
	"strings"
)

// window writes frames to a terminal as they come: the lines that changed and no others, at
// once. Nothing runs while nothing changes, so that the program costs no battery where it
// stands open all day.
type window struct {
	to   io.Writer
	last []string // as it stands there; nil where that is not known
}

// Sequences of ECMA-48 and of DEC and xterm private modes: the alternate screen, the
// cursor, and text pasted told from text typed.
const (
	openWindow  = "\x1b[?1049h\x1b[2J\x1b[?25l\x1b[?2004h"
	closeWindow = "\x1b[?2004l\x1b[?25h\x1b[?1049l"
	emptyWindow = "\x1b[2J"
)

func (w *window) open() error  { return w.write(openWindow) }
func (w *window) close() error { return w.write(closeWindow) }

// resized has the next frame be written whole.
func (w *window) resized() { w.last = nil }

// say writes a line into the empty window, before the first frame.
func (w *window) say(text string) error {
	if text == "" {
		return nil
	}
	return w.write("\x1b[1;2H" + text)
}

// draw writes a frame, whose lines are as wide as the window.
func (w *window) draw(frame string) error {
	lines := strings.Split(frame, "\n")
	var out strings.Builder
	if w.last == nil || len(w.last) != len(lines) {
		out.WriteString(emptyWindow)
		w.last = make([]string, len(lines))
	}
	for y, line := range lines {
		if line != w.last[y] {
			fmt.Fprintf(&out, "\x1b[%d;1H%s", y+1, line)
		}
	}
	w.last = lines
	return w.write(out.String())
}

func (w *window) write(text string) error {
	if text == "" {
		return nil
	}
	_, err := io.WriteString(w.to, text)
	return err
}

// silent is the terminal without its writing, which the window does.
type silent struct{ *os.File }

func (silent) Write(p []byte) (int, error)       { return len(p), nil }
func (silent) WriteString(s string) (int, error) { return len(s), nil }
