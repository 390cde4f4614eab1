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
	return append(s.x.TimeOn(), []part.Row{
		part.ToTakeBack.Row(s.undo).Named(undo).Told("Take back the newest answer on this stump."),
		part.ToMore.Row(s.readOn).Named(read).Told("Read on in the coach's lesson, in its place."),
		part.ToNext.Row(part.Does(part.Next{After: s.id})).Told("Go to the next stump that needs work; in a round, to the next of the round."),
		part.ToAlong.Row(move(1, true)).Named(ahead).Told("Look ahead: along the stem through what is still open, before its time; Shift-Tab goes up."),
		{Binding: part.On("", "", "shift+tab"), Do: move(-1, true)},
		part.ToWhy.Row(s.why).Told("Why: the sums, the facts and by whose word."),
		part.ToEnlarge.Row(s.nextFigure).Named(figure),
		part.ToCoach.Row(s.switchCoach).Named(coach),
		part.ToNote.Row(s.note).Told("A note on this stump."),
		{Binding: part.On("up down", "", "up"), Says: "Along the stem through what was answered, to see or correct it.", Do: move(-1, false)},
		{Binding: part.On("", "", "down"), Do: move(1, false)},
		part.ToSkip.Row(part.Does(part.Leave{Stump: s.id})).Named(""),
		part.ToRounds.Row(part.Does(part.Rounds{})).Named(""),
		part.ToDone.Row(s.story).Named("story").Told("The story of this stump: every answer, those taken back too."),
		part.ToEnd.Row(s.end),
		part.ToSettle.Row(s.settle).Named(s.settleWord()),
		part.ToLimb.Row(s.addLimb).Named(""),
		part.ToLots.Row(s.lots).Told("Lots of scion wood; where wood of a held lot stands here, what is to be done about it."),
		part.ToWeather.Row(part.Does(part.Weather{})).Named(""),
		part.ToFind.Row(s.place).Told("Go to another stump: row/tree, or a tree of this row."),
		part.ToPutBack.Row(s.redo).Named(""),
		part.ToBack.Row(s.back).Named("").Told("Back: to the question asked now, then to the round or the block."),
	}...)
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
		{Binding: part.On("Enter", ""), Says: "Take the likely answer, turned, or what was typed. Where a thing must be seen first there is none."},
	}
	return s.x.Help("stump", answers, s.Table(), s.x.Common(nil))
}

func (s *Screen) place() part.Msgs { return s.x.AskPlace(s.id.Row, "") }
