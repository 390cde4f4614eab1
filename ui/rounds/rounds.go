// Package rounds is the screen of what is due on the block, in walking order. It
// may import core and ui/part with its leaves, and no other screen.
package rounds

import (
	"fmt"
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/part"
)

// Screen is a round: the stumps on which something is due in a span of time.
type Screen struct {
	x     *part.Session
	calls []due.Call
	at    int
	top   int
	span  span
	named unit.Date  // the day, for aDay
	only  []due.Kind // one kind of work; empty for all
	row   int        // 0 all
	late  bool       // late ones only
	mine  bool       // only what the hand is given for the day
	own   func(record.StumpID) bool
	asOf  time.Time               // the minute the list was made in
	shown map[record.StumpID]bool // stumps opened on this round
}

// span is how far ahead a round looks.
type span int

const (
	now span = iota
	today
	thisWeek
	aDay
)

// New is a round of today.
func New(x *part.Session) *Screen {
	return &Screen{x: x, span: today, shown: map[record.StumpID]bool{}}
}

// Calls are the stumps of the round in order.
func (s *Screen) Calls() []due.Call { return s.calls }

// until is the instant the round is judged at.
func (s *Screen) until() time.Time {
	b := s.x.Site()
	day := b.Day(s.x.Time())
	switch s.span {
	case today:
		return due.EndOf(day, b.Zone)
	case thisWeek:
		return due.EndOf(day.Add(6), b.Zone)
	case aDay:
		return due.EndOf(s.named, b.Zone)
	}
	return s.x.Time()
}

// judged is the time lateness is judged at: now, or the end of a day named.
func (s *Screen) judged() time.Time {
	if s.span == aDay {
		return s.until()
	}
	return s.x.Time()
}

// Load makes the list anew.
func (s *Screen) Load() error {
	s.asOf = s.x.Time().Truncate(time.Minute)
	s.own = s.ownStumps()
	s.calls = s.round(s.keep)
	s.at = max(0, min(s.at, len(s.calls)-1))
	return s.x.Trouble()
}

// round is the stumps with work that is kept, of those to cut back as many as
// the pace of the day says.
func (s *Screen) round(keep func(due.Due) bool) []due.Call {
	sums := s.x.Summaries(s.x.Block)
	ask := due.Asked{From: s.judged(), Until: s.until(), Keep: keep, CutBack: plan.CutBackOn(s.x.Site(), sums, s.judged())}
	return due.Round(s.x.Kept(), ask)
}

// anew is Load after a key.
func (s *Screen) anew() part.Msgs { return part.Fails(s.Load()) }

// Tick makes the list anew once a minute, with the cursor on the same stump:
// what was not due may be.
func (s *Screen) Tick() part.Msgs {
	here, ok := s.call()
	if !ok || s.asOf.Equal(s.x.Time().Truncate(time.Minute)) {
		return nil
	}
	msgs := s.anew()
	if i := s.find(here.Stump); i >= 0 {
		s.at = i
	}
	return msgs
}

// call is the one under the cursor.
func (s *Screen) call() (c due.Call, ok bool) {
	if s.at >= len(s.calls) {
		return due.Call{}, false
	}
	return s.calls[s.at], true
}

func (s *Screen) find(id record.StumpID) int {
	return slices.IndexFunc(s.calls, func(c due.Call) bool { return c.Stump == id })
}

func (s *Screen) keep(d due.Due) bool {
	if s.mine && !s.own(d.Stump) {
		return false
	}
	return (len(s.only) == 0 || slices.Contains(s.only, d.Kind)) && (s.row == 0 || int(d.Stump.Row) == s.row) && (!s.late || d.Late(s.judged()))
}

// Field is none.
func (s *Screen) Field() *part.Field { return nil }

// Key takes a key of the table.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs {
	return part.Press(append(s.Table(), s.x.Common(s.help)...), k, part.Useless)
}

// Table is the keys of the screen, the most used first.
func (s *Screen) Table() []part.Row {
	over := func(sp span) func() part.Msgs { return func() part.Msgs { return s.over(sp) } }
	return append([]part.Row{
		part.ToOpen.Row(s.open).Named("do it").Told("Go to the stump under the cursor and do what is due; Esc comes back to the round."),
		{Binding: part.On("1", "now"), Says: "What can be done now.", Do: over(now)},
		{Binding: part.On("2", "today"), Says: "What falls due today.", Do: over(today)},
		{Binding: part.On("3", "week"), Says: "What falls due within seven days.", Do: over(thisWeek)},
		{Binding: part.On("4", "a day"), Says: "What is due at the end of a day you name.", Do: s.askDay},
		{Binding: part.On("5", "late"), Says: "Only what is late, or all again.", Do: s.onlyLate},
		part.ToShowOnly.Row(s.showOnly).Told("Show only one kind of work, one row, or what your hand is given for the day."),
		part.ToRow.Row(s.answerRow).Told("One answer, to the work under the cursor, for the stumps of the round in its row."),
		part.ToMany.Row(s.answerAll).Told("One answer, to the work under the cursor, for all stumps shown."),
		part.ToWhy.Row(s.why).Told("Why it is due, and by whose word."),
		part.ToNext.Row(s.open).Named("").Told("Go along the round: do what is due on the stump under the cursor."),
		part.ToTakeBack.Row(s.x.TakeBack),
		part.ToPaper.Row(s.paper).Told("On paper or as a file: this round as plain text, the day's sheet, tags, a cutting card."),
		part.ToFind.Row(s.place),
		part.ToNote.Row(s.note),
		part.ToPutBack.Row(s.x.PutBack).Named(""),
		part.ToBack.Row(part.Does(part.Back{})).Named("").Told("Back to the block."),
	}, part.Moves("Along the round.", s.step)...)
}

