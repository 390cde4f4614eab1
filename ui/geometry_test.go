package ui

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/mattn/go-runewidth"

	"barkslip/ui/block"
	"barkslip/ui/paper"
	"barkslip/ui/part"
	"barkslip/ui/stump"
)

var windows = [][2]int{{80, 24}, {120, 40}, {60, 15}, {200, 60}}

// colours are the escape sequences that set a colour.
var colours = regexp.MustCompile("\x1b\\[[0-9;]*\\b(3[0-8]|4[0-8]|9[0-7]|10[0-7])\\b[0-9;]*m")

// geometry is what is wrong with the shape of a screen, "" for nothing.
func geometry(raw string, w, h int) string {
	lines := strings.Split(escapes.ReplaceAllString(raw, ""), "\n")
	if len(lines) != h {
		return fmt.Sprintf("%d lines in a window of %d", len(lines), h)
	}
	for i, l := range lines {
		if got := runewidth.StringWidth(l); got > w {
			return fmt.Sprintf("line %d is %d wide in a window of %d: %s", i+1, got, w, l)
		}
		for _, r := range l {
			if r < 0x20 || r >= 0x7f && r < 0xa0 || r == utf8.RuneError {
				return fmt.Sprintf("line %d has the control character %q", i+1, r)
			}
		}
	}
	return ""
}

// TestEveryScreenKeepsItsWindow sees every screen in every window and theme.
func TestEveryScreenKeepsItsWindow(t *testing.T) {
	seen := 0
	tour(t, func(name string, d *driver) {
		d.each(func(size [2]int, theme string, plain bool) {
			seen++
			raw := d.root.View()
			if wrong := geometry(raw, size[0], size[1]); wrong != "" {
				t.Errorf("%s, %v, %s: %s", name, size, theme, wrong)
			}
			if theme == "plain" && colours.MatchString(raw) {
				t.Errorf("%s, %v: colour in the plain theme: %q", name, size, colours.FindString(raw))
			}
		})
	})
	if seen < 1000 {
		t.Fatalf("the tour saw only %d screens", seen)
	}
}

// TestFocusHasAMark sees that without colour it is still told where the keys
// go: by a sign, by the turned cell, or in a small window by the step's name.
func TestFocusHasAMark(t *testing.T) {
	tour(t, func(name string, d *driver) {
		d.each(func(size [2]int, theme string, plain bool) {
			if over[*part.Page](d) { // a text to read has no focus
				return
			}
			screen := d.root.View()
			turned := setBefore(d.root.x.Theme, paper.Turned)
			marks := []string{turned, ">", "██"}
			if plain {
				marks = []string{turned, ">", "##"}
			}
			if is[*stump.Screen](d) {
				marks = append(marks, d.walk().Asked().Step.Part.String()+": "+d.walk().Asked().Step.Name)
			}
			if is[*block.Screen](d) && d.ground().Rows() == 0 { // nothing to be on
				return
			}
			if name == "reasons" { // going against advice has no answer on Enter
				return
			}
			for _, m := range marks {
				if strings.Contains(screen, m) {
					return
				}
			}
			t.Errorf("%s, %v, %s: no mark of the focus:\n%s", name, size, theme, d.screen())
		})
	})
}

// TestEveryAnswerIsOnTheScreen sees that no full window hides an answer or the
// question.
func TestEveryAnswerIsOnTheScreen(t *testing.T) {
	tour(t, func(name string, d *driver) {
		if !is[*stump.Screen](d) || over[*part.Page](d) || over[*part.List](d) || over[*part.Prompt](d) {
			return
		}
		for _, coach := range []bool{false, true} {
			d.root.x.Prefs.Coach = coach
			for _, size := range windows {
				if size[1] < part.FullHeight {
					continue
				}
				d.size(size[0], size[1])
				if missing := d.hidden(); missing != "" {
					t.Errorf("%s, %v, coach %v: %q is not to be seen:\n%s", name, size, coach, missing, d.screen())
				}
			}
		}
		d.root.x.Prefs.Coach = false
		d.size(80, 24)
	})
}

// hidden is the first of the question's words or answers that the screen
// lacks, "" if it has all.
func (d *driver) hidden() string {
	s := d.walk()
	screen := d.screen()
	for _, word := range strings.Fields(s.Asked().Question) {
		if !strings.Contains(screen, word) {
			return word
		}
	}
	switch {
	case s.Field() != nil:
		if !strings.Contains(screen, "\n"+"> ") && !strings.Contains(screen, " > ") {
			return "> "
		}
	case s.Asked().Checks != nil:
		for i := range s.Asked().Checks.Items {
			if !regexp.MustCompile(fmt.Sprintf(`\b%d  (good|NOT)`, i+1)).MatchString(screen) {
				return s.Asked().Checks.Items[i].Word
			}
		}
	default:
		for _, ch := range s.Asked().Choices {
			if !strings.Contains(screen, ch.Key+"  "+ch.Word) {
				return ch.Word
			}
		}
	}
	return ""
}

// each sets every window, theme and manner of drawing in turn, then what they
// were.
func (d *driver) each(see func(size [2]int, theme string, plain bool)) {
	for _, size := range windows {
		d.size(size[0], size[1])
		for _, theme := range paper.ThemeNames {
			d.root.x.Theme = paper.ThemeNamed(theme)
			for _, plain := range []bool{false, true} {
				d.root.x.Plain = plain
				see(size, theme, plain)
			}
		}
	}
	d.root.x.Plain = false
	d.root.x.SetTheme(d.root.x.Prefs.Theme)
	d.size(80, 24)
}
