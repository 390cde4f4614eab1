package record

import (
	"bytes"
	"cmp"
	"encoding/hex"
	"fmt"
	"strconv"
	"strings"
)

// ID names an event, a block or a lot: 128 random bits.
type ID [16]byte

// None is the ID of nothing.
var None ID

// String is 32 hexadecimal digits.
func (id ID) String() string { return hex.EncodeToString(id[:]) }

// Compare orders ids by their bytes.
func (id ID) Compare(other ID) int { return bytes.Compare(id[:], other[:]) }

// ParseID reads 32 hexadecimal digits.
func ParseID(s string) (ID, error) { return parseID([]byte(s)) }

func parseID(s []byte) (id ID, err error) {
	if len(s) == hex.EncodedLen(len(id)) {
		if _, err := hex.Decode(id[:], s); err == nil {
			return id, nil
		}
	}
	return None, fmt.Errorf("%q is not an id: 32 hexadecimal digits", s)
}

// MarshalText writes the hexadecimal form.
func (id ID) MarshalText() ([]byte, error) { return []byte(id.String()), nil }

// UnmarshalText reads the hexadecimal form.
func (id *ID) UnmarshalText(b []byte) (err error) {
	*id, err = parseID(b)
	return err
}

// StumpID says where a stump stands. Two laptops that add the same tree of the
// same block add one stump. Limb is 0 for a stump on the trunk, 1 and up for
// stumps on limbs of one tree.
type StumpID struct {
	Block ID
	Row   uint16
	Tree  uint16
	Limb  uint8
}

// NoStump belongs to events about no single stump.
var NoStump StumpID

// Letters is how many limbs go by a letter; those of a list past that go by
// their number.
const Letters = 26

// Greatest numbers a row, tree or limb may have.
const (
	MaxRow  = 9999
	MaxTree = 9999
	MaxLimb = 99
)

// Letter is the limb as people say it: b for the second, its number past z; ""
// for the trunk.
func (s StumpID) Letter() string {
	switch {
	case s.Limb == 0:
		return ""
	case s.Limb <= Letters:
		return string(rune('a' + s.Limb - 1))
	}
	return strconv.Itoa(int(s.Limb))
}

// Place is the stump within its block as people say it: 4/17, or 4/17b for its
// second limb.
func (s StumpID) Place() string {
	p := s.tree()
	if s.Limb > Letters {
		p = append(p, '/')
	}
	return string(append(p, s.Letter()...))
}

func (s StumpID) tree() []byte {
	p := strconv.AppendUint(make([]byte, 0, 12), uint64(s.Row), 10)
	return strconv.AppendUint(append(p, '/'), uint64(s.Tree), 10)
}

// Long is the stump in words: row 4 tree 17 limb b.
func (s StumpID) Long() string {
	p := fmt.Sprintf("row %d tree %d", s.Row, s.Tree)
	if s.Limb > 0 {
		p += " limb " + s.Letter()
	}
	return p
}

// String is block/row/tree, with /limb by its number where there is one; empty
// for none.
func (s StumpID) String() string {
	if s == NoStump {
		return ""
	}
	p := s.tree()
	if s.Limb > 0 {
		p = strconv.AppendUint(append(p, '/'), uint64(s.Limb), 10)
	}
	return s.Block.String() + "/" + string(p)
}

// lettered puts the letter of a limb at the end of a place into its number:
// 4/17b is 4/17/2.
func lettered(text string) string {
	text = strings.ToLower(strings.TrimSpace(text))
	end := len(text) - 1
	if end < 0 || text[end] < 'a' || text[end] > 'z' {
		return text
	}
	tree := strings.TrimRight(text[:end], "/ ")
	if !strings.Contains(tree, "/") {
		return text
	}
	return tree + "/" + strconv.Itoa(int(text[end]-'a')+1)
}

// ParsePlace reads 4/17, or a limb: 4/17b or 4/17/2.
func ParsePlace(text string) (row, tree uint16, limb uint8, err error) {
	bad := func() error {
		return fmt.Errorf("%q is not a place; give row/tree such as 4/17, or a limb such as 4/17b", text)
	}
	most, n, parts := [3]int{MaxRow, MaxTree, MaxLimb}, [3]int{}, 0
	for p := range strings.SplitSeq(lettered(text), "/") {
		if parts == len(n) {
			return 0, 0, 0, bad()
		}
		v, convErr := strconv.Atoi(strings.TrimSpace(p))
		if convErr != nil || v < 1 || v > most[parts] {
			return 0, 0, 0, bad()
		}
		n[parts] = v
		parts++
	}
	if parts < 2 {
		return 0, 0, 0, bad()
	}
	return uint16(n[0]), uint16(n[1]), uint8(n[2]), nil
}

// ParseStumpID reads block/row/tree, with /limb where there is one.
func ParseStumpID(text string) (StumpID, error) {
	if text == "" {
		return NoStump, nil
	}
	block, place, ok := strings.Cut(text, "/")
	if !ok {
		return NoStump, fmt.Errorf("%q is not a stump: block/row/tree", text)
	}
	id, err := ParseID(block)
	if err != nil {
		return NoStump, err
	}
	row, tree, limb, err := ParsePlace(place)
	return StumpID{id, row, tree, limb}, err
}

// Compare is the order of the list: by block, row, tree, limb.
func (s StumpID) Compare(o StumpID) int {
	return cmp.Or(s.Block.Compare(o.Block), cmp.Compare(s.Row, o.Row), cmp.Compare(s.Tree, o.Tree), cmp.Compare(s.Limb, o.Limb))
}

// WalkCompare is the order of walking: up one row and down the next.
func (s StumpID) WalkCompare(o StumpID) int {
	if c := cmp.Or(s.Block.Compare(o.Block), cmp.Compare(s.Row, o.Row)); c != 0 {
		return c
	}
	c := cmp.Compare(s.Tree, o.Tree)
	if s.Row%2 == 0 {
		c = -c
	}
	return cmp.Or(c, cmp.Compare(s.Limb, o.Limb))
}
