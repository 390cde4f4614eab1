package store

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"

	berrors "go.etcd.io/bbolt/errors"
)

// The kinds of things that can be wrong with a book; an *Error wraps one.
var (
	ErrLocked   = errors.New("the book is open elsewhere")
	ErrNotABook = errors.New("not a book")
	ErrCutShort = errors.New("the book is cut short")
	ErrNewer    = errors.New("the book is of a newer version")
	ErrFull     = errors.New("the disk is full")
	ErrReadOnly = errors.New("the book cannot be written")
	ErrDamaged  = errors.New("the book is damaged")
	ErrHalved   = errors.New("the last change of the book may be lost")
	ErrExists   = errors.New("a file is there already")
	ErrMissing  = errors.New("there is no book")
	ErrNoAccess = errors.New("the book may not be read")
	ErrMoved    = errors.New("the book was moved or replaced")
	ErrClosed   = errors.New("the book is closed")
	ErrDisk     = errors.New("the disk failed")
	ErrUnsure   = errors.New("it is not sure that the answer was kept")
	ErrProgram  = errors.New("the program failed")
	ErrRefused  = errors.New("the event does not hold")
)

// Error is one sentence a grafter can act on. errors.Is finds its kind and its
// cause.
type Error struct {
	Kind  error
	Text  string
	Cause error // nil where there is none
}

func (e *Error) Error() string { return e.Text }

// Unwrap gives the kind and the cause.
func (e *Error) Unwrap() []error {
	if e.Cause == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Cause}
}

func problem(kind, cause error, format string, args ...any) *Error {
	return &Error{kind, fmt.Sprintf(format, args...), cause}
}

// LineError is a line of a journal that could not be read.
type LineError struct {
	Line int // from 1
	Err  error
}

func (e *LineError) Error() string { return fmt.Sprintf("line %d: %v", e.Line, e.Err) }

// Unwrap gives what is wrong with the line.
func (e *LineError) Unwrap() error { return e.Err }

// explain turns what the system or the file's pages said into a sentence about
// the book at path.
func explain(path string, err error) error {
	var known *Error
	var fault *pageFault
	switch {
	case err == nil || errors.As(err, &known):
		return err
	case errors.As(err, &fault):
		return problem(ErrDamaged, err, "the book %s is damaged: a part of it cannot be read; bring it back from a copy", path)
	case errors.Is(err, berrors.ErrTimeout):
		return problem(ErrLocked, err, "the book %s is already open elsewhere; close it there first", path)
	case errors.Is(err, berrors.ErrDatabaseNotOpen):
		return problem(ErrClosed, err, "the book %s is closed", path)
	case isFull(err):
		return problem(ErrFull, err, "the disk with %s is full; make room on it and try again", path)
	case errors.Is(err, syscall.EFBIG) || strings.Contains(err.Error(), syscall.EFBIG.Error()):
		return problem(ErrFull, err, "the disk takes no larger file than %s is now; move the book to another disk", path)
	case errors.Is(err, syscall.ELOOP):
		return problem(ErrMissing, err, "%s is a link that leads back to itself; no file stands behind it", path)
	case errors.Is(err, syscall.EROFS):
		return problem(ErrReadOnly, err, "%s cannot be written: the disk is read-only", path)
	case errors.Is(err, fs.ErrPermission):
		return problem(ErrReadOnly, err, "%s cannot be written: this user has no permission to", path)
	case errors.Is(err, fs.ErrNotExist):
		return problem(ErrMissing, err, "there is no book at %s", path)
	case errors.Is(err, berrors.ErrInvalid), errors.Is(err, berrors.ErrChecksum), errors.Is(err, berrors.ErrVersionMismatch):
		return problem(ErrDamaged, err, "the book %s is damaged: its first pages do not hold; bring it back from a copy", path)
	}
	return problem(ErrDisk, err, "the disk with %s failed: %v", path, err)
}

// isFull also looks at the text, since the cause is not always wrapped.
func isFull(err error) bool {
	for _, full := range []syscall.Errno{syscall.ENOSPC, syscall.EDQUOT} {
		if errors.Is(err, full) || strings.Contains(err.Error(), full.Error()) {
			return true
		}
	}
	return false
}
