// Package rounds is the screen of what is due on the block, by kind of work or in
// one walk. It may import core and ui/part with its leaves, and no other screen.
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
	"barkslip/ui/part"
)

// Screen is a round: the stumps on which something is due in a span of time.
type Screen struct {
	x      *part.Session
	calls  []due.Call
	groups []due.Group       // the calls by work; one of all where they are walked
	jobs   []due.Job         // of all groups, one behind the other
	lines  []line            // what is seen of them
	aired  bool              // with air between the groups
	inWalk bool              // in walking order across the kinds of work
	folded map[due.Kind]bool // only their headings are shown
	at     int               // the job under the cursor; in a folded group its first
	top    int               // the first line in sight
	span   span
	named  unit.Date  // the day, for aDay
	only   []due.Kind // one kind of work; empty for all
	row    int        // 0 all
	late   bool       // late ones only
	mine   bool       // only what the hand is given for the day
	own    func(record.StumpID) bool
	asOf   time.Time               // the minute the list was made in
	shown  map[record.StumpID]bool // stumps opened on this round
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
	return &Screen{x: x, span: today, shown: map[record.StumpID]bool{}, folded: map[due.Kind]bool{}}
}

// Calls are the stumps of the round, each once, as they are listed.
func (s *Screen) Calls() []due.Call {
	seen := make(map[record.StumpID]bool, len(s.calls))
	out := make([]due.Call, 0, len(s.calls))
	for _, j := range s.jobs {
		if !seen[j.Call.Stump] {
			seen[j.Call.Stump] = true
			out = append(out, *j.Call)
		}
	}
	return out
}

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

