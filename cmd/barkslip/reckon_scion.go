package main

import (
	"fmt"

	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

var cutSum = sum{
	name: "cut", short: "The cuts and nails of one scion",
	long:    "Takes the scion as a cylinder. Lengths run along its axis, not along the cut.",
	example: "barkslip reckon cut --thick 0.4in\nbarkslip reckon cut --thick 10mm --long-cut 60mm --units metric",
	options: []option{
		{name: "thick", value: "LENGTH", says: "thickness of the scion over its bark", need: true},
		{name: "bark", value: "LENGTH", says: "thickness of its bark", usual: trade.BarkThick},
		{name: "long-cut", value: "LENGTH", says: "length of the long cut", usual: trade.LongCut},
		{name: "tip", value: "LENGTH", says: "thickness the long cut leaves at the end", usual: trade.TipLeft},
		{name: "back", value: "LENGTH", says: "length of the back cut", usual: trade.BackCut},
		{name: "flap", value: "LENGTH", says: "thickness of the bark flap the nails pass", usual: trade.BarkFlap},
	},
	work: func(g *given, _ unit.System) (any, trade.Worked, error) {
		cut := scion.Cut{
			Thick: g.size("thick"), Bark: g.length("bark"), LongCut: g.size("long-cut"),
			Tip: g.length("tip"), Back: g.size("back"), Flap: g.length("flap"),
		}
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		answer, err := scion.Cuts(cut)
		return answer, answer.Work, err
	},
}

var stickSum = sum{
	name: "stick", short: "How to cut a stick into scions",
	long: "Nodes are given from the butt with what they carry: ps both buds, p the first\n" +
		"bud only, x none.",
	example: "barkslip reckon stick --length 24in --nodes \"1.5in:ps 3.2in:ps 5in:p 7in:x 9in:ps 11in:ps\"",
	options: []option{
		{name: "length", value: "LENGTH", says: "length of the stick", need: true},
		{name: "nodes", value: "NODES", says: "the nodes from the butt, PLACE:BUDS …", need: true, list: true},
		{name: "trim-butt", value: "LENGTH", says: "cut off at the butt first", usual: trade.TrimStored},
		{name: "trim-tip", value: "LENGTH", says: "cut off at the tip first", usual: trade.TrimStored},
		{name: "long-cut", value: "LENGTH", says: "long cut of a scion", usual: trade.LongCut},
		{name: "below", value: "LENGTH", says: "wood between long cut and lowest node", usual: trade.BelowNode},
		{name: "above", value: "LENGTH", says: "wood past the highest node", usual: trade.AboveNode},
		{name: "longest", value: "LENGTH", says: "the longest a scion may be", usual: trade.ScionLongest},
		{name: "per", value: "N", says: "nodes on a scion", usual: trade.NodesPerScion},
		{name: "thick-butt", value: "LENGTH", says: "thickness at the butt"},
		{name: "thick-tip", value: "LENGTH", says: "thickness at the tip"},
	},
	work: func(g *given, sys unit.System) (any, trade.Worked, error) {
		stick := scion.Stick{
			Length: g.length("length"), Nodes: read(g, "nodes", parseNodes),
			TrimButt: g.length("trim-butt"), TrimTip: g.length("trim-tip"), LongCut: g.length("long-cut"),
			Below: g.length("below"), Above: g.length("above"), Longest: g.length("longest"), Per: g.whole("per", 1, 10),
			ThickButt: g.size("thick-butt"), ThickTip: g.size("thick-tip"),
		}
		needBoth(g, "thick-butt", "thick-tip")
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		answer, err := scion.CutStick(stick)
		work := answer.Work
		for i, p := range answer.Scions {
			work.Answer = append(work.Answer, trade.Input{Name: fmt.Sprintf("scion %d, from the butt", i+1), Value: sys.Length(p.From) + " to " + sys.Length(p.To)})
		}
		return answer, work, err
	},
}

// parseNodes reads the nodes of a stick; a stick without any must be said so by
// giving none that carry buds.
func parseNodes(s string) ([]scion.Node, error) {
	nodes, err := scion.ParseNodes(s, 0)
	if err == nil && len(nodes) == 0 {
		_, none := scion.ParseNodes("?", 0)
		err = &unit.Error{Given: s, Accepted: accepts(none)}
	}
	return nodes, err
}

// needBoth faults the one of two options that is missing where the other is
// given.
func needBoth(g *given, x, y string) {
	if g.has(x) == g.has(y) {
		return
	}
	if g.has(x) {
		x, y = y, x
	}
	g.fail(g.fault(x, "", "it is needed with --"+y))
}
