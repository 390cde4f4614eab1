package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/store"
)

var dueNow = time.Date(2027, 5, 4, 21, 30, 0, 0, time.UTC) // 14:30 in Los Angeles

// dueBook is a closed book with one block, a white due and one that runs by
// days on each of its stumps.
func dueBook(t *testing.T, name string, stumps ...record.StumpID) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.bark")
	book, err := store.Create(path, store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	events := []record.Event{
		{Body: &record.BlockMade{Block: dueBlock, Name: name}},
		{Body: &record.BlockSet{Block: dueBlock, Setting: "zone", Value: "America/Los_Angeles"}},
	}
	for i, s := range stumps {
		at := dueNow.Add(time.Duration(i-150) * time.Minute)
		for _, body := range []record.Body{&record.CutBack{}, &record.ScionSet{Slot: 1}, &record.Sealed{Cover: record.Wrapped}} {
			at := at
			if _, early := body.(*record.CutBack); early {
				at = at.AddDate(0, 0, -30)
			}
			events = append(events, record.Event{At: at, Hand: "AB", Stump: s, Body: body})
		}
	}
	for i := range events {
		if events[i].At.IsZero() {
			events[i].At = dueNow
		}
	}
	if _, err := book.Append(events...); err != nil {
		t.Fatal(err)
	}
	return path
}

var dueBlock = record.ID{0: 0xaa, 15: 1}

func dueStump(row, tree uint16, limb uint8) record.StumpID {
	return record.StumpID{Block: dueBlock, Row: row, Tree: tree, Limb: limb}
}

// dueRun is the standard output of barkslip due at dueNow.
func dueRun(t *testing.T, path string, options ...string) string {
	t.Helper()
	clock := filepath.Join(t.TempDir(), "clock")
	if err := os.WriteFile(clock, []byte(dueNow.Format(time.RFC3339)), 0o600); err != nil {
		t.Fatal(err)
	}
	t.Setenv(clockVariable, clock)
	var out, errs bytes.Buffer
	if code := run(append([]string{"due", "--book", path}, options...), &out, &errs); code != 0 {
		t.Fatalf("exit %d: %s", code, errs.String())
	}
	return out.String()
}
