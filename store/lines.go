package store

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"iter"
	"math"
	"slices"

	"barkslip/core/record"
	"barkslip/store/ahead"
)

// WriteLines writes the journal as JSON Lines in fold order. Damaged records
// are left out and told of in the error.
func WriteLines(w io.Writer, of Journal) error {
	out := bufio.NewWriterSize(w, 1<<16)
	err := of.Journal(func(e record.Event) error {
		_, err := out.Write(append(record.Line(e), '\n'))
		return err
	})
	return errors.Join(err, out.Flush())
}

// ReadLines reads a journal of JSON Lines, in order. A line that does not hold yields a
// *LineError and the rest goes on; any other error ends it. Lines are parsed on all cores.
func ReadLines(r io.Reader) iter.Seq2[record.Event, error] {
	return func(yield func(record.Event, error) bool) {
		for l := range ahead.Each(context.Background(), sheets(r), sheet.parse) {
			if !yield(l.event, l.err) {
				return
			}
		}
	}
}

// Lines reads a journal of JSON Lines as ReadLines does, for joining it into a book, up to
// the end of ctx.
func Lines(ctx context.Context, r io.Reader) Entries {
	return func(yield func(Entry, error) bool) {
		for l := range ahead.Each(ctx, sheets(r), sheet.pack) {
			if !yield(l.entry, l.err) {
				return
			}
		}
	}
}

// parsed is what came of a line.
type parsed struct {
	event record.Event
	line  int
	err   error
}

// packedLine is what came of a line that is to be joined.
type packedLine struct {
	entry Entry
	err   error
}

// pack parses the lines and packs their events.
func (s sheet) pack() []packedLine {
	lines := s.parse()
	out := make([]packedLine, len(lines))
	var room shelf
	for i, l := range lines {
		if out[i].err = l.err; l.err == nil {
			out[i].entry = entryOf(l.event, room.pack(l.event))
			out[i].entry.line = int32(min(l.line, math.MaxInt32))
		}
	}
	return out
}

// sheets reads lines, sheet by sheet.
func sheets(r io.Reader) iter.Seq[sheet] {
	return func(yield func(sheet) bool) {
		in := bufio.NewReaderSize(r, 1<<16)
		for n, last := 1, false; !last; {
			var s sheet
			s, last = readSheet(in, n)
			n += len(s.lines)
			if !yield(s) {
				return
			}
		}
	}
}

// sheet is some lines that follow one another.
type sheet struct {
	lines []line
	first int   // the number of the first
	err   error // why nothing follows, but for the end
}

type line struct {
	text []byte
	long bool
}

// sheetBytes is about how much text a sheet has.
const sheetBytes = 256 << 10

func readSheet(in *bufio.Reader, first int) (s sheet, last bool) {
	s.first = first
	s.lines = make([]line, 0, sheetBytes/300)
	room := make([]byte, 0, sheetBytes+1024)
	for size := 0; size < sheetBytes; {
		text, long, err := readLine(in, room[len(room):])
		if len(text) <= cap(room)-len(room) { // it went into the room
			room = room[:len(room)+len(text)]
		}
		s.lines = append(s.lines, line{slices.Clip(text), long})
		if size += len(text) + 64; err != nil {
			if !errors.Is(err, io.EOF) {
				s.err = err
			}
			return s, true
		}
	}
	return s, false
}

func (s sheet) parse() []parsed {
	out, reader := make([]parsed, 0, len(s.lines)), record.NewLineReader()
	for i, l := range s.lines {
		n, text := s.first+i, l.text
		if n == 1 {
			text = bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))
		}
		if text = bytes.TrimSpace(text); len(text) > 0 || l.long {
			e, err := parse(reader, text, l.long, n)
			out = append(out, parsed{e, n, err})
		}
	}
	if s.err != nil {
		out = append(out, parsed{err: fmt.Errorf("the journal cannot be read past line %d: %w", s.first+len(s.lines)-1, s.err)})
	}
	return out
}

func parse(reader record.LineReader, text []byte, long bool, n int) (record.Event, error) {
	if long {
		return record.Event{}, &LineError{n, fmt.Errorf("it is longer than %d bytes", record.LongestLine)}
	}
	e, err := reader.Parse(text)
	if err != nil {
		return record.Event{}, &LineError{n, err}
	}
	return e, nil
}

// endlessLine is how many bytes of a line are passed over before its end is given up, as
// of a device that gives noughts for ever.
const endlessLine = 64 << 20

// readLine reads up to the next newline, into room where that is enough; of a line too long
// the rest is passed over.
func readLine(in *bufio.Reader, room []byte) (line []byte, long bool, err error) {
	line = room
	for size := 0; ; {
		part, err := in.ReadSlice('\n')
		if size += len(part); size > endlessLine {
			return nil, true, fmt.Errorf("it has no end within %d bytes", endlessLine)
		}
		if long = long || len(line)+len(part) > record.LongestLine+1; !long {
			line = append(line, part...)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return line, long, err
		}
	}
}
