package pdf

import (
	_ "embed"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// The letters: a sans serif, narrow so that names fit, with Latin, Greek,
// Cyrillic, Hebrew and Arabic. Their licence is font/LICENSE.txt.
var (
	//go:embed font/DejaVuSansCondensed.ttf
	plainLetters []byte
	//go:embed font/DejaVuSansCondensed-Bold.ttf
	boldLetters []byte
)

// Letters tells how wide texts are; see sheet.Font.
type Letters struct{}

// units is the size at which letters are measured.
const units = 1000

// Width is how wide a text is in mm, as it is drawn.
func (Letters) Width(words string, points float64, bold bool) float64 {
	of := plain()
	if bold {
		of = strong()
	}
	sum := 0
	for _, r := range drawn(words) {
		sum += of.advance(r)
	}
	return float64(sum) / units * points * 25.4 / 72
}

// face is letters of one weight; seen keeps how wide each is.
type face struct {
	font *sfnt.Font
	buf  sfnt.Buffer
	seen map[rune]int
}

// The faces, read when a letter of one is first asked for.
var (
	plain  = sync.OnceValue(func() *face { return newFace(plainLetters) })
	strong = sync.OnceValue(func() *face { return newFace(boldLetters) })
)

func newFace(letters []byte) *face {
	f, err := sfnt.Parse(letters)
	if err != nil {
		panic(err) // they lie in the program
	}
	return &face{font: f, seen: map[rune]int{}}
}

// none marks a letter that is not there.
const none = -1

// advance is how wide a letter is, none where there is no such letter.
func (f *face) advance(r rune) int {
	if wide, ok := f.seen[r]; ok {
		return wide
	}
	wide := none
	if i, err := f.font.GlyphIndex(&f.buf, r); err == nil && i != 0 && r <= 0xffff {
		if w, err := f.font.GlyphAdvance(&f.buf, i, fixed.I(units), font.HintingNone); err == nil {
			wide = w.Round()
		}
	}
	f.seen[r] = wide
	return wide
}
