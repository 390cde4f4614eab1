package core

import (
	"strings"

	"barkslip/core/scion"
	"barkslip/core/unit"
)

// stickEntry takes a stick as it is read off with a tape: its length, then each
// node from the butt with the buds it carries; a thickness at butt and tip may
// stand behind t.
func (c *Case) stickEntry() *Entry {
	return &Entry{Asks: "length, then nodes: 24 1.5:ps 3.2:ps 5:p 7:x (t.5/.35)", Read: func(text string) ([]Body, error) {
		stick, err := c.ReadStick(text)
		if err != nil {
			return nil, err
		}
		cut, err := scion.CutStick(stick)
		if err != nil {
			return nil, err
		}
		if cut.Total == 0 {
			return nil, &unit.Error{Given: text, Accepted: "a stick that gives a scion: two sound nodes together, with room for the long cut below"}
		}
		w := c.wood()
		w.Nodes, w.Pieces = nil, c.pieces(stick, cut)
		return []Body{&w}, nil
	}}
}

// ReadStick reads "24 1.5:ps 3.2:ps 5:p 7:x t.5/.35" in the block's units.
func (c *Case) ReadStick(text string) (scion.Stick, error) {
	bad := &unit.Error{Given: text, Accepted: "the stick's length, then its nodes: 24 1.5:ps 3.2:ps 5:p 7:x"}
	words := strings.Fields(text)
	if len(words) < 2 {
		return scion.Stick{}, bad
	}
	long, err := c.readLength(words[0], 0, 3*unit.Metre)
	if err != nil {
		return scion.Stick{}, err
	}
	var nodes, thick []string
	for _, w := range words[1:] {
		if ends, ok := strings.CutPrefix(w, "t"); ok {
			thick = strings.Split(ends, "/")
			continue
		}
		nodes = append(nodes, w)
	}
	read, err := scion.ParseNodes(strings.Join(nodes, " "), c.B.Units.Bare())
	if err != nil {
		return scion.Stick{}, err
	}
	stick := scion.StickDefaults(long.Length, read)
	if l := c.wood().LongCut; l.Given() {
		stick.LongCut = l.Length
	}
	if len(thick) > 0 {
		ends, err := c.readLengths(strings.Join(thick, " "), 2, 2*unit.Inch)
		if err != nil {
			return stick, err
		}
		stick.ThickButt, stick.ThickTip = ends[0].Length, ends[len(ends)-1].Length
	}
	return stick, nil
}

// pieces are the scions of a cut stick as the record keeps them.
func (c *Case) pieces(stick scion.Stick, cut scion.StickAnswer) []Piece {
	var out []Piece
	for _, s := range cut.Scions {
		p := Piece{From: Measured(s.From, c.B.Units), To: Measured(s.To, c.B.Units)}
		if s.Thick != nil {
			p.Thickness = Measured(*s.Thick, c.B.Units)
		}
		for _, n := range s.Nodes {
			p.Nodes = append(p.Nodes, Node{budsOf[stick.Nodes[n].Buds]})
		}
		out = append(out, p)
	}
	return out
}

var budsOf = map[scion.Buds]Buds{scion.BothBuds: Paired, scion.FirstBud: First, scion.NoBud: NoBud}
