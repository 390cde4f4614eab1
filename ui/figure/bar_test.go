package figure

import (
	"strings"
	"testing"
)

// A bar is as long as its share, to half a column, and never nothing for a share
// above 0.
func TestBarIsAsLongAsItsShare(t *testing.T) {
	for _, c := range []struct {
		share float64
		open  bool
		mode  Mode
		want  string
	}{
		{0.5, false, Braille, "━━━━━     "}, {0.5, true, Braille, "━━━━━─────"}, {0.55, true, Braille, "━━━━━╾────"}, {0.55, false, Braille, "━━━━━╸    "},
		{0.001, true, Braille, "╾─────────"}, {0, true, Braille, "──────────"}, {2, true, Braille, "━━━━━━━━━━"},
		{0.5, true, ASCII, "=====-----"}, {0.001, false, ASCII, "=         "}, {0, false, ASCII, "          "},
	} {
		if got := strings.Join(Bar{Share: c.share, Open: c.open}.Draw(10, c.mode).Lines(), ""); got != c.want {
			t.Errorf("%v open %v: %q, want %q", c.share, c.open, got, c.want)
		}
	}
}
