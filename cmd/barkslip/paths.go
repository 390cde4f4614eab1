package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/adrg/xdg"

	"barkslip/store"
)

// bookOption says which book a command works on.
var bookOption = option{name: "book", value: "FILE", says: "the book; without it the one in your data folder"}

// bookPath is the book's file as given, or the one in the user's data folder.
func bookPath(g *given) (string, error) {
	if path := g.text("book", "the file of a book"); path != "" || g.err != nil {
		return path, g.err
	}
	return filepath.Join(dataFolder(), "book.bark"), nil
}

func dataFolder() string { return filepath.Join(xdg.DataHome, "barkslip") }

// placeForBook is bookPath with the user's data folder made if need be.
func placeForBook(g *given) (string, error) {
	path, err := bookPath(g)
	if err != nil || g.has("book") {
		return path, err
	}
	if err := os.MkdirAll(dataFolder(), 0o700); err != nil {
		return "", fmt.Errorf("the folder %s cannot be made: %s", dataFolder(), cause(err))
	}
	return path, nil
}

// openBook opens the book of a command, for reading alone or for writing.
func (a *app) openBook(g *given, readOnly bool) (*store.Book, error) {
	path, err := bookPath(g)
	if err != nil {
		return nil, err
	}
	if !readOnly {
		return store.Open(path, store.Options{})
	}
	return a.openToRead(path)
}

// openQuietly opens the book of a command for reading, without a word of what it lost.
func openQuietly(g *given) (*store.Book, error) {
	path, err := bookPath(g)
	if err != nil {
		return nil, err
	}
	return store.Open(path, store.Options{ReadOnly: true})
}

// openToRead opens a book for reading alone. That it may have lost its last change is
// said.
func (a *app) openToRead(path string) (*store.Book, error) {
	book, err := store.Open(path, store.Options{ReadOnly: true})
	if err == nil && book.Halved() {
		a.complain(store.HalvedWords(path) + "; barkslip check tells more")
	}
	return book, err
}

// openOrMakeBook opens the book for writing, or makes it if there is none.
func openOrMakeBook(g *given, o store.Options) (*store.Book, error) {
	path, err := placeForBook(g)
	if err != nil {
		return nil, err
	}
	return store.OpenOrCreate(path, o)
}

// localZone is the time zone this computer is set to, "" where it does not say.
func localZone() string {
	name := strings.TrimPrefix(os.Getenv("TZ"), ":")
	if name == "" {
		target, err := filepath.EvalSymlinks("/etc/localtime")
		if err != nil {
			return ""
		}
		_, name, _ = strings.Cut(filepath.ToSlash(target), "/zoneinfo/")
	}
	if _, err := parseZone(name); err != nil {
		return ""
	}
	return name
}
