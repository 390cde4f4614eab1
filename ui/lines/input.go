package lines

import (
	"bufio"
	"errors"
	"io"
	"strings"
	"time"

	"barkslip/core/record"
)

// line is one line of the input.
type line struct {
	text  string
	whole bool // its end came
	long  bool // it is longer than mostBytes
	ended bool // there are no more; text is what came of a line without its end
}

const (
	mostBytes = 4096
	ahead     = 64 // lines read before they are asked for
)

// Within waiting a line comes that stood there when it was asked for: it was
// written together with the one before. What comes behind a wrong line within
// quiet of one another was pasted with it.
const (
	waiting = 10 * time.Millisecond
	quiet   = 50 * time.Millisecond
)

// mostDropped is how many lines behind a wrong one are passed over; an input that
// never ends is left then.
const mostDropped = 100_000

// source is the input, read ahead.
type source struct {
	lines chan line
	done  chan struct{}
	ended bool
	at    int // place of the line among those that came together, from 1
}

func newSource(in io.Reader) *source {
	s := &source{lines: make(chan line, ahead), done: make(chan struct{})}
	go s.read(bufio.NewReaderSize(in, mostBytes))
	return s
}

// close has reading end; a read that waits for input ends with it.
func (s *source) close() { close(s.done) }

func (s *source) read(in *bufio.Reader) {
	for {
		l := line{}
		part, err := in.ReadSlice('\n')
		l.text = string(part)
		for errors.Is(err, bufio.ErrBufferFull) {
			l.long = true
			_, err = in.ReadSlice('\n')
		}
		l.ended, l.whole = err != nil, err == nil
		l.text = strings.TrimSpace(record.Clean(strings.TrimRight(l.text, "\r\n")))
		select {
		case s.lines <- l:
		case <-s.done:
			return
		}
		if l.ended {
			return
		}
	}
}

// next waits for a line.
func (s *source) next() line {
	select {
	case l := <-s.lines:
		s.at++
		return s.came(l)
	case <-time.After(waiting):
		s.at = 1
		return s.came(<-s.lines)
	}
}

func (s *source) came(l line) line {
	s.ended = l.ended
	return l
}

// drop passes over what was pasted with a wrong line, and says how many lines.
func (s *source) drop() (n int) {
	for !s.ended && n < mostDropped {
		select {
		case l := <-s.lines:
			s.came(l)
			if l.whole || l.text != "" {
				n++
			}
		case <-time.After(quiet):
			return n
		}
	}
	return n
}
