package pdf

import (
	"sync"

	"golang.org/x/text/unicode/norm"
)

// forms are the shapes of an Arabic letter: alone, at the end of a joined
// group, at its beginning, within it; 0 where it has no such shape.
type forms [4]rune

const (
	alone = iota
	final
	initial
	medial
)

// shapes are the shapes of each letter, read from the compatibility forms, which
// stand in that order one behind the other.
var shapes = sync.OnceValue(func() map[rune]*forms {
	out := map[rune]*forms{}
	for r := rune(0xfe80); r <= 0xfef4; r++ {
		base := []rune(norm.NFKC.String(string(r)))
		if len(base) != 1 {
			continue
		}
		of := out[base[0]]
		if of == nil {
			of = &forms{}
			out[base[0]] = of
		}
		for i := range of {
			if of[i] == 0 {
				of[i] = r
				break
			}
		}
	}
	return out
})

// joined gives the letters of Arabic words the shapes they have beside one
// another; a mark above or below a letter does not part it from the next.
func joined(words string) string {
	in, out, shapes := []rune(words), []rune(words), shapes()
	for i, r := range in {
		of := shapes[r]
		if of == nil {
			continue
		}
		before, after := neighbour(in, i, -1), neighbour(in, i, 1)
		fromBefore := shapes[before] != nil && shapes[before][initial] != 0 && of[final] != 0
		toAfter := of[initial] != 0 && shapes[after] != nil && shapes[after][final] != 0
		shape := of[alone]
		switch {
		case fromBefore && toAfter:
			shape = of[medial]
		case fromBefore:
			shape = of[final]
		case toAfter:
			shape = of[initial]
		}
		if shape != 0 && plain().advance(shape) != none && strong().advance(shape) != none {
			out[i] = shape
		}
	}
	return string(out)
}

// neighbour is the letter beside one, marks passed over; 0 at the ends.
func neighbour(in []rune, i, by int) rune {
	for i += by; i >= 0 && i < len(in); i += by {
		if norm.NFC.PropertiesString(string(in[i])).CCC() == 0 {
			return in[i]
		}
	}
	return 0
}
