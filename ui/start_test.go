package ui

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"barkslip/store"
)

// mostStart is how long the program may take to its first frame on a terminal
// that answers no question.
const mostStart = 500 * time.Millisecond

// child opens the screens on the book that the environment names.
func child() int {
	book, err := store.Open(os.Getenv(childVariable), store.Options{})
	if err != nil {
		return 1
	}
	defer book.Close()
	err = Run(context.Background(), Options{Book: book, Now: time.Now, Prefs: Prefs{Hand: "RK"}, LocalZone: "UTC", Zones: time.LoadLocation})
	if err != nil {
		return 1
	}
	return 0
}

// emptyBook is the path of a new book.
func emptyBook(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "start.bark")
	book, err := store.Create(path, store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}
