package main_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"
)

// windows are the sizes that must hold, and those that are too small.
var windows = []struct {
	width, height int
	small         bool
}{{80, 24, false}, {120, 40, false}, {60, 15, false}, {59, 14, true}, {80, 14, true}, {59, 24, true}}

// tour is the screens that are looked at in every size and style: how to get
// there from the one before, and a word that stands on it.
var tour = []struct{ key, word string }{
	{"Home", `standing +\d`}, {"?", "Keys"}, {"Escape", `standing +\d`}, {"f", "Show which"}, {"Escape", `standing +\d`},
	{"Enter", "Enter takes"}, {"w", "Why"}, {"Escape", "Enter takes"}, {"?", "Keys"}, {"Escape", "Enter takes"}, {"x", "What becomes of it"}, {"Escape", "Enter takes"},
	{"j", "Story"}, {"Escape", "Enter takes"}, {"Up", "Correcting new face"}, {"Escape", "Enter takes"}, {"Escape", `standing +\d`},
	{"Right", `standing +\d`}, {"Enter", "1 of 7, way"}, {"w", "Why"}, {"Escape", "1 of 7, way"}, {"Escape", `standing +\d`},
}

// tourWorld has a stump to measure and one with a scion still to set.
func tourWorld(t *testing.T) *world {
	t.Helper()
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", true)
	w.plant(12, 20, func(p *planting) {
		for tree := range 2 {
			p.cutBack(1, tree+1, "2027-04-26 10:00")
		}
		p.faced(1, 1, "2027-05-04")
		p.grafted(1, 2, "2027-05-04", 2)
	})
	return w
}

func testSizes(t *testing.T) {
	slow(t)
	t.Parallel()
	w := tourWorld(t)
	x := w.open(80, 24)
	for _, size := range windows {
		x.resize(size.width, size.height)
		if size.small {
			x.sees("at least 60 columns by 15 lines")
			x.lacks(blockName)
			continue
		}
		x.sees(blockName)
		if size.width == 60 { // seen whole there; walk in
			x.press("v")
			x.sees(`\[`)
		}
		for _, stop := range tour {
			x.press(stop.key)
			x.sees(stop.word)
			x.framed(size.width, size.height, stop.word)
		}
	}
	// The question and what was typed stay through a window too small for them.
	x.resize(80, 24)
	x.sees("standing")
	x.press("Home", "Enter")
	x.sees("measure")
	x.types("3.4")
	x.resize(59, 14)
	x.sees("at least 60 columns")
	x.resize(120, 40)
	x.sees(`> 3\.4`)
	x.framed(120, 40, "what was typed")
}

var ruleLine = regexp.MustCompile(`^[─-]+$`)

// framed waits for a whole frame: the header in the first line, a rule as wide
// as the window under it and another above the last two lines, and keys in the
// last line. A line too wide or too many would break it.
func (x *screens) framed(width, height int, name string) {
	x.w.t.Helper()
	wrong := ""
	ok := until(func() bool {
		lines := strings.Split(strings.TrimSuffix(x.screen(), "\n"), "\n")
		wrong = frameFault(lines, width, height)
		return wrong == ""
	})
	if !ok {
		x.w.t.Errorf("%dx%d, %s: %s:\n%s", width, height, name, wrong, x.screen())
	}
}

func frameFault(lines []string, width, height int) string {
	switch {
	case len(lines) != height:
		return fmt.Sprintf("%d lines", len(lines))
	case strings.TrimSpace(lines[0]) == "":
		return "no header in the first line"
	case strings.TrimSpace(lines[height-1]) == "":
		return "no keys in the last line"
	}
	for _, at := range []int{1, height - 3} {
		if !ruleLine.MatchString(lines[at]) || utf8.RuneCountInString(lines[at]) != width {
			return fmt.Sprintf("line %d is no rule of the window's width", at+1)
		}
	}
	return ""
}
