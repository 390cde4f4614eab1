// Package bounded keeps a text from outside within limits, so that no file, pipe or device
// can fill the memory. It imports nothing of the program.
package bounded

import (
	"fmt"
	"io"
)

// The limits of a text.
const (
	LongestLine = 64 << 10 // bytes
	LongestText = 64 << 20 // bytes
)

// Error says in which line, from 1, a text went beyond its limits.
type Error struct {
	Line int
	Says string
}

func (e *Error) Error() string { return fmt.Sprintf("line %d: %s", e.Line, e.Says) }

// Text reads from r up to its limits; beyond them it gives an *Error.
func Text(r io.Reader) io.Reader { return &text{from: r, line: 1} }

type text struct {
	from   io.Reader
	line   int
	length int // of the line so far
	whole  int
	err    error
}

func (t *text) Read(p []byte) (int, error) {
	if t.err != nil {
		return 0, t.err
	}
	n, err := t.from.Read(p)
	for i, c := range p[:n] {
		if t.length++; c == '\n' || c == '\r' {
			t.length = 0
		}
		if c == '\n' {
			t.line++
		}
		switch t.whole++; {
		case t.length > LongestLine:
			t.err = &Error{t.line, fmt.Sprintf("it is longer than %d bytes", LongestLine)}
		case t.whole > LongestText:
			t.err = &Error{t.line, fmt.Sprintf("the text is longer than %d MB; part it", LongestText>>20)}
		}
		if t.err != nil {
			return i, t.err
		}
	}
	return n, err
}
