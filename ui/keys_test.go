package ui

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

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
	d.root.x.Life = madeUp{d}
	out["a life"] = append(d.walk().Table(), common...)
	d.root.x.Life = nil
	out["wood"] = wood.New(d.root.x).Table()
	out["lot"] = wood.Of(d.root.x, record.ID{8}).Table()
	out["held lot"] = wood.Follow(d.root.x, record.ID{8}, record.NoStump).Table()
	out["plan"] = append(plan.New(d.root.x).Table(), common...)
	out["tally"] = tally.New(d.root.x).Table()
	out["changes"] = changes.New(d.root.x).Table()
	return out
}

// madeUp is a life whose clock stands still.
type madeUp struct{ *driver }

func (m madeUp) GoOn() string   { return "" }
func (m madeUp) Now() time.Time { return m.now }

// besides are the keys that a screen takes beside its table.
var besides = map[string]string{
	"block": "1 2 3 4 5 6 7 8 9",
	"stump": "0 1 2 3 4 5 6 7 8 9 enter", "a life": "0 1 2 3 4 5 6 7 8 9 enter",
	"wood": "1 2 3 4 5 6 7 8 9 enter esc up down pgup pgdown home end",
	"lot":  "1 2 3 4 5", "held lot": "1 2 3 4 5 enter",
	"plan": "up pgdown pgup home end",
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

// moving are the keys that move, which are no deed; Shift-Tab is that of Tab
// turned round.
const moving = "up down left right pgup pgdown home end shift+tab"

// TestSameKeySameDeed: every key of every screen does the deed that has it in the
// one table of deeds, with all of that deed's keys; digits and moves alone are the
// screen's own. What a screen calls it may differ, the key may not.
func TestSameKeySameDeed(t *testing.T) {
	deeds, of := part.Deeds(), map[string]part.Deed{}
	for _, d := range deeds {
		for _, k := range d.Keys {
			if other, twice := of[k]; twice {
				t.Errorf("%q is the key of %q and of %q", k, other.Says, d.Says)
			}
			of[k] = d
		}
	}
	used := map[string]bool{}
	for screen, table := range tables(t) {
		for _, row := range table {
			for _, k := range row.Keys() {
				if slices.Contains(strings.Fields(moving), k) || len(k) == 1 && k[0] >= '0' && k[0] <= '9' && row.Help().Key == k {
					continue
				}
				d, known := of[k]
				if !known || d.Shown != row.Help().Key || !slices.Equal(d.Keys, row.Keys()) {
					t.Errorf("%s: %q is not in the table of deeds as %q: %s", screen, k, row.Help().Key, row.Says)
				}
				used[d.Shown] = true
			}
		}
		for _, always := range []part.Deed{part.ToNext, part.ToFind, part.ToHelp, part.ToWords, part.ToTheme, part.ToLeave, part.ToHand, part.ToTime, part.ToWhy, part.ToBack} {
			if screen == "wood" && always.Shown == part.ToBack.Shown { // it is its list's
				continue
			}
			if !slices.ContainsFunc(table, func(row part.Row) bool { return slices.Equal(row.Keys(), always.Keys) }) {
				t.Errorf("%s: %q is bound to nothing", screen, always.Shown)
			}
		}
	}
	for _, d := range deeds {
		if !used[d.Shown] {
			t.Errorf("no screen does %q: %s", d.Shown, d.Says)
		}
	}
}

// TestShiftAloneTellsNothingApart: but for taking back and putting back no two keys
// differ by Shift alone, and what needs Shift has another key that needs none.
func TestShiftAloneTellsNothingApart(t *testing.T) {
	const needShift = "?!ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	for screen, table := range tables(t) {
		bound := map[string]bool{}
		for _, row := range table {
			for _, k := range row.Keys() {
				bound[k] = true
			}
		}
		for k := range bound {
			if small := strings.ToLower(k); small != k && bound[small] && k != "U" {
				t.Errorf("%s: %q and %q differ by Shift alone", screen, k, small)
			}
		}
		for _, row := range table {
			free := func(k string) bool { return len(k) > 1 || !strings.Contains(needShift, k) }
			if len(row.Keys()) > 0 && !slices.ContainsFunc(row.Keys(), free) {
				t.Errorf("%s: %q needs Shift", screen, row.Help().Key)
			}
		}
	}
}

// TestCapsLock: a letter does the same with Shift or Caps Lock.
func TestCapsLock(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.press("G")
	d.round()
	d.press("esc", "N")
	d.walk()
}

// TestHelpFromAnywhere: the help and the words open over screens, lists, prompts and
// pages, and Esc goes back to what was there with what was typed.
func TestHelpFromAnywhere(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	for _, c := range []struct {
		name string
		way  []string
		help string
		back string
	}{
		{"list", []string{"d"}, "?", "The block's weather"},
		{"prompt", []string{"/", "4/1"}, "f1", "4/1"},
		{"page", []string{"w"}, "?", "Why"},
		{"legend", []string{"i", "sap"}, "f1", "sapwood"},
		{"tally", []string{"k"}, "?", "tally"},
		{"note", []string{"m", "wet?"}, "f1", "wet?"},
	} {
		d.press(c.way...)
		d.press(c.help)
		d.sees("Keys")
		d.press("f2")
		d.sees("Marks and words")
		d.press("esc")
		d.sees("Keys")
		d.press("esc")
		d.sees(c.back)
		if c.name == "legend" {
			d.press("esc")
		}
		d.press("esc")
		if d.root.over != nil || len(d.root.mode.last) > 0 {
			t.Errorf("%s: something lies over the block still:\n%s", c.name, d.screen())
		}
		if len(d.root.up) > 1 {
			d.press("esc")
		}
	}
}

// TestNoKeyIsSilentOver: what does nothing on a list, a page or in a prompt says so.
func TestNoKeyIsSilentOver(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	for _, way := range []string{"d", "w", "/", "i"} {
		d.press(way)
		over := d.root.over
		d.press("tab")
		d.sees("does nothing here")
		if d.root.over != over {
			t.Errorf("%s: a key without use leaves it", way)
		}
		d.press("esc")
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
		d.press("!")
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

// keyTable is the table of keys in the guide for users, made from the deeds.
func keyTable() string {
	var out strings.Builder
	out.WriteString("| key | what it does |\n|---|---|\n")
	for _, d := range part.Deeds() {
		fmt.Fprintf(&out, "| %s | %s |\n", d.Shown, d.Says)
	}
	return out.String()
}

// TestKeysInTheGuide: the guide's table of keys is that of the program. With -update
// it is written anew.
func TestKeysInTheGuide(t *testing.T) {
	const file, from, to = "../README.md", "## Keys\n\n", "\nDigits answer"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, begun := strings.Cut(string(text), from)
	table, after, ended := strings.Cut(rest, to)
	if !begun || !ended {
		t.Fatalf("no table of keys between %q and %q", from, to)
	}
	if table == keyTable() {
		return
	}
	if !*update {
		t.Fatalf("the table of keys is\n%s\nand should be\n%s", table, keyTable())
	}
	if err := os.WriteFile(file, []byte(before+from+keyTable()+to+after), 0o644); err != nil {
		t.Fatal(err)
	}
}
