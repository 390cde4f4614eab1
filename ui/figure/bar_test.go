package figure

import (
	"testing"

	"pgregory.net/rapid"
)

// TestBarsAreToScale: the amounts end to end, each with its column, none past the
// width.
func TestBarsAreToScale(t *testing.T) {
	bar := func(most float64, of ...float64) Bar {
		b := Bar{Most: most}
		for i, n := range of {
			b.Stretches = append(b.Stretches, Stretch{Of: n, Sign: Shade(i).Sign(ASCII)})
		}
		return b
	}
	for _, c := range []struct {
		bar  Bar
		w    int
		want string
	}{
		{bar(10, 10), 5, "#####"}, {bar(10, 4, 6), 5, "##==="}, {bar(10, 1, 4), 10, "#===="}, {bar(1000, 1, 1), 10, "#="},
		{bar(1000, 999, 1), 4, "###="}, {bar(10, 0, 3), 10, "==="}, {bar(3, 1, 1, 1), 2, "=-"}, {bar(0, 1), 5, ""}, {bar(5, 10), 5, "#####"},
	} {
		if got := c.bar.Draw(c.w).Lines()[0]; got != c.want {
			t.Errorf("%v in %d columns is %q, want %q", c.bar, c.w, got, c.want)
		}
	}
}

// TestBarsKeepToTheirWidth whatever the amounts.
func TestBarsKeepToTheirWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Bar{Most: odd(t, "most")}
		for range rapid.IntRange(0, 4).Draw(t, "stretches") {
			b.Stretches = append(b.Stretches, Stretch{Of: odd(t, "of"), Sign: Full.Sign(Braille)})
		}
		w := rapid.IntRange(-3, 120).Draw(t, "w")
		if got, h := b.Draw(w).Size(); got > max(w, 0) || h != 1 {
			t.Fatalf("%d by %d in %d columns", got, h, w)
		}
	})
}
