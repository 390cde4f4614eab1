package main

import (
	"errors"
	"os"
	"path/filepath"
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

// writeOver writes a file by way of a second one beside it, so that a full disk or a kill
// leaves what was there. Its folder is made where there is none.
func writeOver(path string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	file, err := os.OpenFile(path+".new", os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	if err == nil {
		err = file.Sync()
	}
	err = errors.Join(err, file.Close())
	if err == nil {
		err = os.Rename(file.Name(), path)
	}
	if err != nil {
		err = errors.Join(err, os.Remove(file.Name()))
	}
	return err
}
