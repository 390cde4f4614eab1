package main

import (
	"errors"
	"fmt"
	"io"
	"os"
)

// readSmall reads a plain file of at most so many bytes. What is none, as a pipe or a
// device that may never end, is not opened.
func readSmall(path string, most int64) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("it is no plain file")
	}
	f, err := os.Open(path)
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
