package ui

import (
	"cmp"
	"fmt"

	"barkslip/core/record"
	"barkslip/ui/block"
	"barkslip/ui/changes"
	"barkslip/ui/first"
	"barkslip/ui/part"
	"barkslip/ui/plan"
	"barkslip/ui/practice"
	"barkslip/ui/rounds"
	"barkslip/ui/sheets"
	"barkslip/ui/tally"
	"barkslip/ui/weather"
	"barkslip/ui/wood"
	"barkslip/ui/words"
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
		r.say(cmp.Or(m.Why, "That key does nothing here; ? or F1 shows the keys."), false)
		r.noUse = true

	case part.Ask:
		r.say("", false)
		m.Prompt.Over(r.screen())
		r.mode.lay(m.Prompt)
	case part.PickList:
		r.lay(m.List)
	case part.Read:
		r.lay(m.Page)
	case part.Words:
		r.words()
	case part.Weather:
		r.lay(weather.Ways(r.x))
	case part.Sheets:
		r.lay(sheets.Ways(r.x, m))

	case part.MeetNow:
		r.meetNow()
	case part.Working:
		r.working, r.workedOn = &m, r.screen()

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
		if r.x.Life != nil {
			r.do(r.x.GoOn()...)
			return
		}
		r.next(m)
	case part.NextClash:
		r.do(r.x.NextClash(m)...)
	case part.Leave:
		if _, inRound := find[*rounds.Screen](&r.mode); inRound {
			r.back()
			return
		}
		r.one(part.Next{After: m.Stump})
	case part.Wrote:
		r.wrote()
	case part.Rounds:
		r.fail(r.push(rounds.New(r.x)))
	case part.Wood:
		r.fail(r.push(wood.New(r.x)))
	case part.Lot:
		r.fail(r.push(wood.Of(r.x, m.Lot)))
	case part.FollowLot:
		r.fail(r.push(wood.Follow(r.x, m.Lot, m.From)))
	case part.ShowStumps:
		r.showStumps(m)
	case part.Changes:
		r.fail(r.push(changes.New(r.x)))
	case part.Plan:
		r.fail(r.push(plan.New(r.x)))
	case part.Practice:
		r.fail(r.push(practice.New(r.x)))
	case part.Tally:
		r.fail(r.push(tally.New(r.x)))
	case part.Mark:
		r.mark(m)
	case part.NewBlock:
		r.fail(r.push(first.New(r.x)))
	case part.OpenBlock:
		r.openBlock(m.Block)
	case part.Restart:
		r.x.Block = record.None
		r.x.Reread()
		r.start()
	case part.Reopen:
		r.reopen(m.Options)
	default:
		panic(fmt.Sprintf("a message that nobody knows: %T", m))
	}
}

// mark goes down to the block and shows some of its stumps there.
func (r *root) mark(m part.Mark) {
	b, found := find[*block.Screen](&r.mode)
	if !found {
		return
	}
	for len(r.up) > 1 {
		r.pop()
	}
	r.bare()
	r.fail(b.Load())
	r.do(b.Mark(m.What, m.Stumps)...)
}

// lay lays a list or a page over the screen; what was wrong beneath is said no more.
func (r *root) lay(over part.Screen) {
	if r.said.Wrong {
		r.say("", false)
	}
	r.mode.lay(over)
}

// words lays the words of the trade over all; where they are read already they stay.
func (r *root) words() {
	if _, read := r.over.(*words.Screen); !read {
		r.lay(words.New(r.x))
	}
}

// say puts a text in the message line.
func (r *root) say(text string, wrong bool) {
	r.said, r.noUse = part.Status{Text: part.Typed(text), Wrong: wrong}, false
}

// fail shows an error as one plain sentence; there is nothing to show for nil.
func (r *root) fail(err error) {
	if err != nil {
		r.said, r.noUse = part.Status{Text: part.Typed(err.Error()), Wrong: true, Failed: true}, false
	}
}
