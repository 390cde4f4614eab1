package scion

import (
	"strconv"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Stick is a stick of scion wood and how it is to be cut. Places run from the
// butt.
type Stick struct {
	Length   unit.Length
	Nodes    []Node // in order from the butt
	TrimButt unit.Length
	TrimTip  unit.Length
	LongCut  unit.Length // of a scion, under `Below`
	Below    unit.Length // wood under a scion's lowest node
	Above    unit.Length // wood over a scion's highest node
	Longest  unit.Length // a scion may be
	Per      int         // nodes on a scion

	ThickButt, ThickTip unit.Length // 0 where not measured
}

// StickDefaults is a stick of the given length and nodes cut in the usual way.
func StickDefaults(length unit.Length, nodes []Node) Stick {
	return Stick{
		Length: length, Nodes: nodes, TrimButt: trade.TrimStored, TrimTip: trade.TrimStored,
		LongCut: trade.LongCut, Below: trade.BelowNode, Above: trade.AboveNode,
		Longest: trade.ScionLongest, Per: trade.NodesPerScion,
	}
}

// Piece is one scion cut from a stick.
type Piece struct {
	From   unit.Length  `json:"from_mm"` // from the butt
	To     unit.Length  `json:"to_mm"`
	Nodes  []int        `json:"nodes"`    // counted from 0 at the butt
	Paired bool         `json:"paired"`   // every node has both buds
	Thick  *unit.Length `json:"thick_mm"` // at the middle; nil where not known
}

// StickAnswer is the best way to cut a stick; it may hold no scion at all.
type StickAnswer struct {
	Scions []Piece      `json:"scions"` // from butt to tip
	Paired int          `json:"paired"` // how many have both buds at every node
	Total  int          `json:"total"`
	Used   unit.Length  `json:"used_mm"`
	Work   trade.Worked `json:"because"`
}

// CutStick finds the scions: most of those whose nodes all have both buds, then
// most scions, then least wood. Nodes out of order or off the stick, and lengths
// that cannot be, are a *trade.Impossible.
func CutStick(s Stick) (StickAnswer, error) {
	if err := s.check(); err != nil {
		return StickAnswer{}, err
	}
	scions := s.possible()
	pieces := make([]piece, len(scions))
	for i, p := range scions {
		pieces[i] = piece{from: p.From.MM(), to: p.To.MM(), worth: worth{count(p.Paired), 1, (p.From - p.To).MM()}}
	}
	a := StickAnswer{Scions: []Piece{}}
	for _, i := range best(pieces) {
		p := scions[i]
		a.Scions = append(a.Scions, p)
		a.Paired += int(count(p.Paired))
		a.Used += p.To - p.From
	}
	a.Total = len(a.Scions)
	a.Work = s.work(a)
	return a, nil
}

func count(is bool) float64 {
	if is {
		return 1
	}
	return 0
}

// possible lists every scion the stick could give, in order from the butt.
func (s Stick) possible() []Piece {
	var out []Piece
	for i := 0; i+s.Per <= len(s.Nodes); i++ {
		on := s.Nodes[i : i+s.Per]
		p := Piece{From: on[0].At - s.Below - s.LongCut, To: on[s.Per-1].At + s.Above, Paired: true}
		usable := p.From >= s.TrimButt-hair && p.To <= s.Length-s.TrimTip+hair && p.To-p.From <= s.Longest+hair
		for j, n := range on {
			p.Nodes = append(p.Nodes, i+j)
			p.Paired = p.Paired && n.Buds == BothBuds
			usable = usable && n.Buds != NoBud
		}
		if usable {
			p.Thick = s.thick((p.From + p.To) / 2)
			out = append(out, p)
		}
	}
	return out
}

// thick is the stick's thickness at a place, nil where it was not measured.
func (s Stick) thick(at unit.Length) *unit.Length {
	if s.ThickButt == 0 {
		return nil
	}
	t := s.ThickButt + (s.ThickTip-s.ThickButt)*at/s.Length
	return &t
}

func (s Stick) work(a StickAnswer) trade.Worked {
	w := trade.Worked{
		Question: "How is the stick cut into scions?",
		Answer: []trade.Input{
			{Name: "scions with both buds at every node", Value: a.Paired},
			{Name: "scions", Value: a.Total}, {Name: "wood used", Value: a.Used},
		},
		Formula: "Of all sets of scions that do not overlap: most with both buds at every node, then most scions, then least wood. " +
			"A scion starts a long cut and a little under its lowest node and ends a little past its highest.",
		Inputs: []trade.Input{
			{Name: "stick", Value: s.Length}, {Name: "nodes", Value: len(s.Nodes)},
			{Name: "trimmed at the butt", Value: s.TrimButt}, {Name: "trimmed at the tip", Value: s.TrimTip},
			{Name: "long cut", Value: s.LongCut}, {Name: "below the lowest node", Value: s.Below},
			{Name: "above the highest node", Value: s.Above}, {Name: "longest scion", Value: s.Longest},
			{Name: "nodes on a scion", Value: strconv.Itoa(s.Per)},
		},
		Facts: []trade.Fact{
			trade.TwoNodes, trade.SingleBudded, trade.StickEnds, trade.RecutFaces,
			trade.ScionLength, trade.LongCutLength, trade.StickGives, trade.BestStick,
		},
	}
	if s.ThickButt > 0 {
		w.Inputs = append(w.Inputs, trade.Input{Name: "thick at the butt", Value: s.ThickButt}, trade.Input{Name: "thick at the tip", Value: s.ThickTip})
		w.Assumed = []string{"the stick tapers evenly"}
		w.Facts = append(w.Facts, trade.EvenTaper)
	}
	return w
}
