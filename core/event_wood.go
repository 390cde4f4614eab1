package core

// WoodChosen is the scion wood taken for a stump.
type WoodChosen struct {
	Lot       ID     // None if of no recorded lot
	Variety   string // as on the label
	Thickness Measure
	Nodes     []Node  // of each scion, lowest first
	LongCut   Measure // of each scion; 0 for the usual length
	Pieces    []Piece // cut from one stick, where that was reckoned
}

// Piece is one scion cut from a stick.
type Piece struct {
	From, To  Measure // from the butt of the stick
	Thickness Measure
	Nodes     []Node
}

func (p *Piece) fields(f fields) {
	f.length("from", &p.From)
	f.length("to", &p.To)
	f.length("thickness", &p.Thickness)
	nodes(f, &p.Nodes)
}

// Node is one node of a scion.
type Node struct{ Buds Buds }

// Kind is wood-chosen.
func (*WoodChosen) Kind() string { return "wood-chosen" }

func (b *WoodChosen) fields(f fields) {
	f.id("lot", &b.Lot)
	f.text("variety", &b.Variety)
	f.length("thickness", &b.Thickness)
	nodes(f, &b.Nodes)
	f.length("long_cut", &b.LongCut)
	listOf(f, "pieces", &b.Pieces, (*Piece).fields)
}

func nodes(f fields, v *[]Node) {
	listOf(f, "nodes", v, func(n *Node, f fields) { word(f, "buds", &n.Buds) })
}

func checkNodes(nodes []Node) error {
	for _, n := range nodes {
		if err := oneOf("buds", n.Buds, false, Paired, First, NoBud); err != nil {
			return err
		}
	}
	return nil
}

func (*WoodChosen) question() string { return "wood" }

func (b *WoodChosen) check() error {
	for _, p := range b.Pieces {
		if err := checkNodes(p.Nodes); err != nil {
			return err
		}
	}
	return checkNodes(b.Nodes)
}

func (b *WoodChosen) apply(_ *Stump, a *Attempt, e Event) { a.Wood = standing(e, *b) }
