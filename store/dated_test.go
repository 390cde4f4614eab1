package store

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// Over a year of daily work a handful of copies is kept, of all ages.
func TestDatedCopies(t *testing.T) {
	path, _ := filledFile(t, 2)
	day := time.Date(2027, 4, 1, 6, 0, 0, 0, time.UTC)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 400 {
		now := day.AddDate(0, 0, i)
		if i < 3 || i > 396 { // the rest is as if copied
			if err := os.Chtimes(path, now, now); err != nil {
				t.Fatal(err)
			}
			if made, err := KeepDated(path, now, options(1)); err != nil || !made {
				t.Fatalf("day %d: %v, %v", i, made, err)
			}
			if made, err := KeepDated(path, now, options(1)); err != nil || made {
				t.Fatalf("day %d again: %v, %v", i, made, err)
			}
		} else {
			name := path + datedName + now.Format(time.DateOnly)
			if err := os.WriteFile(name, text, 0o600); err != nil {
				t.Fatal(err)
			}
			for _, c := range spare(DatedCopies(path)) {
				if err := os.Remove(c.Path); err != nil {
					t.Fatal(err)
				}
			}
		}
		copies := DatedCopies(path)
		if len(copies) > 6 || i > 10 && len(copies) < 3 {
			t.Fatalf("day %d: %d copies", i, len(copies))
		}
		for _, c := range copies { // each as old as its day, so that the next is made
			at := c.Day.Add(6 * time.Hour)
			if err := os.Chtimes(c.Path, at, at); err != nil {
				t.Fatal(err)
			}
		}
	}
	var old []int
	for _, c := range DatedCopies(path) {
		old = append(old, int(day.AddDate(0, 0, 399).Sub(c.Day).Hours()/24))
	}
	if !slices.ContainsFunc(old, func(d int) bool { return d > 7 && d <= 60 }) || !slices.ContainsFunc(old, func(d int) bool { return d > 60 }) {
		t.Errorf("copies of %v days", old)
	}
	t.Log("days old:", old)
}

// Of a damaged book no copy is made, and the older ones stay.
func TestNoDatedCopyOfDamage(t *testing.T) {
	path, _ := filledFile(t, 30)
	now := time.Now().Add(time.Hour)
	if made, err := KeepDated(path, now, options(1)); err != nil || !made {
		t.Fatal(made, err)
	}
	pages := mapPages(t, path)
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	for id, on := range pages.on {
		if len(on) > 0 {
			_, _ = f.WriteAt(make([]byte, pages.pageSize), int64(id)*int64(pages.pageSize))
			break
		}
	}
	_ = f.Close()
	_ = os.Chtimes(path, now.AddDate(0, 0, 1), now.AddDate(0, 0, 1))
	made, err := KeepDated(path, now.AddDate(0, 0, 1), options(1))
	if wantProblem(t, "copying", err, ErrDamaged); made || len(DatedCopies(path)) != 1 {
		t.Errorf("%v, %v", made, DatedCopies(path))
	}
}

// What a killed copy left behind is taken away once it is old, and nothing else.
func TestLeftBehind(t *testing.T) {
	path, _ := filledFile(t, 1)
	dir, now := filepath.Dir(path), time.Now()
	stays := []string{".copy-young", "copy-of-mine", ".other"}
	for _, name := range append([]string{".copy-123", ".new-book-9"}, stays...) {
		file := filepath.Join(dir, name)
		if err := os.WriteFile(file, nil, 0o600); err != nil {
			t.Fatal(err)
		}
		if name != ".copy-young" {
			_ = os.Chtimes(file, now.AddDate(0, 0, -2), now.AddDate(0, 0, -2))
		}
	}
	tidy(path, now)
	for _, name := range stays {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			t.Error(name, err)
		}
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) != 2 {
		t.Error("left:", left)
	}
}
