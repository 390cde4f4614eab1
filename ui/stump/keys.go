package stump

import (
	"barkslip/core/record"
	"barkslip/ui/part"
)

// Table is the keys of the screen, the most used first; digits and Enter answer.
func (s *Screen) Table() []part.Row {
	undo, figure, coach, read := "", "", "coach", ""
	if len(s.figures()) > 0 {
		figure = "figure"
	}
	if s.takesBack() != "" {
		undo = "take back"
	}
	if s.x.Prefs.Coach {
		coach = "coach off"
	}
	ahead := "look ahead"
	if s.more {
		read = "more"
		if s.x.Width < 100 {
			ahead = "ahead"
		}
	}
	move := func(by int, open bool) func() part.Msgs { return func() part.Msgs { return s.move(by, open) } }
	return []part.Row{
		{Binding: part.On("u", undo), Says: "Take back the newest answer on this stump.", Do: s.undo},
		{Binding: part.On("Space", read, " ", "pgdown"), Says: "Read on in the coach's lesson, in its place.", Do: s.readOn},
		{Binding: part.On("n", "next"), Says: "Go to the next stump that needs work; in a round, to the next of the round.", Do: part.Does(part.Next{After: s.id})},
		{Binding: part.On("Tab", ahead, "tab"), Says: "Look ahead: along the stem through what is still open, before its time; Shift Tab goes up.", Do: move(1, true)},
		{Binding: part.On("", "", "shift+tab"), Do: move(-1, true)},
		{Binding: part.On("w", "why"), Says: "Why: the sums, the facts and by whose word.", Do: s.why},
		{Binding: part.On("f", figure), Says: "The figure large, then the next one, then the answers again.", Do: s.nextFigure},
		{Binding: part.On("c", coach), Says: "Coach on or off: what to look for, why, what to do when it is not right.", Do: s.switchCoach},
		{Binding: part.On("m", "note"), Says: "A note on this stump.", Do: s.note},
		{Binding: part.On("U", ""), Says: "Put back what was taken back.", Do: s.redo},
		{Binding: part.On("up down", "", "up", "k"), Says: "Along the stem through what was answered, to see or correct it.", Do: move(-1, false)},
		{Binding: part.On("", "", "down", "j"), Do: move(1, false)},
		{Binding: part.On("d", ""), Says: "The day's weather: put it down, or read a list of coming days.", Do: part.Does(part.Weather{})},
		{Binding: part.On("x", ""), Says: "Failed, or given up, with the cause.", Do: s.end},
		{Binding: part.On("a", ""), Says: "Graft today against advice, with the reason.", Do: s.against},
		{Binding: part.On("v", ""), Says: "The story of this stump: every answer, those taken back too.", Do: s.story},
		{Binding: part.On("e", ""), Says: "Where answers disagree: pick the one that holds.", Do: s.settle},
		{Binding: part.On("E", ""), Says: "Go to the next stump on which answers disagree.", Do: part.Does(part.NextClash{After: s.id})},
		{Binding: part.On("y", ""), Says: "Add a limb of this tree, as where it forks: a stump of its own.", Do: s.addLimb},
		{Binding: part.On("l", ""), Says: "Lots of scion wood; where wood of a held lot stands here, what is to be done about it.", Do: s.lots},
		{Binding: part.On("s", ""), Says: "Leave this stump as it is: back to the round, or on to the next that needs work.",
			Do: part.Does(part.Leave{Stump: s.id})},
		{Binding: part.On("/", ""), Says: "Go to another stump: row/tree, or a tree of this row.", Do: s.place},
		{Binding: part.On("Esc", "", "esc"), Says: "Back: to the question asked now, then to the round or the block.", Do: s.back},
	}
}

// takesBack is what u takes back, "" for nothing.
func (s *Screen) takesBack() string {
	if id := s.before(); id != record.NoStump && id != s.id {
		return s.x.LastAct()
	}
	if e, ok := s.record.Undoable(); ok {
		return s.says(e)
	}
	return ""
}

func (s *Screen) help() part.Msgs {
	answers := []part.Row{
		{Binding: part.On("1-9", ""), Says: "Answer. In a list of checks a digit marks the one that is not right."},
		{Binding: part.On("Enter", ""), Says: "Take the likely answer, marked with a dot, or what was typed. Where a thing must be seen first there is none."},
	}
	return s.x.Help("stump", answers, s.Table(), s.x.Common(nil))
}

func (s *Screen) place() part.Msgs { return s.x.AskPlace(s.id.Row, "") }
