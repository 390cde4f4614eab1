package practice

import (
	"slices"
	"strings"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Case is one made-up case: what is found, a question, and answers to choose from.
// Exactly one choice is best by the rules; every other says why it is not.
type Case struct {
	Seed     uint64
	Skill    Skill
	Kind     string   // code of the kind of case, as "wet-after-two-wipes"
	Told     []string // what is found, a sentence each
	Figure   *Figure  // nil where none helps
	Question string
	Choices  []Choice
	Work     []trade.Worked // the sums and facts the best one rests on, for the why page
	Units    unit.System
	Rule     Rule // what of the rules it turns on
}

// Choice is one answer to a case. Digits choose, from 1 in this order.
type Choice struct {
	Words   string
	Best    bool
	Because string           // why it is the best, or what goes wrong with it and why it tempts
	Slots   []float64        // bearings of the placing that it stands for; nil for other answers
	Pieces  [][2]unit.Length // the cutting of a stick that it stands for, from butt; nil for other answers
}

// Best is the place of the best choice, from 0.
func (c Case) Best() int {
	for i, ch := range c.Choices {
		if ch.Best {
			return i
		}
	}
	return -1
}

// Figure is what is drawn beside a case: one of its parts is given. Says is the
// figure in words, for those who cannot see it.
type Figure struct {
	Face  *Face
	Stick *Stick
	Shoot *Shoot
	Cut   *Cut
	Says  []string // a sentence each
}

// Face is a stump seen from above. Bearings are in degrees from north.
type Face struct {
	Across  unit.Length
	AtRight unit.Length // across at right angles; 0 where it is round
	LongWay float64     // bearing of the longer way
	Slots   []float64   // bearings
	Torn    [][2]float64
	Knots   []float64
	Shade   float64 // bearing of the shade side
}

// Stick is a stick of scion wood with its nodes, and how it might be cut.
type Stick struct {
	Length unit.Length
	Nodes  []Node
	Pieces [][2]unit.Length // from butt; none where it is not cut yet
}

// Node is a node of a stick: buds 2 for a pair, 1 for the first alone, 0 for none.
type Node struct {
	At   unit.Length
	Buds int
}

// Shoot is a shoot against its stake.
type Shoot struct {
	Length, StakeTop unit.Length
	Ties             []unit.Length
}

// Cut is a scion with its cuts.
type Cut struct {
	Thick, LongCut, Back, Tip unit.Length
	Reversed                  bool // cut at the wrong end
	Nails                     []unit.Length
}

// InWords is what is found, with the figure in words: a sentence or more each, none twice.
func (c Case) InWords() []string {
	told := strings.Join(c.Told, " ")
	out := slices.Clone(c.Told)
	if c.Figure != nil {
		for _, says := range c.Figure.Says {
			if !strings.Contains(told, strings.TrimSpace(says)) {
				out = append(out, says)
			}
		}
	}
	return out
}
