package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// wild would clear the window, ring, turn text round and, in eight bits, clear it again.
const wild = "a\x1b[2J\a\u202eb\u200f\u009b2J\x9b2Jc\x00"

func wildIn(s string) bool {
	return strings.ContainsAny(s, "\x1b\a\x00\u202e\u200f\u009b\x7f") || strings.Contains(s, "\x9b2J") || strings.ContainsRune(s, '\ufffd')
}

func TestTame(t *testing.T) {
	for _, c := range [][2]string{
		{"plain\ttext\n", "plain\ttext\n"}, {"木 é 23°\n", "木 é 23°\n"}, {wild + "\n", "a[2Jb2J2Jc\n"}, {"", ""},
	} {
		for _, size := range []int{1, 2, 3, 100} { // whatever is written at a time
			var out bytes.Buffer
			to := &tame{to: &out}
			for text := []byte(c[0]); len(text) > 0; {
				n := min(size, len(text))
				if _, err := to.Write(text[:n]); err != nil {
					t.Fatal(err)
				}
				text = text[n:]
			}
			if out.String() != c[1] {
				t.Errorf("%q by %d: %q", c[0], size, out.String())
			}
		}
	}
}

// Whatever a file is called, and whatever stands in it, nothing of it acts on a terminal.
func TestNamesAndErrorsAreTame(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_DATA_HOME", dir)
	name := filepath.Join(dir, strings.ReplaceAll(wild, "\x00", ""))
	if err := os.WriteFile(name, []byte("row,tree\n1,"+wild+"\n"), 0o600); err != nil {
		t.Skip("this system has no files of such names: ", err)
	}
	kind := filepath.Join(dir, "kind.jsonl")
	line := `{"v":9,"id":"00000000000000000000000000000001","clock":1,"at":"2027-05-04T09:00:00-07:00","hand":"RK","kind":"` + "x\u202ey\u009bz" + `"}`
	if err := os.WriteFile(kind, []byte(line+"\n"+"{"+wild+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	book := filepath.Join(dir, "b.bark")
	for _, args := range [][]string{
		{"check", "--book", name}, {"due", "--book", name}, {"block", "add", name, "--book", book}, {"journal", "join", name, "--book", book},
		{"journal", "join", kind, name, "--book", book}, {"copy", name, "--book", name}, {"restore", name, "--book", book}, {"salvage", name, "--book", book + "2"},
		{"sample", "--book", name}, {"reckon", "callus", "--temps", name}, {wild}, {"due", "--" + wild}, {"due", "--on", wild}, {"tally", "--by", wild},
		{"changes", "--book", book}, {"meet", wild, "--crew", "x", "--key-file", name}, {"meet", "nats://x", "--crew", wild, "--key-file", name},
		{"meet", "nats://x", "--crew", "x", "--key-file", name},
	} {
		var out, errs bytes.Buffer
		run(args, &out, &errs)
		if wildIn(errs.String()) {
			t.Errorf("%q: %q reaches the terminal", args, errs.String())
		}
	}
}
