package ui

import (
	"regexp"
	"strings"
	"testing"
)

// coached is a driver at the cut back of a stump, with the coach on.
func coached(t *testing.T) *driver {
	d := newDriver(t, "2027-04-26 09:00")
	d.plant("Hollow Lane", rows(1, 3)...)
	d.press("enter", "2", "enter", "enter", "c")
	return d
}

// TestLessonFirst: what to look for, what to do if it is not so, why, and only then
// one caution.
func TestLessonFirst(t *testing.T) {
	d := coached(t)
	d.size(120, 40)
	at := regexp.MustCompile(`(?s)Look for .*If not .*Why .*Caution `)
	if screen := d.screen(); !at.MatchString(screen) || strings.Count(screen, "Caution ") != 1 {
		t.Errorf("the lesson is not in its order:\n%s", screen)
	}
}

// TestCautionOnceAStump: a caution said at one step is not said at the next, but
// stays at its own.
func TestCautionOnceAStump(t *testing.T) {
	d := coached(t)
	d.size(120, 40)
	d.sees("Saw, knife and drill")
	d.press("enter")
	d.lacks("Saw, knife and drill")
	d.press("u")
	d.sees("Saw, knife and drill")
}

// TestLessonIsReadInItsPlace at 60 columns: a key reads on until all was seen, the
// question and its answers stay, and after the end it begins again.
func TestLessonIsReadInItsPlace(t *testing.T) {
	d := coached(t)
	d.size(120, 40)
	lesson := regexp.MustCompile(`(?s)Look for .*`).FindString(d.screen())
	d.size(60, 15)
	seen := ""
	for n := 0; n < 12; n++ {
		if missing := d.hidden(); missing != "" {
			t.Fatalf("%q is not to be seen:\n%s", missing, d.screen())
		}
		seen += d.screen()
		d.sees("PgDn more")
		d.press("=")
		if strings.Contains(d.screen(), "Look for ") {
			break
		}
	}
	d.sees("Look for ") // it begins again
	for _, label := range []string{"Look for ", "If not ", "Why ", "Caution "} {
		if strings.Contains(lesson, label) && !strings.Contains(seen, label) {
			t.Errorf("%q was not to be read", label)
		}
	}
}

// TestCoachIsOffForGood: one key, kept for the next start.
func TestCoachIsOffForGood(t *testing.T) {
	d := coached(t)
	d.size(120, 40)
	var kept Prefs
	d.root.x.SavePrefs = func(p Prefs) error { kept = p; return nil }
	d.sees("c coach off")
	d.press("c")
	d.lacks("Look for", "Caution")
	d.sees("c coach")
	if kept.Coach {
		t.Error("it would be on again at the next start")
	}
}

// TestKeyLineNamesLookingAhead in every window that is not small.
func TestKeyLineNamesLookingAhead(t *testing.T) {
	d := coached(t)
	d.press("enter")
	for _, size := range sizes[1:] {
		d.size(size[0], size[1])
		if keys := d.screen()[strings.LastIndex(d.screen(), "\n"):]; !strings.Contains(keys, "Tab") {
			t.Errorf("%v: %s", size, keys)
		}
	}
}
