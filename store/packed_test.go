package store

import (
	"bytes"
	"compress/gzip"
	"io"
	"strings"
	"testing"

	"github.com/klauspost/compress/zstd"

	"barkslip/core/record"
)

// A packed journal reads as the one it was made of; one that is cut gives what came
// before the cut and says so.
func TestPackedJournals(t *testing.T) {
	var plain bytes.Buffer
	for _, e := range numbered(5, life(stumpAt(1, 1, 1), 400)) {
		plain.Write(append(record.Line(e), '\n'))
	}
	zst := func(w io.Writer) io.WriteCloser {
		z, err := zstd.NewWriter(w)
		if err != nil {
			t.Fatal(err)
		}
		return z
	}
	for name, pack := range map[string]func(io.Writer) io.WriteCloser{
		"gz": func(w io.Writer) io.WriteCloser { return gzip.NewWriter(w) }, "zst": zst,
	} {
		var packed bytes.Buffer
		w := pack(&packed)
		if _, err := w.Write(plain.Bytes()); err != nil {
			t.Fatal(err)
		}
		if err := w.Close(); err != nil {
			t.Fatal(err)
		}
		r, err := Unpacked(bytes.NewReader(packed.Bytes()))
		if err != nil {
			t.Fatal(name, err)
		}
		if text, err := io.ReadAll(r); err != nil || !bytes.Equal(text, plain.Bytes()) {
			t.Errorf("%s: %d bytes of %d, %v", name, len(text), plain.Len(), err)
		}
		r, err = Unpacked(bytes.NewReader(packed.Bytes()[:packed.Len()-20]))
		if err != nil {
			t.Fatal(name, err)
		}
		var last error
		for _, err := range ReadLines(r) {
			last = err
		}
		if last == nil || !strings.Contains(last.Error(), "its packing is broken or cut short") {
			t.Errorf("%s cut: %v", name, last)
		}
		if r, err := Unpacked(bytes.NewReader(packed.Bytes()[:5])); err == nil {
			if _, err = io.ReadAll(r); err == nil {
				t.Errorf("%s of five bytes reads as whole", name)
			}
		}
	}
}
