package bounded

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// endless never ends.
type endless struct {
	of string
	at int
}

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.of[e.at%len(e.of)]
		e.at++
	}
	return len(p), nil
}

func without(of string) io.Reader { return &endless{of: of} }

func TestLimits(t *testing.T) {
	long := strings.Repeat("a", LongestLine)
	for name, c := range map[string]struct {
		from io.Reader
		line int // 0: it is read to its end
	}{
		"nothing":                 {strings.NewReader(""), 0},
		"the longest line":        {strings.NewReader("a\n" + long[:LongestLine-1] + "\nb"), 0},
		"byte by byte":            {iotest.OneByteReader(strings.NewReader("a\n" + long + "\nb")), 0},
		"one byte more":           {strings.NewReader("a\r\nb\n" + long + "b\n"), 3},
		"a device of noughts":     {without("\x00"), 1},
		"lines without an end":    {without("123456789\n"), LongestText/10 + 1},
		"returns without an end":  {without("123456789\r"), 1},
		"the longest text":        {io.LimitReader(without("abc\n"), LongestText), 0},
		"one byte more of a text": {io.LimitReader(without("abc\n"), LongestText+1), LongestText/4 + 1},
	} {
		_, err := io.Copy(io.Discard, Text(c.from))
		var over *Error
		if errors.As(err, &over) != (c.line > 0) || over != nil && over.Line != c.line || c.line == 0 && err != nil {
			t.Errorf("%s: %v, want it in line %d", name, err, c.line)
		}
	}
}
