package walk

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/unit"
)

// stickEntry takes a stick as it is read off with a tape: its length, then each
// node from the butt with the buds it carries; a thickness at butt and tip may
// stand behind t.
func (c *Case) stickEntry() *Entry {
	return &Entry{Asks: "length, then nodes: " + c.stickExample() + " (ps both buds, p first only, x none)", Read: func(text string) ([]record.Body, error) {
		stick, err := c.ReadStick(text)
		if err != nil {
			return nil, err
		}
		cut, err := scion.CutStick(stick)
		if err != nil {
			return nil, err
		}
		if cut.Total == 0 {
			return nil, c.noScion(stick)
		}
		w := c.wood()
		w.Nodes, w.Pieces = nil, c.pieces(stick, cut)
		return []record.Body{&w}, nil
	}}
}

// stickExample is the length of a stick, then its nodes.
func (c *Case) stickExample() string { return c.eg("24 4:ps 5.2:p 7:x", "60 10:ps 13:p 18:x") }

// noScion says what a stick lacks to give a scion.
func (c *Case) noScion(s scion.Stick) error {
	return fmt.Errorf("that stick gives no scion: one needs %d nodes with buds, the lower %s or more from the butt, the upper %s from the tip, in %s at most",
		s.Per, c.B.Units.Figure(s.TrimButt+s.LongCut+s.Below), c.B.Units.Figure(s.TrimTip+s.Above), c.B.Units.Figure(s.Longest))
}

// StickHint is what is typed for a stick, line by line.
func (c *Case) StickHint() []string {
	return []string{
		c.stickExample(),
		"",
		"first the stick's length, then each node:",
		"how far from the butt, and its buds:",
		"ps  both, the second under the first",
		"p   the first only",
		"x   none that can grow",
		c.eg("t.5/.35", "t1.3/.9") + "  how thick at butt and tip, if you like",
	}
}

// StickWords says how many scions a stick gives and how many more are needed.
func (c *Case) StickWords(cut scion.StickAnswer) string {
	return "It gives " + unit.Count(cut.Total, "scion") + "." + c.more(cut.Total)
}

// moreSticks says how many scions the stick at hand leaves wanting.
func (c *Case) moreSticks() string { return c.more(len(c.wood().Pieces)) }

func (c *Case) more(given int) string {
	if wanting := c.A.Marked() - given; wanting > 0 {
		return fmt.Sprintf(" %d more needed for %s.", wanting, unit.Count(c.A.Marked(), "slot"))
	}
	return ""
}

// ReadStick reads "24 4:ps 5.2:ps 7:p 8:x t.5/.35" in the block's units.
func (c *Case) ReadStick(text string) (scion.Stick, error) {
	bad := &unit.Error{Given: text, Accepted: "the stick's length, then its nodes: " + c.stickExample()}
	words := strings.Fields(text)
	if len(words) < 2 {
		return scion.Stick{}, bad
	}
	n := 1
	if !strings.Contains(words[1], ":") {
		n = lengthWords(words)
	}
	long, err := c.readLength(strings.Join(words[:n], " "), 0, 3*unit.Metre)
	if err != nil {
		return scion.Stick{}, err
	}
	var nodes, thick []string
	for _, w := range words[n:] {
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
func (c *Case) pieces(stick scion.Stick, cut scion.StickAnswer) []record.Piece {
	var out []record.Piece
	for _, s := range cut.Scions {
		p := record.Piece{From: record.Measured(s.From, c.B.Units), To: record.Measured(s.To, c.B.Units)}
		if s.Thick != nil {
			p.Thickness = record.Measured(*s.Thick, c.B.Units)
		}
		for _, n := range s.Nodes {
			p.Nodes = append(p.Nodes, record.Node{Buds: budsOf[stick.Nodes[n].Buds]})
		}
		out = append(out, p)
	}
	return out
}

var budsOf = map[scion.Buds]record.Buds{scion.BothBuds: record.Paired, scion.FirstBud: record.First, scion.NoBud: record.NoBud}
