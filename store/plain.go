package store

import (
	"errors"
	"fmt"
	"io"
	"os"
)

// ErrNotPlain is a pipe, a device or a folder where a plain file is needed.
var ErrNotPlain = errors.New("it is no plain file")

// OpenPlain opens a plain file to be read. What is none, as a pipe or a device that may
// never end, is not opened.
func OpenPlain(path string) (*os.File, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, ErrNotPlain
	}
	return os.Open(path)
}

// ReadPlain reads a plain file of at most so many bytes.
func ReadPlain(path string, most int64) ([]byte, error) {
	f, err := OpenPlain(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, most+1))
	if err == nil && int64(len(text)) > most {
		err = fmt.Errorf("it is longer than %d bytes", most)
	}
	return text, err
}
