package core

// WoodChosen is the scion wood taken for a stump.
type WoodChosen struct {
	Lot       ID     // None if of no recorded lot
	Variety   string // as on the label
	Thickness Measure
	Nodes     []Node // of each scion, lowest first
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

func (b *WoodChosen) check() error { return checkNodes(b.Nodes) }

func (b *WoodChosen) apply(_ *Stump, a *Attempt, e Event) { a.Wood = standing(e, *b) }
