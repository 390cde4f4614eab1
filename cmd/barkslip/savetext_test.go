package main

import (
	"os"
	"path/filepath"
	"testing"
)

// TestSaveTextWritesNothingOver: a name that is taken, by a file or by a link,
// gets a number, and what was there stays as it was.
func TestSaveTextWritesNothingOver(t *testing.T) {
	dir := t.TempDir()
	path, other := filepath.Join(dir, "round.txt"), filepath.Join(dir, "other")
	if err := os.WriteFile(other, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(other, path); err != nil {
		t.Skip(err)
	}
	for _, want := range []string{"round-2.txt", "round-3.txt"} {
		got, err := saveText(path, want)
		if err != nil || filepath.Base(got) != want {
			t.Fatalf("%s %v, want %s", got, err, want)
		}
		if text, _ := os.ReadFile(got); string(text) != want {
			t.Errorf("%s holds %q", got, text)
		}
	}
	if text, _ := os.ReadFile(other); string(text) != "mine" {
		t.Errorf("the link was followed: %q", text)
	}
}
