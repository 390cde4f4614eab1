package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestClockFileIsReadAnew(t *testing.T) {
	file := filepath.Join(t.TempDir(), "clock")
	set := func(text string) {
		t.Helper()
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	set("2027-05-04T14:30:00-07:00\n")
	now, err := clock(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ text, want string }{
		{"2027-05-04T14:30:00-07:00\n", "2027-05-04T14:30:00-07:00"},
		{"2027-05-04T15:00:00-07:00", "2027-05-04T15:00:00-07:00"},
		{"2027-05-", "2027-05-04T15:00:00-07:00"}, // half-written
		{"2026-04-01T08:00:00Z", "2026-04-01T08:00:00Z"},
	} {
		set(c.text)
		if got := now().Format(time.RFC3339); got != c.want {
			t.Errorf("with %q it is %s, want %s", c.text, got, c.want)
		}
	}
}