func (s *Screen) help() part.Msgs { return s.x.Help("rounds", s.Table(), s.x.Common(nil)) }

func (s *Screen) over(sp span) part.Msgs {
	s.span, s.at = sp, 0
	return s.anew()
}

func (s *Screen) onlyLate() part.Msgs {
	s.late = !s.late
	return s.anew()
}

// note asks for a note on the stump under the cursor.
func (s *Screen) note() part.Msgs {
	c, _ := s.call()
	return s.x.AskNote(c.Stump)
}

func (s *Screen) step(by int) part.Msgs {
	s.at = max(0, min(s.at+by, len(s.calls)-1))
	return nil
}

// open goes to the stump, and to the step that meets the first thing due.
func (s *Screen) open() part.Msgs {
	c, ok := s.call()
	if !ok {
		return part.Says("Nothing to do here.")
	}
	if s.waits(c) {
		return part.Says(fmt.Sprintf("Leave %s until %s: there is nothing to do on it before.", c.Stump.Place(), unit.When(c.Dues[0].Opens, s.x.Time(), s.x.Site().Zone)))
	}
	s.shown[c.Stump] = true
	return part.Msgs{part.Open{Stump: c.Stump, Dues: c.Dues}}
}

// Next opens the call after a stump that is done or left as it is; behind the
// last the round is up again. What only waits is passed over, and what has become
// pressing meanwhile comes first.
func (s *Screen) Next(after record.StumpID) part.Msgs {
	before := s.calls
	was := slices.IndexFunc(before, func(c due.Call) bool { return c.Stump == after })
	if was < 0 {
		was = s.at
	}
	msgs := s.anew()
	for i, c := range s.calls {
		old := slices.IndexFunc(before, func(b due.Call) bool { return b.Stump == c.Stump })
		if passed := old >= 0 && old < was && (s.shown[c.Stump] || !s.presses(c)); passed || c.Stump == after || s.waits(c) {
			continue
		}
		s.at = i
		return msgs.And(s.open()...)
	}
	if s.find(after) >= 0 {
		s.at = s.find(after)
	}
	return msgs.And(part.Back{}, part.Say{Text: "That was the last of this round."})
}

// presses says whether work that costs the graft within hours can be done there.
func (s *Screen) presses(c due.Call) bool {
	return slices.ContainsFunc(c.Dues, func(d due.Due) bool { return d.Kind.Urgent() && d.Open(s.x.Time()) })
}

// waits says whether there is nothing to do on a stump now but to leave it, as
// while it drains or its new face settles.
func (s *Screen) waits(c due.Call) bool {
	now := s.x.Time()
	return !slices.ContainsFunc(c.Dues, func(d due.Due) bool { return d.Open(now) || d.Kind != due.Look && d.Kind != due.LookAgain })
}

// paper asks which sheet is wanted, for the day and the row of the round.
func (s *Screen) paper() part.Msgs {
	m := part.Sheets{Row: s.row, Text: s.save}
	if s.span == aDay {
		m.On = s.named
	}
	return part.Msgs{m}
}

func (s *Screen) place() part.Msgs {
	c, _ := s.call()
	return s.x.AskPlace(c.Stump.Row, "")
}

// answerRow gives one answer, to the work under the cursor, for the stumps of the
// round in its row.
func (s *Screen) answerRow() part.Msgs {
	c, ok := s.call()
	if !ok {
		return part.Says("Nothing to do here.")
	}
	return s.together(fmt.Sprintf("row %d", c.Stump.Row), c, func(other due.Call) bool { return other.Stump.Row == c.Stump.Row })
}

// answerAll gives it for all stumps shown.
func (s *Screen) answerAll() part.Msgs {
	c, ok := s.call()
	if !ok {
		return part.Says("Nothing to do here.")
	}
	return s.together("all shown", c, func(due.Call) bool { return true })
}

func (s *Screen) together(who string, here due.Call, takes func(due.Call) bool) part.Msgs {
	var ids []record.StumpID
	for _, c := range s.calls {
		if takes(c) {
			ids = append(ids, c.Stump)
		}
	}
	return s.x.AnswerTogether(who, ids, func(c *walk.Case) (steps []walk.StepID) {
		for _, d := range here.Dues {
			steps = append(steps, c.Meets(d.Kind))
		}
		return steps
	})
}
