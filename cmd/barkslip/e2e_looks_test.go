package main_test

import (
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// testLooks tours the screens in each style and looks at what was sent.
func testLooks(t *testing.T) {
	slow(t)
	t.Run("NO_COLOR", looksColourless)
	t.Run("sunlight", looksSunlight)
	t.Run("plain", looksPlain)
}

// toured is all that the screens sent on the tour, and every screen on it.
func toured(t *testing.T, env []string, args ...string) (raw string, shown []string) {
	t.Helper()
	w := tourWorld(t)
	w.env = append(w.env, env...)
	x := w.open(80, 24, args...)
	x.sees(blockName)
	for _, stop := range tour {
		x.press(stop.key)
		x.sees(stop.word)
		shown = append(shown, x.screen())
	}
	sent, err := os.ReadFile(x.log)
	if err != nil {
		t.Fatal(err)
	}
	return string(sent), shown
}

var styles = regexp.MustCompile("\x1b\\[([0-9;:]*)m")

// styleCodes counts the codes of every style that was sent.
func styleCodes(raw string) map[int]int {
	n := map[int]int{}
	for _, m := range styles.FindAllStringSubmatch(raw, -1) {
		for _, code := range strings.FieldsFunc(m[1], func(c rune) bool { return c == ';' || c == ':' }) {
			if v, err := strconv.Atoi(code); err == nil {
				n[v]++
			}
		}
	}
	return n
}

// The codes for bold and reverse.
const (
	boldCode    = 1
	reverseCode = 7
)

func looksColourless(t *testing.T) {
	t.Parallel()
	raw, _ := toured(t, []string{"NO_COLOR=1"})
	codes := styleCodes(raw)
	for code, n := range codes {
		if code >= 30 && code <= 49 && code != 39 && code != 49 || code >= 90 && code <= 107 {
			t.Errorf("code %d, a colour, was sent %d times", code, n)
		}
	}
	if codes[boldCode] == 0 || codes[reverseCode] == 0 {
		t.Errorf("bold was sent %d times, reverse %d times", codes[boldCode], codes[reverseCode])
	}
}

// looksSunlight is black on white: no stretch of text without a light ground,
// but for what is turned round on purpose.
func looksSunlight(t *testing.T) {
	t.Parallel()
	raw, _ := toured(t, nil, "--theme", "sunlight")
	grounds := 0
	for _, m := range styles.FindAllStringSubmatch(raw, -1) {
		if strings.Contains(m[1], "48;5;231") {
			grounds++
		} else if strings.Contains(m[1], "38;5;") && !strings.Contains(m[1], "38;5;231") {
			t.Errorf("dark text on no light ground: %q", m[1])
		}
	}
	dark, _ := toured(t, nil)
	if grounds == 0 || strings.Contains(dark, "48;5;231") {
		t.Errorf("a light ground was sent %d times in the sunlight theme; in the dark theme: %v", grounds, strings.Contains(dark, "48;5;231"))
	}
	if styleCodes(raw)[boldCode] == 0 {
		t.Error("nothing is bold in sunlight")
	}
}

// looksPlain has plain characters alone.
func looksPlain(t *testing.T) {
	t.Parallel()
	_, shown := toured(t, nil, "--plain")
	told := map[rune]bool{}
	for _, screen := range shown {
		for line := range strings.Lines(screen) {
			for _, r := range line {
				if r > 0x7e && !told[r] {
					told[r] = true
					t.Errorf("%q is no plain character, in: %s", r, strings.TrimSpace(line))
				}
			}
		}
	}
	if !strings.Contains(strings.Join(shown, ""), strings.Repeat("-", 80)) {
		t.Error("no screen was drawn")
	}
}
