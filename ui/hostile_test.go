package ui

import (
	"strings"
	"testing"

	"barkslip/core/ready"
	"barkslip/core/record"
)

// hostile is names that a list or another laptop could bring.
var hostile = map[string]string{
	"control":   "Lan\x1b[2Jtern\x07\r\n\tX\x00",
	"c1":        "Lan\u009b2Jtern\u0085",
	"turned":    "Lan\u202etern\u2066X\u2069",
	"marks":     "Lan\u200e\u200f\u061ctern",
	"wide":      "青い胡桃の木の大きな実",
	"rtl":       "אגוז مكسرات",
	"combining": "e\u0301e\u0301\u0301\u0301 Z\u0351\u0364ạlgo",
	"zero":      "Lan\u200b\u200d\ufeff\u00adtern",
	"emoji":     "🌳👩\u200d🌾🇺🇸 tree",
	"long":      strings.Repeat("Lantern", 40),
	"one word":  strings.Repeat("W", 300),
	"wide word": strings.Repeat("木", 150),
	"broken":    "Lan\xfft\xc3ern",
	"empty":     " ",
}

// TestHostileNames puts each as the name of a block, a variety, a stock, a lot
// and a note, and sees every screen that shows them.
func TestHostileNames(t *testing.T) {
	for name, text := range hostile {
		t.Run(name, func(t *testing.T) {
			d := newDriver(t, "2027-05-04 14:00")
			d.plant("Hollow Lane", rows(1, 2)...)
			clash := record.ID{7}
			d.append(
				record.Event{At: d.now, Hand: "RK", Body: &record.BlockMade{Block: home, Name: text}},
				record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: "variety", Value: text}},
				record.Event{At: d.now, Hand: "RK", Body: &record.BlockSet{Block: home, Setting: "species", Value: text}},
				record.Event{At: d.now, Hand: "RK", Body: &record.LotReceived{Lot: clash, Name: text, Variety: text, Note: text}},
				record.Event{At: d.now, Hand: "RK", Body: &record.LotHeld{Lot: clash, Held: true, Why: text}},
				record.Event{At: d.now, Hand: text, Stump: tree(1, 5), Body: &record.StumpAdded{Stock: text, Variety: text, Note: text}},
				record.Event{At: d.now, Hand: text, Stump: tree(1, 1), Body: &record.Noted{Text: text}},
			)
			d.did(tree(1, 1), "2027-04-20 09:00", cut()...)
			d.did(tree(1, 1), "2027-05-04 08:00", graft()[:7]...)
			d.append(record.Event{At: d.now, Hand: text, Stump: tree(1, 1), Body: &record.AgainstAdvice{Why: text, Verdict: ready.Wait}})
			d.open()
			see := func(what string) {
				t.Helper()
				for _, size := range windows {
					d.size(size[0], size[1])
					if wrong := geometry(d.root.View(), size[0], size[1]); wrong != "" {
						t.Errorf("%s, %v: %s", what, size, wrong)
					}
					if i := strings.IndexFunc(d.screen(), unruly); i >= 0 {
						t.Errorf("%s, %v: %q reaches the terminal", what, size, d.screen()[i:i+4])
					}
				}
			}
			see("block")
			for _, key := range []string{"o", "b", "l"} {
				d.press(key)
				see("block " + key)
				d.press("esc")
			}
			d.press("enter")
			see("wood")
			for _, key := range []string{"j", "w", "?", "m", "i"} {
				d.press(key)
				see("stump " + key)
				d.press("esc")
			}
			d.press("9", text, "enter")
			see("wood typed")
			d.press("u")
			see("taken back")
			d.press("esc")
			d.goTo(1, 5)
			see("stump of the list")
		})
	}
}

// unruly are characters that turn or break what stands beside them.
func unruly(r rune) bool {
	return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0xfeff
}
