package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// On a full disk a sheet is refused and nothing of it stays; with room it is
// written whole, and never over another.
func TestWriteNewLeavesNoHalfFile(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mount("small", dir, "tmpfs", 0, "size=64k"); err != nil {
		t.Skip("this user may not mount a disk: ", err)
	}
	defer func() { _ = syscall.Unmount(dir, syscall.MNT_DETACH) }()
	path := filepath.Join(dir, "day.pdf")
	if err := writeNew(path, bytes.Repeat([]byte("x"), 1<<20)); !errors.Is(err, syscall.ENOSPC) {
		t.Error("on a full disk:", err)
	}
	if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
		t.Error("half a file stays:", err)
	}
	if _, err := saveText(path, string(bytes.Repeat([]byte("x"), 1<<20))); err == nil || err.Error() != path+" cannot be written: no space left on device" {
		t.Error("said:", err)
	}
	if err := writeNew(path, []byte("whole")); err != nil {
		t.Fatal(err)
	}
	if err := writeNew(path, []byte("other")); !errors.Is(err, fs.ErrExist) {
		t.Error("over another:", err)
	}
	if got, _ := os.ReadFile(path); string(got) != "whole" {
		t.Errorf("it holds %q", got)
	}
}
