package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"barkslip/store"
)

// source is one file to join.
type source struct {
	name   string // in front of complaints, where there are several files
	events store.Entries
	from   io.Closer
}

// openSources opens all files before anything is joined. Of a book too damaged to be
// opened what holds is taken; damaged says what is wrong with it and what is missing.
func openSources(files []string) (sources []source, damaged []string, err error) {
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
				sources = append(sources, source{name: name, events: store.Packing(saved.All()), from: nothing{}})
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
func openSource(file string) (source, error) {
	book, err := store.Open(file, store.Options{ReadOnly: true})
	if err == nil {
		return source{events: book.Entries(), from: book}, nil
	}
	if !errors.Is(err, store.ErrNotABook) && !errors.Is(err, store.ErrMissing) {
		return source{}, err
	}
	text, err := openFile("FILE", file)
	if err != nil {
		return source{}, err
	}
	lines, err := store.Unpacked(text)
	if err != nil {
		return source{}, errors.Join(fmt.Errorf("the journal %s cannot be read: %w", file, err), text.Close())
	}
	return source{events: store.Lines(lines), from: text}, nil
}

// openFile opens a file that an option or argument names.
func openFile(option, name string) (*os.File, error) {
	file, err := os.Open(name)
	if err == nil {
		var info os.FileInfo
		if info, err = file.Stat(); err == nil && !info.IsDir() {
			return file, nil
		}
		_ = file.Close()
		if err == nil {
			err = errors.New("it is a folder")
		}
	}
	return nil, mistaken(option, name, "a file that can be read ("+cause(err)+")")
}

func closeAll(sources []source) {
	for _, s := range sources {
		_ = s.from.Close()
	}
}
