package scion

import (
	"strings"

	"barkslip/core/unit"
)

// Buds are what a node carries.
type Buds uint8

// The kinds of node.
const (
	NoBud    Buds = iota // x: none that can grow
	FirstBud             // p: the first bud only
	BothBuds             // ps: the first and the second bud under it
)

// The marks of the nodes as they are typed.
var budMarks = []string{NoBud: "x", FirstBud: "p", BothBuds: "ps"}

func (b Buds) String() string { return budMarks[b] }

// Node is one node of a stick and how far it stands from the butt.
type Node struct {
	At   unit.Length
	Buds Buds
}

const nodesAccepted = "nodes from the butt with what they carry, such as 1.5in:ps 3.2in:p 7in:x (ps both buds, p first bud only, x none)"

// ParseNodes reads nodes such as "1.5in:ps 3.2in:ps 5in:p 7in:x", parted by
// spaces or commas; a length may hold spaces itself (3 1/2in:ps). Bare numbers
// are taken in units of bare; with bare 0 they are refused. No text is no nodes.
func ParseNodes(s string, bare unit.Length) ([]Node, error) {
	var nodes []Node
	rest := strings.Trim(s, separators)
	for rest != "" {
		place, after, found := strings.Cut(rest, ":")
		mark, more := firstWord(after)
		buds, known := parseBuds(mark)
		if !found || !known {
			return nil, &unit.Error{Given: rest[:len(rest)-len(more)], Accepted: nodesAccepted}
		}
		at, err := unit.ParseLength(place, bare)
		if err != nil {
			return nil, err
		}
		nodes = append(nodes, Node{At: at, Buds: buds})
		rest = strings.TrimLeft(more, separators)
	}
	return nodes, nil
}

const separators = " \t\r\n,;"

// firstWord splits the text at the first separator behind a word.
func firstWord(s string) (word, rest string) {
	s = strings.TrimLeft(s, " ")
	if i := strings.IndexAny(s, separators); i >= 0 {
		return s[:i], s[i:]
	}
	return s, ""
}

func parseBuds(mark string) (Buds, bool) {
	for b, m := range budMarks {
		if strings.EqualFold(mark, m) {
			return Buds(b), true
		}
	}
	return NoBud, false
}
