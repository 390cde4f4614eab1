package figure

import "math/bits"

// braille is the Braille pattern with the dots of a cell.
func braille(dots uint8) rune {
	// The pattern's bits run 1-3 down the left, 4-6 down the right, then 7 and
	// 8 below (Unicode, chapter 21.1).
	places := [8]uint8{0, 3, 1, 4, 2, 5, 6, 7}
	var r rune
	for i, place := range places {
		if dots>>i&1 == 1 {
			r |= 1 << place
		}
	}
	return 0x2800 + r
}

// signs is the sign that looks most like the dots of a cell.
var signs = func() (table [256]rune) {
	for dots := range table {
		table[dots] = signFor(uint8(dots))
	}
	return table
}()

// signFor chooses by where the dots lie and which way they lean.
func signFor(dots uint8) rune {
	n := bits.OnesCount8(dots)
	if n == 0 {
		return ' '
	}
	top, bottom := bits.TrailingZeros8(dots)/2, (7-bits.LeadingZeros8(dots))/2
	if n >= 6 {
		return '#'
	}
	if bottom-top <= 1 {
		return flat(n, top, bottom)
	}
	return upright(dots, n)
}

// flat is the sign for dots in one line or two neighbouring ones.
func flat(n, top, bottom int) rune {
	switch {
	case bottom <= 1 && (n == 1 || top == 0):
		return '\''
	case top >= 2 && n == 1 || top == 2 && bottom == 3:
		return '.'
	case top == 3:
		return '_'
	case n >= 4:
		return '='
	}
	return '-'
}

// upright is the sign for dots spread over three lines or four.
func upright(dots uint8, n int) rune {
	const left = 0b01010101
	if n == 4 && dots&left == dots>>1&left {
		return '='
	}
	var rows, count [2]int
	for row := range 4 {
		for side := range 2 {
			if dots>>(2*row+side)&1 == 1 {
				rows[side] += row
				count[side]++
			}
		}
	}
	switch side := max(count[0], count[1]); {
	case side == n && n == 2:
		return ':'
	case side == n || side >= 3 && n <= side+1:
		return '|'
	}
	lean := float64(rows[0])/float64(count[0]) - float64(rows[1])/float64(count[1])
	switch {
	case lean >= 1:
		return '/'
	case lean <= -1:
		return '\\'
	case n >= 5:
		return '*'
	case n == 4:
		return '+'
	}
	return '|'
}
