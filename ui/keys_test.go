package ui

import (
	"fmt"
	"strings"
	"testing"
)

// tables is the key table of each screen, with the keys common to all.
func tables(t *testing.T) map[string][]binding {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	out := map[string][]binding{"block": append(d.root.block.table(), d.root.common(func() {})...)}
	d.press("g")
	out["rounds"] = append(d.root.rounds.table(), d.root.common(func() {})...)
	d.press("esc", "enter")
	out["stump"] = append(d.root.stump.table(), d.root.common(func() {})...)
	return out
}

// TestNoKeyIsBoundTwice goes over the table of each screen; the digits and
// Enter answer on the stump screen and are bound there too.
func TestNoKeyIsBoundTwice(t *testing.T) {
	for screen, table := range tables(t) {
		bound := map[string]string{}
		if screen == "stump" {
			for _, k := range strings.Fields("0 1 2 3 4 5 6 7 8 9 enter") {
				bound[k] = "the answers"
			}
		}
		for _, b := range table {
			for _, k := range b.keys {
				if other, twice := bound[k]; twice {
					t.Errorf("%s: %q is bound to %q and to %q", screen, k, other, b.help)
				}
				bound[k] = b.help
			}
		}
		if len(bound) < 10 {
			t.Errorf("%s: only %d keys", screen, len(bound))
		}
	}
}

// TestEveryWordHasHelp sees that what the key line shows the help explains.
func TestEveryWordHasHelp(t *testing.T) {
	for screen, table := range tables(t) {
		for _, b := range table {
			if b.word != "" && b.help == "" {
				t.Errorf("%s: %q has the word %q and no help", screen, b.name(), b.word)
			}
			if b.do == nil {
				t.Errorf("%s: %q does nothing", screen, b.name())
			}
		}
	}
}

// TestHelpListsEveryKey reads the help of each screen to its end.
func TestHelpListsEveryKey(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	for _, c := range []struct {
		screen string
		way    []string
	}{{"block", nil}, {"rounds", []string{"g"}}, {"stump", []string{"esc", "enter"}}} {
		d.press(c.way...)
		d.press("?")
		var help strings.Builder
		d.root.page.set()
		for _, l := range d.root.page.lines {
			for _, s := range l {
				help.WriteString(s.Text)
			}
			help.WriteByte('\n')
		}
		text := strings.Join(strings.Fields(help.String()), " ")
		for _, b := range tables(t)[c.screen] {
			if b.help != "" && !strings.Contains(text, b.name()+" "+b.help) {
				t.Errorf("%s: the help lacks %q: %s", c.screen, b.name(), b.help)
			}
		}
		d.press("esc")
	}
}

// TestKeysOfNoUseAreSaid presses letters that are bound to nothing.
func TestKeysOfNoUseAreSaid(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	for _, way := range []string{"", "g", "enter"} {
		if way == "enter" {
			d.press("esc")
		}
		if way != "" {
			d.press(way)
		}
		d.press("Z")
		d.sees("does nothing here")
	}
}

// TestListKeysAreApart sees that no two items of a list share a key, and that
// none is a key with which a list is moved about in or left.
func TestListKeysAreApart(t *testing.T) {
	for i, c := range listKeys {
		if strings.ContainsRune(listKeys[:i], c) {
			t.Errorf("%q picks two items", c)
		}
		if strings.ContainsRune("qjk", c) {
			t.Errorf("%q picks an item and moves or leaves", c)
		}
	}
}

// TestLongListReachesItsEnd picks the last of more items than there are keys.
func TestLongListReachesItsEnd(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	var items []listItem
	taken := -1
	for i := range 60 {
		items = append(items, listItem{fmt.Sprintf("item %d", i), "", func() error { taken = i; return nil }})
	}
	d.root.pick("Which?", "", items)
	for range 70 {
		d.press("down")
	}
	d.sees("> item 59")
	d.press("enter")
	if taken != 59 {
		t.Errorf("took %d", taken)
	}
}
