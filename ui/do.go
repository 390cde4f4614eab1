package ui

import (
	"strings"

	"barkslip/core/record"
	"barkslip/ui/block"
	"barkslip/ui/first"
	"barkslip/ui/part"
	"barkslip/ui/plan"
	"barkslip/ui/rounds"
	"barkslip/ui/stump"
	"barkslip/ui/weather"
	"barkslip/ui/wood"
)

// do does what messages ask, in their order.
func (r *root) do(msgs ...part.Msg) {
	for _, m := range msgs {
		r.one(m)
	}
	if err := r.x.Trouble(); err != nil {
		r.fail(err)
	}
}

func (r *root) one(m part.Msg) {
	switch m := m.(type) {
	case part.Say:
		r.say(m.Text, false)
	case part.Warn:
		r.say(m.Text, true)
	case part.Fail:
		r.fail(m.Err)
	case part.NoUse:
		r.say("That key does nothing here; ? shows the keys.", false)
		r.noUse = true

	case part.Ask:
		r.say("", false)
		m.Prompt.Over(r.screen())
		r.over = m.Prompt
	case part.PickList:
		r.over = m.List
	case part.Read:
		r.over = m.Page
	case part.Weather:
		r.over = weather.Ways(r.x)

	case part.Back:
		r.back()
	case part.Reload:
		r.fail(r.screen().Load())
	case part.Quit:
		r.quit = true
	default:
		r.goTo(m)
	}
}

// goTo does what changes which screen is up.
func (r *root) goTo(m part.Msg) {
	switch m := m.(type) {
	case part.Open:
		r.open(m)
	case part.Next:
		r.next(m)
	case part.Leave:
		if _, inRound := find[*rounds.Screen](&r.mode); inRound {
			r.back()
			return
		}
		r.next(part.Next{After: m.Stump})
	case part.Wrote:
		r.wrote(m.Events)
	case part.Rounds:
		r.fail(r.push(rounds.New(r.x)))
	case part.Wood:
		r.fail(r.push(wood.New(r.x)))
	case part.Plan:
		r.fail(r.push(plan.New(r.x)))
	case part.NewBlock:
		r.fail(r.push(first.New(r.x)))
	case part.OpenBlock:
		r.openBlock(m.Block)
	case part.Restart:
		r.x.Block = record.None
		r.x.Reread()
		r.start()
	}
}

// say puts a text in the message line.
func (r *root) say(text string, wrong bool) {
	r.said, r.noUse = part.Status{Text: text, Wrong: wrong}, false
}

// fail shows an error as one plain sentence; there is nothing to show for nil.
func (r *root) fail(err error) {
	if err != nil {
		r.say(strings.TrimSpace(err.Error()), true)
	}
}

// start opens the block worked last, or the first-use questions.
func (r *root) start() {
	blocks := r.x.Book.Folded().List()
	if len(blocks) == 0 {
		r.mode = mode{}
		r.fail(r.push(first.New(r.x)))
		return
	}
	if r.x.Block == record.None {
		r.x.Block = r.latestBlock(blocks)
	}
	r.mode = mode{}
	r.openBlock(r.x.Block)
	r.warnClock()
	if r.x.OwnDay != nil && r.x.OwnDay() {
		day := r.x.Time().In(r.x.Site().Zone).Format("2 January 2006")
		r.say("A made-up block; nothing in it is real. Its own day is "+day+".", false)
	}
	if r.x.Hand == "" {
		r.do(r.x.AskHand()...)
	}
}

// back takes off what lies on top. The block's cursor goes to a stump that was
// opened from it.
func (r *root) back() {
	if r.over != nil {
		r.over = nil
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

// wrote tells the round what was answered on a stump of it. With nothing left
// there that is open and unanswered, the round is up again.
func (r *root) wrote(events []record.Event) {
	round, inRound := find[*rounds.Screen](&r.mode)
	s, ok := upon[*stump.Screen](&r.mode)
	if !inRound || !ok {
		return
	}
	round.Took(events)
	if s.Done() {
		r.back()
	}
}
