package ui

import (
	"strings"
	"testing"

	"barkslip/ui/words"
)

// TestWordsOfTheTrade: one key from anywhere, the marks and stages first; the first
// letters of a word find it with its drawing, at every size and in plain characters.
func TestWordsOfTheTrade(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	for _, size := range [][2]int{{60, 15}, {80, 24}, {140, 45}} {
		d.size(size[0], size[1])
		for _, plain := range []bool{false, true} {
			d.root.x.Plain = plain
			d.press("i")
			d.sees("The marks of the block", "standing", "untied")
			for _, w := range []struct{ typed, word, drawn string }{{"nur", "nurse limb", "nurse"}, {"lon", "long way", "W to E"}, {"sec", "second bud", "second bud"},
				{"hole", "drain hole", "drain hole"}, {"sap", "sapwood", "cambium"}, {"pin", "pinch", "pinched"}} {
				d.press(w.typed)
				d.sees(w.word)
				page := d.screen()
				for range 4 {
					d.press("down")
					page += d.screen()
				}
				if !strings.Contains(page, w.drawn) {
					t.Errorf("%v plain %v: %s has no drawing:\n%s", size, plain, w.word, page)
				}
				d.press("esc")
			}
			d.press("qq")
			d.sees("No word here begins with qq")
			d.press("esc", "esc")
			if over[*words.Screen](d) {
				t.Fatalf("Esc does not leave the words:\n%s", d.screen())
			}
		}
	}
}

// TestNoteFromTheList: m is a note on the stump under the cursor, on the block as on
// the stump itself.
func TestNoteFromTheList(t *testing.T) {
	d := newDriver(t, "2027-05-04 08:00")
	d.plant("Hollow Lane", rows(2, 3)...)
	d.press("right", "m", "split low down", "enter")
	d.sees("Recorded: note on 1/2.")
	d.press("enter", "j")
	d.sees("note: split low down")
	d.press("esc", "u")
	d.sees("Took back")
}
