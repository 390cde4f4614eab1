package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"barkslip/core/record"
	"barkslip/ui/changes"
	"barkslip/ui/part"
	"barkslip/ui/plan"
	"barkslip/ui/tally"
	"barkslip/ui/wood"
)

// tables is the key table of each screen, with the keys common to all.
func tables(t *testing.T) map[string][]part.Row {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	common := d.root.x.Common(func() part.Msgs { return nil })
	out := map[string][]part.Row{"block": append(d.ground().Table(), common...)}
	d.press("g")
	out["rounds"] = append(d.round().Table(), common...)
	d.press("esc", "enter")
	out["stump"] = append(d.walk().Table(), common...)
	out["wood"] = wood.New(d.root.x).Table()
	out["lot"] = wood.Of(d.root.x, record.ID{8}).Table()
	out["held lot"] = wood.Follow(d.root.x, record.ID{8}, record.NoStump).Table()
	out["plan"] = append(plan.New(d.root.x).Table(), common...)
	out["tally"] = tally.New(d.root.x).Table()
	out["changes"] = changes.New(d.root.x).Table()
	return out
}

// besides are the keys that a screen takes beside its table.
var besides = map[string]string{
	"block": "1 2 3 4 5 6 7 8 9",
	"stump": "0 1 2 3 4 5 6 7 8 9 enter",
	"wood":  "1 2 3 4 5 6 7 8 9 enter esc up k down j",
	"lot":   "1 2 3 4 5", "held lot": "1 2 3 4 5 enter",
	"plan": "enter up k pgdown pgup home end left right tab shift+tab esc",
}

// TestNoKeyIsBoundTwice goes over the keys of each screen.
func TestNoKeyIsBoundTwice(t *testing.T) {
	for screen, table := range tables(t) {
		bound := map[string]string{}
		for _, k := range strings.Fields(besides[screen]) {
			bound[k] = "what is beside the table"
		}
		for _, row := range table {
			for _, k := range row.Keys() {
				if other, twice := bound[k]; twice {
					t.Errorf("%s: %q is bound to %q and to %q", screen, k, other, row.Says)
				}
				bound[k] = row.Says
			}
		}
		if len(bound) < 10 {
			t.Errorf("%s: only %d keys", screen, len(bound))
		}
	}
}

// TestSameKeySameDeed: a key that every screen has does the same on each.
func TestSameKeySameDeed(t *testing.T) {
	for screen, table := range tables(t) {
		for _, k := range []string{"n", "/", "?", "q", "h", "L", "t"} {
			if !slices.ContainsFunc(table, func(row part.Row) bool { return slices.Contains(row.Keys(), k) }) {
				t.Errorf("%s: %q is bound to nothing", screen, k)
			}
		}
	}
}

// TestEveryWordHasHelp sees that what the key line shows the help explains.
func TestEveryWordHasHelp(t *testing.T) {
	for screen, table := range tables(t) {
		for _, b := range table {
			if b.Help().Desc != "" && b.Says == "" {
				t.Errorf("%s: %q has the word %q and no help", screen, b.Help().Key, b.Help().Desc)
			}
			if b.Do == nil {
				t.Errorf("%s: %q does nothing", screen, b.Help().Key)
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
		for _, l := range d.root.over.(*part.Page).Lines() {
			for _, s := range l {
				help.WriteString(s.Text)
			}
			help.WriteByte('\n')
		}
		text := strings.Join(strings.Fields(help.String()), " ")
		for _, b := range tables(t)[c.screen] {
			if b.Says != "" && !strings.Contains(text, b.Help().Key+" "+b.Says) {
				t.Errorf("%s: the help lacks %q: %s", c.screen, b.Help().Key, b.Says)
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

// TestLongListReachesItsEnd picks the last of more items than there are keys.
func TestLongListReachesItsEnd(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(1, 1)...)
	var items []part.Item
	taken := -1
	for i := range 60 {
		items = append(items, part.Item{Word: fmt.Sprintf("item %d", i), Take: func() part.Msgs { taken = i; return nil }})
	}
	d.root.do(d.root.x.Picks("Which?", "", items)...)
	for range 70 {
		d.press("down")
	}
	d.sees("> item 59")
	d.press("enter")
	if taken != 59 {
		t.Errorf("took %d", taken)
	}
}
