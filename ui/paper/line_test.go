package paper

import (
	"strings"
	"testing"

	"github.com/mattn/go-runewidth"
	"pgregory.net/rapid"
)

// texts draws text of narrow, wide and combining characters.
func texts() *rapid.Generator[string] {
	return rapid.StringOf(rapid.SampledFrom([]rune("abc  xyz 3/8 木大きな é\u0301 🌳─◆…ה")))
}

func drawLine(t *rapid.T) Line {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Span {
		return Span{texts().Draw(t, "text"), Ink(rapid.IntRange(0, int(inks)-1).Draw(t, "ink"))}
	}), 0, 5).Draw(t, "line")
}

func TestWidth(t *testing.T) {
	for text, want := range map[string]int{"": 0, "abc": 3, "木": 2, "é": 1, "e\u0301": 1, "─◆": 2, "3 3/8 in": 8} {
		if got := Width(text); got != want {
			t.Errorf("%q is %d wide, want %d", text, got, want)
		}
	}
}

func TestShorten(t *testing.T) {
	for _, c := range []struct {
		text string
		w    int
		want string
	}{{"Lantern", 7, "Lantern"}, {"Lantern", 6, "Lante…"}, {"Lantern", 1, "…"}, {"Lantern", 0, ""}, {"Lantern", -3, ""}, {"木木木", 6, "木木木"},
		{"木木木", 5, "木木…"}, {"木木木", 4, "木…"}, {"", 3, ""}} {
		if got := Shorten(c.text, c.w); got != c.want {
			t.Errorf("%q in %d: %q, want %q", c.text, c.w, got, c.want)
		}
	}
}

// TestCut sees that a line cut is never too wide, and is left alone where it
// fits.
func TestCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, w := drawLine(t), rapid.IntRange(0, 60).Draw(t, "w")
		cut := l.Cut(w)
		if cut.Width() > w {
			t.Fatalf("%d wide in %d: %q", cut.Width(), w, cut)
		}
		if l.Width() <= w && flat(cut) != flat(l) {
			t.Fatalf("%q became %q", flat(l), flat(cut))
		}
		if l.Width() > w && w > 0 && !strings.Contains(flat(cut), "…") {
			t.Fatalf("%q lost text without a sign: %q", flat(l), flat(cut))
		}
	})
}

func flat(l Line) string {
	var b strings.Builder
	for _, s := range l {
		b.WriteString(s.Text)
	}
	return b.String()
}

// TestWrap sees that no word is lost and no line too wide.
func TestWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, w := texts().Draw(t, "text"), rapid.IntRange(2, 40).Draw(t, "w")
		lines := Wrap(text, w)
		for _, l := range lines {
			if Width(l) > w {
				t.Fatalf("%q is wider than %d", l, w)
			}
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if squeeze(strings.Join(lines, " ")) != squeeze(text) {
			t.Fatalf("%q became %q", text, lines)
		}
	})
}

func TestWrapWords(t *testing.T) {
	got := strings.Join(Wrap("Wipe it  and look again at 9:15", 12), "|")
	if want := "Wipe it and|look again|at 9:15"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := Wrap("anything", 0); got != nil {
		t.Errorf("%q in no columns", got)
	}
}

// TestBeside sees that the second line begins at its column.
func TestBeside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, w := drawLine(t), rapid.IntRange(0, 60).Draw(t, "w")
		both := l.Beside(w, Text(Strong, "here"))
		if both.Width() != w+4 || !strings.HasSuffix(flat(both), "here") {
			t.Fatalf("%d wide: %q", both.Width(), flat(both))
		}
	})
}

// TestPaint makes exactly the window asked for, whatever the lines.
func TestPaint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(1, 90).Draw(t, "w"), rapid.IntRange(1, 12).Draw(t, "h")
		lines := rapid.SliceOfN(rapid.Custom(drawLine), 0, 20).Draw(t, "lines")
		theme := ThemeNamed(rapid.SampledFrom(ThemeNames).Draw(t, "theme"))
		got := strings.Split(bare(theme.Paint(lines, w, h)), "\n")
		if len(got) != h {
			t.Fatalf("%d lines, want %d", len(got), h)
		}
		for _, l := range got {
			if runewidth.StringWidth(l) != w {
				t.Fatalf("%d wide, want %d: %q", runewidth.StringWidth(l), w, l)
			}
		}
	})
}

func TestPadAndAdd(t *testing.T) {
	l := Text(Plain, "ab").Pad(5).Add(Strong, "c")
	if flat(l) != "ab   c" || l.Pad(3).Width() != 6 {
		t.Errorf("%q", flat(l))
	}
}
