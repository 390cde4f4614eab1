package store

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// Dated is a copy of a book that the program keeps beside it.
type Dated struct {
	Path string
	Day  time.Time // midnight UTC of the day it was made on
}

// datedName stands between the name of a book and the day of its copy.
const datedName = ".copy-"

// DatedCopies are the copies kept beside a book, the newest first.
func DatedCopies(path string) (out []Dated) {
	files, _ := os.ReadDir(filepath.Dir(path))
	for _, file := range files {
		text, ok := strings.CutPrefix(file.Name(), filepath.Base(path)+datedName)
		if day, err := time.Parse(time.DateOnly, text); ok && err == nil {
			out = append(out, Dated{path + datedName + text, day})
		}
	}
	slices.SortFunc(out, func(a, b Dated) int { return b.Day.Compare(a.Day) })
	return out
}

// KeepDated copies a book beside itself, unless it was copied on that day or not
// changed since, and takes away copies so that a handful is left, fewer the older they
// are. The copy is checked from end to end; of a damaged book none is made, and none of
// the older ones is taken away.
func KeepDated(path string, now time.Time, o Options) (made bool, err error) {
	tidy(path, now)
	info, err := os.Stat(path)
	if err != nil {
		return false, explain(path, err)
	}
	day := now.Format(time.DateOnly)
	copies := DatedCopies(path)
	if len(copies) > 0 {
		last, err := os.Stat(copies[0].Path)
		if err == nil && (copies[0].Day.Format(time.DateOnly) >= day || !info.ModTime().After(last.ModTime())) {
			return false, nil
		}
	}
	err = CopyFile(path, path+datedName+day, o)
	if errors.Is(err, ErrExists) {
		return false, nil // another program was quicker
	}
	if err != nil {
		return false, err
	}
	for _, c := range spare(DatedCopies(path)) {
		err = errors.Join(err, os.Remove(c.Path))
	}
	return true, err
}

// ages are the days to which a copy of each age is kept besides the two newest: the
// oldest of each span, so that it lives on into the next.
var ages = []int{7, 30, 365}

// spare are the copies that need not be kept, of those given newest first.
func spare(copies []Dated) (out []Dated) {
	if len(copies) < 3 {
		return nil
	}
	newest := copies[0].Day
	kept := map[int]Dated{} // by span
	span := func(c Dated) int {
		days := int(newest.Sub(c.Day).Hours() / 24)
		for i, most := range ages {
			if days <= most {
				return i
			}
		}
		return len(ages) // older than all: the newest of these is kept
	}
	for _, c := range copies[2:] {
		s := span(c)
		before, has := kept[s]
		switch {
		case !has:
			kept[s] = c
		case s == len(ages):
			out = append(out, c)
		default:
			out, kept[s] = append(out, before), c
		}
	}
	return out
}

// passingNames are those of a copy or a new book under way. One that was left behind, by a
// program that was killed, is known by its name and its age.
var passingNames = []string{".copy-*", ".new-book-*", "practice-*.new"}

// leftBehind is the age from which a passing file is nobody's any more.
const leftBehind = 24 * time.Hour

// tidy takes away passing files of this user that were left behind beside a book.
func tidy(path string, now time.Time) {
	files, _ := os.ReadDir(filepath.Dir(path))
	for _, file := range files {
		passing := slices.ContainsFunc(passingNames, func(name string) bool { ok, _ := filepath.Match(name, file.Name()); return ok })
		if info, err := file.Info(); err == nil && passing && info.Mode().IsRegular() && now.Sub(info.ModTime()) > leftBehind && mine(info) {
			_ = os.Remove(filepath.Join(filepath.Dir(path), file.Name()))
		}
	}
}
