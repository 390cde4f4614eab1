package ui

import (
	"errors"
	"fmt"
	"strings"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/paper"
)

// table is the keys of the stump screen; digits and Enter answer.
func (s *stumpScreen) table() []binding {
	undo, figure := "", ""
	if len(s.figures()) > 0 {
		figure = "figure"
	}
	if e, ok := s.s.Undoable(); ok {
		undo = fmt.Sprintf("take back %q", paper.Shorten(record.Say(e.Body, s.x.site().Units), 18))
	}
	return []binding{
		{keys: []string{"u"}, word: undo, help: "Take back the newest answer on this stump.", do: s.undo},
		{keys: []string{"U"}, help: "Put back what was taken back.", do: s.redo},
		{keys: []string{"w"}, word: "why", help: "Why: the sums, the facts and by whose word.", do: s.why},
		{keys: []string{"n"}, word: "note", help: "A note on this stump.", do: s.note},
		{keys: []string{"s"}, word: "next stump", help: "Leave this stump as it is and go to the next that needs a hand.", do: func() { s.r.nextStump(s.id) }},
		{keys: []string{"c"}, word: "coach", help: "Coach on or off: what to look for, why, what to do when it is not right.", do: s.coach},
		{keys: []string{"up", "k"}, show: "up down", help: "Along the stake through what was answered, to see or correct it.", do: func() { s.move(-1, false) }},
		{keys: []string{"down", "j"}, do: func() { s.move(1, false) }},
		{keys: []string{"d"}, help: "The day's weather: put it down, or read a list of coming days.", do: s.r.weather},
		{keys: []string{"tab"}, show: "Tab", help: "Along the stake through what is still open, before its time; Shift Tab goes up.", do: func() { s.move(1, true) }},
		{keys: []string{"shift+tab"}, do: func() { s.move(-1, true) }},
		{keys: []string{"x"}, help: "Failed, or given up, with the cause.", do: s.end},
		{keys: []string{"a"}, help: "Graft today against advice, with the reason.", do: s.against},
		{keys: []string{"v"}, help: "The story of this stump: every answer, those taken back too.", do: s.story},
		{keys: []string{"e"}, help: "Where two answers to one question stand: pick the one that holds.", do: s.settle},
		{keys: []string{"f"}, word: figure, help: "The figure large, then the next one, then the answers again.", do: s.nextFigure},
		{keys: []string{"/"}, help: "Go to another stump: row/tree.", do: s.place},
		{keys: []string{"esc"}, show: "Esc", help: "Back: to the question asked now, then to the block.", do: s.back},
	}
}

func (s *stumpScreen) help() {
	answers := []binding{
		{keys: []string{"1-9"}, help: "Answer. In a list of checks a digit marks the one that is not right."},
		{keys: []string{"Enter"}, help: "Take the likely answer, marked with a dot, or what was typed. Where a thing must be seen first there is none."},
	}
	s.r.help("stump", answers, s.table(), s.r.common(nil))
}

// place goes to another stump. Digits pressed just before were its row and no
// answers: what was taken for them is taken back.
func (s *stumpScreen) place() {
	p := s.x.pressed
	s.x.pressed = pressed{}
	if p.key == "" || s.x.Tick().Sub(p.at) > placeSpan {
		s.r.find("")
		return
	}
	var taken []record.Event
	for _, e := range p.events {
		if e.Stump == s.id && s.s.Stands(e.ID) {
			taken = append([]record.Event{e}, taken...)
		}
	}
	s.clear()
	words := ""
	if len(taken) > 0 {
		s.withdraw("Took back", taken, taken)
		words = s.x.said + " "
	}
	s.r.find(p.key + "/")
	s.x.say(words + promptWords)
}

// settle asks which of the answers that disagree holds; it is said anew, for the
// time it was given for, in place of all of them.
func (s *stumpScreen) settle() {
	if len(s.s.Clashes) == 0 {
		s.x.say("No answers disagree here.")
		return
	}
	b := s.x.site()
	var items []listItem
	clash := s.s.Clashes[0]
	for _, e := range clash.Events {
		meaning := e.Hand + ", " + unit.When(e.At, s.x.now(), b.Zone)
		items = append(items, listItem{record.Say(e.Body, b.Units), meaning, func() error {
			if _, err := s.x.write(s.id, clash.Settle(e)); err != nil {
				return err
			}
			s.clear()
			if err := s.load(); err != nil {
				return err
			}
			s.x.say("Settled: " + record.Say(e.Body, b.Units) + ".")
			return nil
		}})
	}
	s.r.pick("Which of these holds?", "The other stays in the story.", items)
}

func (s *stumpScreen) coach() {
	s.x.Prefs.Coach = !s.x.Prefs.Coach
	s.x.say(map[bool]string{true: "Coach on.", false: "Coach off."}[s.x.Prefs.Coach])
	s.x.savePrefs()
}

func (s *stumpScreen) why() {
	s.r.why(s.q.Question, s.q.Work, s.q.Step)
}

func (s *stumpScreen) note() {
	s.r.ask("Note:", "", true, func(text string) error {
		text = strings.TrimSpace(record.Clean(text))
		if text == "" {
			return errors.New("type the note first, or Esc")
		}
		return s.keep(nil, &record.Noted{Text: text})
	})
}

// end asks whether the stump failed or is given up.
func (s *stumpScreen) end() {
	items := []listItem{
		{"given up", "it will not be grafted, or not again", func() error { s.write(nil, &record.GivenUp{Why: "given up"}); return nil }},
		{"given up this season", "graft it next year", func() error { s.write(nil, &record.GivenUp{Why: "given up this season", Season: true}); return nil }},
	}
	if len(s.c.A.Grafts) > 0 {
		failed := listItem{"failed", "no graft lives: pick the cause", func() error { s.pick(walk.Choice{}); return nil }}
		items = append([]listItem{failed}, items...)
	}
	s.r.pick("How does it end?", "Anything can be taken back with u.", items)
}

// pickCause asks for the cause of loss.
func (r *root) pickCause(take func(cause string)) {
	var items []listItem
	for _, cause := range trade.Causes {
		items = append(items, listItem{cause, "", func() error { take(cause); return nil }})
	}
	r.pick("What was the cause?", "It is kept with the stump; say unknown rather than guess.", items)
}

// reasons for going against advice.
var reasons = []string{"the season is ending", "the wood will not keep", "it looks right to me", "a trial"}

func (s *stumpScreen) against() {
	if v := s.c.Advice.Verdict; v == ready.Graft || len(s.c.A.Grafts) > 0 {
		s.x.say("There is no advice against it now.")
		return
	}
	s.r.pickReason(s)
}

// pickReason asks why the work goes on against advice.
func (r *root) pickReason(s *stumpScreen) {
	verdict := s.c.Advice.Verdict
	go_ := func(why string) error {
		return s.keep(nil, &record.AgainstAdvice{Verdict: verdict, Why: why})
	}
	var items []listItem
	for _, why := range reasons {
		items = append(items, listItem{why, "", func() error { return go_(why) }})
	}
	items = append(items, listItem{"another reason", "type it", func() error {
		r.ask("Why:", "", true, func(text string) error {
			if text = strings.TrimSpace(record.Clean(text)); text == "" {
				return errors.New("type the reason first, or Esc")
			}
			return go_(text)
		})
		return nil
	}})
	advice := strings.ReplaceAll(string(verdict), "-", " ")
	r.pick("Graft it all the same? Why?", fmt.Sprintf("The advice is: %s. %s The reason is kept with the graft.", advice, strings.Join(s.c.Advice.Reasons, " ")), items)
}
