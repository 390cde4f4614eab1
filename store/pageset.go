package store

import "math/bits"

// pageSet is a set of the pages of a file.
type pageSet []uint64 // a bit a page

// newPageSet is room for so many pages.
func newPageSet(pages uint64) pageSet { return make(pageSet, pages/64+1) }

// add says whether a page was not in the set yet. One for which there is no room never is.
func (s pageSet) add(id uint64) bool {
	at, bit := id/64, uint64(1)<<(id%64)
	if at >= uint64(len(s)) {
		return true
	}
	was := s[at]
	s[at] |= bit
	return was&bit == 0
}

// all gives the pages by their numbers.
func (s pageSet) all(yield func(uint64) bool) {
	for at, left := range s {
		for ; left != 0; left &= left - 1 {
			if !yield(uint64(at)*64 + uint64(bits.TrailingZeros64(left))) {
				return
			}
		}
	}
}