// Load makes the list anew, with the cursor on the same work of the same stump or,
// where that is done, on what was listed next.
func (s *Screen) Load() error {
	s.asOf = s.x.Time().Truncate(time.Minute)
	s.own = s.ownStumps()
	s.calls = s.round(s.keep)
	before, at := s.jobs, s.at
	s.arrange()
	s.at = s.nearest(before, at)
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

// Tick makes the list anew once a minute: what was not due may be.
func (s *Screen) Tick() part.Msgs {
	if len(s.jobs) == 0 || s.asOf.Equal(s.x.Time().Truncate(time.Minute)) {
		return nil
	}
	return s.anew()
}

// job is the one under the cursor.
func (s *Screen) job() (j due.Job, ok bool) {
	if s.at >= len(s.jobs) {
		return due.Job{}, false
	}
	return s.jobs[s.at], true
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
	onward := func(by int) func() part.Msgs { return func() part.Msgs { return s.onward(by) } }
	fold := func(to bool) func() part.Msgs { return func() part.Msgs { return s.fold(to) } }
	return append([]part.Row{
		part.ToOpen.Row(s.open).Named("do it").Told("Go to the stump under the cursor and do what is due; Esc comes back to the round."),
		part.ToAlong.Row(onward(1)).Named(s.onwardWord()).Told("The next kind of work; in one walk the next row. Shift-Tab goes back."),
		{Binding: part.On("", "", "shift+tab"), Do: onward(-1)},
		{Binding: part.On("5", "late"), Says: "Only what is late, or all again.", Do: s.onlyLate},
		part.ToFold.Row(s.foldAll).Named(s.foldWord()).Told("Only the kinds of work and how many stumps each; or all stumps again."),
		{Binding: part.On("<- ->", "", "left"), Says: "Fold the kind of work under the cursor to one line, or unfold it.", Do: fold(true)},
		{Binding: part.On("", "", "right"), Do: fold(false)},
		{Binding: part.On("1", "now"), Says: "What can be done now.", Do: over(now)},
		{Binding: part.On("2", "today"), Says: "What falls due today.", Do: over(today)},
		{Binding: part.On("3", "week"), Says: "What falls due within seven days.", Do: over(thisWeek)},
		{Binding: part.On("4", "a day"), Says: "What is due at the end of a day you name.", Do: s.askDay},
		{Binding: part.On("6", s.turnWord()), Says: "All in one walk, whatever is to be done; or by work again.", Do: s.turn},
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

// onwardWord, turnWord and foldWord are what the keys do now.
func (s *Screen) onwardWord() string {
	if s.inWalk {
		return "next row"
	}
	return "next work"
}

func (s *Screen) turnWord() string {
	if s.inWalk {
		return "by work"
	}
	return "in one walk"
}

func (s *Screen) foldWord() string {
	switch {
	case s.inWalk:
		return ""
	case s.allFolded():
		return "unfold"
	}
	return "fold"
}

func (s *Screen) help() part.Msgs { return s.x.Help("rounds", s.Table(), s.x.Common(nil)) }

func (s *Screen) over(sp span) part.Msgs {
	s.span = sp
	return s.fromTop()
}

// fromTop makes another list, with the cursor on its first job.
func (s *Screen) fromTop() part.Msgs {
	s.jobs, s.at, s.top = nil, 0, 0
	return s.anew()
}

func (s *Screen) onlyLate() part.Msgs {
	s.late = !s.late
	return s.fromTop()
}

// note asks for a note on the stump under the cursor.
func (s *Screen) note() part.Msgs {
	if j, ok := s.job(); ok {
		return s.x.AskNote(j.Call.Stump)
	}
	return part.Says("No stump is under the cursor.")
}

// open goes to the stump and, by work, to the step that meets that under the cursor.
func (s *Screen) open() part.Msgs {
	j, ok := s.job()
	if !ok {
		return part.Says("Nothing to do here.")
	}
	if s.waits(j.Call) {
		return part.Says(fmt.Sprintf("Leave %s until %s: there is nothing to do on it before.", j.Call.Stump.Place(), unit.When(j.Call.Dues[0].Opens, s.x.Time(), s.x.Site().Zone)))
	}
	s.shown[j.Call.Stump] = true
	dues := j.Call.Dues
	if !s.inWalk {
		dues = append([]due.Due{*j.Due}, dues...)
	}
	return part.Msgs{part.Open{Stump: j.Call.Stump, Dues: dues}}
}

// Next opens the job after a stump that is done or left as it is; behind the last
// the round is up again. What only waits is passed over, and so is a stump that was
// opened already and stands further down for other work; what has become pressing
// meanwhile comes first.
func (s *Screen) Next(after record.StumpID) part.Msgs {
	was := s.at
	if j, ok := s.job(); !ok || j.Call.Stump != after {
		if i := slices.IndexFunc(s.jobs, func(j due.Job) bool { return j.Call.Stump == after }); i >= 0 {
			was = i
		}
	}
	jobs, stumps := s.above(was)
	msgs := s.anew()
	for i, j := range s.jobs {
		passed := jobs[s.workOf(j)] && !s.presses(j.Call)
		seen := stumps[j.Call.Stump] && s.shown[j.Call.Stump]
		if passed || seen || j.Call.Stump == after || s.waits(j.Call) {
			continue
		}
		s.at = i
		s.unfoldHere()
		return msgs.And(s.open()...)
	}
	if i := slices.IndexFunc(s.jobs, func(j due.Job) bool { return j.Call.Stump == after }); i >= 0 {
		s.at = i
	}
	return msgs.And(part.Back{}, part.Say{Text: "That was the last of this round."})
}

// presses says whether work that costs the graft within hours can be done there.
func (s *Screen) presses(c *due.Call) bool {
	return slices.ContainsFunc(c.Dues, func(d due.Due) bool { return d.Kind.Urgent() && d.Open(s.x.Time()) })
}

// waits says whether there is nothing to do on a stump now but to leave it, as
// while it drains or its new face settles.
func (s *Screen) waits(c *due.Call) bool {
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
	j, ok := s.job()
	if !ok {
		return s.x.AskPlace(0, "")
	}
	return s.x.AskPlace(j.Call.Stump.Row, "")
}
