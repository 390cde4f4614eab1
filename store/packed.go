package store

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"

	"github.com/klauspost/compress/zstd"
)

// widestPacking is the most memory, in bytes, that unpacking a journal may ask for.
const widestPacking = 32 << 20

var (
	zstdBegins = []byte{0x28, 0xb5, 0x2f, 0xfd} // RFC 8878, 3.1.1
	gzipBegins = []byte{0x1f, 0x8b}             // RFC 1952, 2.3.1
)

// Unpacked gives the text of a journal that may be packed with zstd or gzip, told by its
// first bytes. The error is that of a packing that does not begin as one does; what is
// broken further on is met while reading.
func Unpacked(r io.Reader) (io.Reader, error) {
	in := bufio.NewReaderSize(r, 1<<16)
	first, _ := in.Peek(len(zstdBegins)) // what cannot be read is met again by the reader
	switch {
	case bytes.HasPrefix(first, zstdBegins):
		z, err := zstd.NewReader(in, zstd.WithDecoderConcurrency(1), zstd.WithDecoderMaxWindow(widestPacking))
		if err != nil {
			return nil, brokenPacking(err)
		}
		return unpacking{z}, nil
	case bytes.HasPrefix(first, gzipBegins):
		z, err := gzip.NewReader(in)
		if err != nil {
			return nil, brokenPacking(err)
		}
		return unpacking{z}, nil
	}
	return in, nil
}

// unpacking reads what is unpacked, and tells in words where the packing does not hold.
type unpacking struct{ from io.Reader }

func (u unpacking) Read(p []byte) (int, error) {
	n, err := u.from.Read(p)
	if err != nil && !errors.Is(err, io.EOF) {
		err = brokenPacking(err)
	}
	return n, err
}

func brokenPacking(err error) error {
	return fmt.Errorf("its packing is broken or cut short (%w)", err)
}
