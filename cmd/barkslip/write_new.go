package main

import (
	"errors"
	"os"
)

// writeNew writes a file that is not there yet, whole or not at all: one that
// cannot be written to its end is taken away. No link is followed; a name that is
// taken is fs.ErrExist.
func writeNew(path string, data []byte) error {
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	if err == nil {
		err = file.Sync()
	}
	if err = errors.Join(err, file.Close()); err != nil {
		err = errors.Join(err, os.Remove(path))
	}
	return err
}
