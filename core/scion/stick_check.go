package scion

import (
	"fmt"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

const (
	mostPer   = 10  // nodes on a scion
	mostNodes = 500 // on a stick
)

// check refuses a stick that cannot be.
func (s Stick) check() error {
	for _, c := range []struct {
		option      string
		given       unit.Length
		least, most unit.Length
	}{
		{"length", s.Length, shortest, longStick},
		{"trim-butt", s.TrimButt, 0, longStick}, {"trim-tip", s.TrimTip, 0, longStick},
		{"long-cut", s.LongCut, shortest, longestCut}, {"below", s.Below, 0, longestCut}, {"above", s.Above, 0, longestCut},
		{"longest", s.Longest, shortest, longStick},
	} {
		if err := within(c.option, c.given, c.least, c.most); err != nil {
			return err
		}
	}
	if s.Per < 1 || s.Per > mostPer {
		return &trade.Impossible{Option: "per", Given: fmt.Sprint(s.Per), Accepted: fmt.Sprintf("1 to %d nodes on a scion", mostPer)}
	}
	if err := s.checkTaper(); err != nil {
		return err
	}
	return s.checkNodes()
}

func (s Stick) checkTaper() error {
	if s.ThickButt == 0 && s.ThickTip == 0 {
		return nil
	}
	if err := within("thick-butt", s.ThickButt, thinnest, thickest); err != nil {
		return err
	}
	return within("thick-tip", s.ThickTip, thinnest, thickest)
}

func (s Stick) checkNodes() error {
	if len(s.Nodes) > mostNodes {
		return &trade.Impossible{Option: "nodes", Given: fmt.Sprint(len(s.Nodes), " nodes"), Accepted: fmt.Sprintf("at most %d on a stick", mostNodes)}
	}
	for i, n := range s.Nodes {
		switch {
		case !(n.At >= 0 && n.At <= s.Length):
			return impossible("nodes", n.At, "nodes on the stick, up to "+show(s.Length)+" from the butt")
		case i > 0 && n.At <= s.Nodes[i-1].At:
			return impossible("nodes", n.At, "nodes in order from the butt, this one past "+show(s.Nodes[i-1].At))
		}
	}
	return nil
}
