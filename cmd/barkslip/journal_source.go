package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"sync/atomic"
	"time"

	"github.com/mattn/go-isatty"

	"barkslip/store"
)

// source is one file to join.
type source struct {
	name    string // in front of complaints, where there are several files
	file    string
	events  func(ctx context.Context) store.Entries
	book    *store.Book // that it is, nil for a journal as text
	from    io.Closer
	read    atomic.Int64 // how much of it was read, in bytes or records
	of      int64        // and of how much; 0 where that is not known
	inBytes bool
	whole   atomic.Bool // it was read to its end
	began   time.Time   // when its turn came
}

// countedBytes counts what is read of a source.
type countedBytes struct {
	from io.Reader
	read *atomic.Int64
}

func (c countedBytes) Read(p []byte) (int, error) {
	n, err := c.from.Read(p)
	c.read.Add(int64(n))
	return n, err
}

// countedEntries counts the records of a source.
func countedEntries(of store.Entries, read *atomic.Int64) store.Entries {
	return func(yield func(store.Entry, error) bool) {
		for e, err := range of {
			read.Add(1)
			if !yield(e, err) {
				return
			}
		}
	}
}

// openSources opens all files before anything is joined. Of a book too damaged to be
// opened what holds is taken; damaged says what is wrong with it and what is missing.
func openSources(files []string) (sources []*source, damaged []string, err error) {
	for _, file := range files {
		name := ""
		if len(files) > 1 {
			name = file + ": "
		}
		s, err := openSource(file)
		var bad *badInput
		switch {
		case errors.As(err, &bad):
			return sources, damaged, err
		case isBroken(err):
			damaged = append(damaged, name+err.Error())
			if saved, failed := store.Salvage(file); failed == nil {
				for _, says := range saved.Say() {
					damaged = append(damaged, name+says)
				}
				sources = append(sources, &source{name: name, file: file, events: func(context.Context) store.Entries { return store.Packing(saved.All()) }, from: nothing{}})
			}
		case err != nil:
			damaged = append(damaged, name+err.Error())
		default:
			s.name = name
			sources = append(sources, s)
		}
	}
	return sources, damaged, nil
}

// nothing is what is to be closed of what was read whole.
type nothing struct{}

func (nothing) Close() error { return nil }

// openSource opens a book, or a journal as text.
func openSource(file string) (*source, error) {
	s := &source{file: file}
	book, err := store.Open(file, store.Options{ReadOnly: true})
	if err == nil && book.Halved() { // page by page more may be found
		return nil, errors.Join(lastLost(file), book.Close())
	}
	if err == nil {
		records, _ := book.Count()
		s.of, s.from, s.book = int64(records), book, book
		s.events = func(ctx context.Context) store.Entries { return countedEntries(book.Entries(ctx), &s.read) }
		return s, nil
	}
	if !errors.Is(err, store.ErrNotABook) && !errors.Is(err, store.ErrMissing) {
		return nil, err
	}
	text, err := openFile("FILE", file)
	if err != nil {
		return nil, err
	}
	if info, err := text.Stat(); err == nil && info.Mode().IsRegular() {
		s.of = info.Size()
	}
	lines, err := store.Unpacked(countedBytes{text, &s.read})
	if err != nil {
		return nil, errors.Join(fmt.Errorf("the journal %s cannot be read: %w", file, err), text.Close())
	}
	s.from, s.inBytes = text, true
	s.events = func(ctx context.Context) store.Entries { return store.Lines(ctx, lines) }
	return s, nil
}

// lastLost tells that a book's last change may be lost; it is broken then.
func lastLost(path string) error {
	return &store.Error{Kind: store.ErrDamaged, Text: store.HalvedWords(path)}
}

// openFile opens a file that an option or argument names.
func openFile(option, name string) (*os.File, error) {
	file, err := os.Open(name)
	if err == nil {
		var info os.FileInfo
		if info, err = file.Stat(); err == nil && !info.IsDir() && (info.Mode()&os.ModeDevice == 0 || isatty.IsTerminal(file.Fd())) {
			return file, nil
		}
		_ = file.Close()
		switch {
		case err != nil:
		case info.IsDir():
			err = errors.New("it is a folder")
		default:
			err = errors.New("it is a device, which may never end")
		}
	}
	return nil, mistaken(option, name, "a file that can be read ("+cause(err)+")")
}

func closeAll(sources []*source) {
	for _, s := range sources {
		_ = s.from.Close()
	}
}
