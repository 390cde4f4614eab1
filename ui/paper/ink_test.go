package paper

import (
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/mattn/go-runewidth"
	"github.com/muesli/termenv"
)

func TestMain(m *testing.M) {
	lipgloss.SetColorProfile(termenv.ANSI256)
	runewidth.DefaultCondition.EastAsianWidth = false
	os.Exit(m.Run())
}

var escapes = regexp.MustCompile("\x1b\\[[0-9;]*m")

func bare(s string) string { return escapes.ReplaceAllString(s, "") }

// looks are the inks of each theme.
var looks = map[string][inks]look{"dark": dark, "sunlight": sunlight, "plain": plain}

// TestThemesAreNamed sees that each theme is had by its name, and that any
// other name gives the dark one.
func TestThemesAreNamed(t *testing.T) {
	for _, name := range ThemeNames {
		if got := ThemeNamed(name).Name; got != name {
			t.Errorf("%s is %s", name, got)
		}
	}
	for _, name := range []string{"", "neon"} {
		if got := ThemeNamed(name).Name; got != "dark" {
			t.Errorf("%q is %s", name, got)
		}
	}
}

// TestPlainThemeHasNoColour and yet sets the question, the cursor and what must
// not be missed apart.
func TestPlainThemeHasNoColour(t *testing.T) {
	p := ThemeNamed("plain")
	for _, i := range Inks() {
		for _, code := range strings.Split(strings.Trim(p.ink[i][0], "\x1b[m"), ";") {
			if code != "" && code != "1" && code != "4" && code != "7" {
				t.Errorf("%s has code %s", i, code)
			}
		}
	}
	for _, i := range []Ink{Strong, Accent, Warn, Turned, Alarm, Lined, Present} {
		if p.ink[i] == p.ink[Plain] {
			t.Errorf("%s is like plain text", i)
		}
	}
}

// TestEveryInkEnds sees that no ink runs on behind its text.
func TestEveryInkEnds(t *testing.T) {
	for _, name := range ThemeNames {
		theme := ThemeNamed(name)
		for _, i := range Inks() {
			if before, after := theme.ink[i][0], theme.ink[i][1]; (before == "") != (after == "") || before != "" && after != "\x1b[0m" {
				t.Errorf("%s, %s: %q and %q", name, i, before, after)
			}
		}
	}
}

// TestCursorAndAlarmStandOut in every theme, apart from the text around them and
// from each other.
func TestCursorAndAlarmStandOut(t *testing.T) {
	for _, name := range ThemeNames {
		theme := ThemeNamed(name)
		apart := []Ink{Plain, Strong, Turned, Alarm}
		for n, i := range apart {
			for _, other := range apart[:n] {
				if theme.ink[i] == theme.ink[other] {
					t.Errorf("%s: %s looks like %s", name, i, other)
				}
			}
		}
	}
}

// TestSunlightIsBlackOnWhite: text is black on white, bold only the question and
// the keys, nothing underlined but disagreement, turned only what must stand out.
func TestSunlightIsBlackOnWhite(t *testing.T) {
	for _, i := range []Ink{Plain, Strong} {
		if l := sunlight[i]; l.fore != black || l.back != white {
			t.Errorf("%s is %+v", i, l)
		}
	}
	for _, i := range Inks() {
		l, turned := sunlight[i], slices.Contains([]Ink{Turned, Alarm, Present, Late}, i)
		if !turned && l.bold != slices.Contains([]Ink{Strong, Accent}, i) {
			t.Errorf("%s: bold %v", i, l.bold)
		}
		if l.line != (i == Lined) {
			t.Errorf("%s: underlined %v", i, l.line)
		}
		if turned != (l.back != white) {
			t.Errorf("%s stands on %v", i, l.back)
		}
	}
}

