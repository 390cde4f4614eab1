package store

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"iter"

	"barkslip/core/record"
)

// longestLine is the most bytes a line of a journal may have.
const longestLine = 16 << 20

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

// ReadLines reads a journal of JSON Lines. A line that does not hold yields a
// *LineError and the rest goes on; any other error ends it.
func ReadLines(r io.Reader) iter.Seq2[record.Event, error] {
	return func(yield func(record.Event, error) bool) {
		in := bufio.NewReaderSize(r, 1<<16)
		for n := 1; ; n++ {
			line, long, err := readLine(in)
			if n == 1 {
				line = bytes.TrimPrefix(line, []byte("\xef\xbb\xbf"))
			}
			if line = bytes.TrimSpace(line); len(line) > 0 || long {
				if !yield(parse(line, long, n)) {
					return
				}
			}
			if err != nil {
				if !errors.Is(err, io.EOF) {
					yield(record.Event{}, fmt.Errorf("the journal cannot be read past line %d: %w", n, err))
				}
				return
			}
		}
	}
}

func parse(line []byte, long bool, n int) (record.Event, error) {
	if long {
		return record.Event{}, &LineError{n, fmt.Errorf("it is longer than %d bytes", longestLine)}
	}
	e, err := record.ParseLine(line)
	if err != nil {
		return record.Event{}, &LineError{n, err}
	}
	return e, nil
}

// readLine reads up to the next newline; of a line too long the rest is passed
// over.
func readLine(in *bufio.Reader) (line []byte, long bool, err error) {
	for {
		part, err := in.ReadSlice('\n')
		if long = long || len(line)+len(part) > longestLine; !long {
			line = append(line, part...)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return line, long, err
		}
	}
}
