package ui

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/ui/block"
	"barkslip/ui/part"
	"barkslip/ui/rounds"
	"barkslip/ui/stump"
)

// back takes off what lies on top. The block's cursor goes to a stump that was
// opened from it.
func (r *root) back() {
	if r.over != nil {
		r.lift()
		return
	}
	left, ofStump := upon[*stump.Screen](&r.mode)
	r.pop()
	r.fail(r.screen().Load())
	if b, ok := upon[*block.Screen](&r.mode); ok && ofStump {
		b.MoveTo(left.ID())
	}
}

// openBlock has a block up and nothing over it. It is as it was left, if it is
// the same.
func (r *root) openBlock(id record.ID) {
	ground, ok := find[*block.Screen](&r.mode)
	left, ofStump := upon[*stump.Screen](&r.mode)
	if !ok || r.x.Block != id {
		ground = block.New(r.x)
	}
	r.x.Block = id
	r.mode = mode{up: []part.Screen{ground}}
	r.fail(ground.Load())
	if ofStump && left.ID().Block == id {
		ground.MoveTo(left.ID())
	}
}

// open opens a stump over the block or the round, in place of one that is open.
func (r *root) open(m part.Open) {
	_, inRound := find[*rounds.Screen](&r.mode)
	s := stump.New(r.x, m.Stump, inRound)
	if err := s.Load(); err != nil {
		r.fail(err)
		return
	}
	if _, another := upon[*stump.Screen](&r.mode); another {
		r.pop()
	}
	r.put(s)
	r.say("", false)
	s.Meet(m.Dues)
}

// next goes to the next stump that needs work: of the round, if one is under way.
func (r *root) next(m part.Next) {
	if round, ok := find[*rounds.Screen](&r.mode); ok {
		r.do(round.Next(m.After)...)
		return
	}
	r.do(r.x.NextStump(m)...)
}

// wrote goes on to the next stump of the round, if one is under way, with nothing
// left on this one that is open and unanswered. What was recorded stays said.
func (r *root) wrote() {
	round, inRound := find[*rounds.Screen](&r.mode)
	s, ok := upon[*stump.Screen](&r.mode)
	if !inRound || !ok || !s.Done() {
		return
	}
	recorded := r.said
	r.do(round.Next(s.ID())...)
	switch {
	case r.said.Wrong:
	case r.said.Text == "":
		r.said = recorded
	default:
		r.said.Text = recorded.Text + " " + r.said.Text
	}
}

// showStumps has the block up with some stumps marked: that which is worked, or
// where none of them is on it the block of the first.
func (r *root) showStumps(m part.ShowStumps) {
	if len(m.Stumps) == 0 {
		r.do(part.Say{Text: "There is no stump to show."})
		return
	}
	site := m.Stumps[0].Block
	for _, id := range m.Stumps {
		if id.Block == r.x.Block {
			site = r.x.Block
		}
	}
	shown, elsewhere := map[record.StumpID]bool{}, 0
	for _, id := range m.Stumps {
		if shown[id] = id.Block == site; id.Block != site {
			elsewhere++
		}
	}
	r.openBlock(site)
	if ground, ok := upon[*block.Screen](&r.mode); ok {
		r.do(ground.Mark(m.Title, shown)...)
		if elsewhere > 0 {
			r.said.Text += fmt.Sprintf(" %d more on other blocks.", elsewhere)
		}
	}
}