// TestEveryCellHasItsGround: what is painted in the themes that have a ground is on
// it to the last cell, so that the terminal's own does not show.
func TestEveryCellHasItsGround(t *testing.T) {
	for _, name := range []string{"dark", "sunlight"} {
		for _, line := range strings.Split(ThemeNamed(name).Paint([]Line{Text(Plain, "short"), nil}, 12, 4), "\n") {
			rest := regexp.MustCompile("\x1b\\[[0-9;]*48;[0-9;]*m[^\x1b]*\x1b\\[0m").ReplaceAllString(line, "")
			if rest != "" {
				t.Errorf("%s: %q is on no ground", name, rest)
			}
		}
	}
}

// least is the least contrast of a theme with a ground.
var least = map[string]float64{"dark": 4.5, "sunlight": 7}

// TestContrast holds every ink on its ground against the least contrast, by the
// formula of WCAG 2.2, on each kind of terminal. Of sixteen colours those of the
// first colour screens are taken, which are the darkest in use; bold may be
// brighter there.
func TestContrast(t *testing.T) {
	for name, least := range least {
		for _, i := range Inks() {
			l := looks[name][i]
			pairs := map[string][2]rgb{
				"all colours": {hex(l.fore.full), hex(l.back.full)},
				"256 colours": {of256(l.fore.of256), of256(l.back.of256)},
				"16 colours":  {of16(l.fore.of16, false), of16(l.back.of16, false)},
				"16, bold":    {of16(l.fore.of16, l.bold), of16(l.back.of16, false)},
			}
			for kind, p := range pairs {
				if got := contrast(p[0], p[1]); got < least {
					t.Errorf("%s, %s, %s: contrast %.1f, want %.1f", name, i, kind, got, least)
				}
			}
		}
	}
}

// TestContrastFormula on the pairs that WCAG names.
func TestContrastFormula(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{{"#000000", "#ffffff", 21}, {"#ffffff", "#ffffff", 1}, {"#777777", "#ffffff", 4.48}, {"#0000ff", "#ffffff", 8.59}} {
		if got := contrast(hex(c.a), hex(c.b)); math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s on %s: %.2f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

// rgb is a colour, its parts from 0 to 255.
type rgb [3]float64

func hex(s string) (c rgb) {
	n, err := strconv.ParseUint(strings.TrimPrefix(s, "#"), 16, 32)
	if err != nil {
		panic(err)
	}
	return rgb{float64(n >> 16), float64(n >> 8 & 255), float64(n & 255)}
}

// of256 is a colour of the 256 that no terminal's settings change: six steps of
// red, green and blue from 16 on, greys from 232.
func of256(s string) rgb {
	n, err := strconv.Atoi(s)
	if err != nil || n < 16 || n > 255 {
		panic("not a fixed colour of the 256: " + s)
	}
	if n >= 232 {
		grey := float64(8 + 10*(n-232))
		return rgb{grey, grey, grey}
	}
	steps := [6]float64{0, 95, 135, 175, 215, 255}
	return rgb{steps[(n-16)/36], steps[(n-16)/6%6], steps[(n-16)%6]}
}

// of16 is one of the sixteen; a bold one of the first eight may be shown as the
// bright one.
func of16(s string, bold bool) rgb {
	n, err := strconv.Atoi(s)
	if err != nil || n < 0 || n > 15 {
		panic("not one of the sixteen: " + s)
	}
	if bold && n < 8 {
		n += 8
	}
	high, low := 170.0, 0.0
	if n >= 8 {
		high, low = 255, 85
	}
	c := rgb{low, low, low}
	for part := range c {
		if n>>part&1 == 1 {
			c[part] = high
		}
	}
	return c
}

// contrast is (L1 + 0.05) / (L2 + 0.05) of the relative luminances.
func contrast(a, b rgb) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func luminance(c rgb) float64 {
	part := func(v float64) float64 {
		if v /= 255; v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c[0]) + 0.7152*part(c[1]) + 0.0722*part(c[2])
}
