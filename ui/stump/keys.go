package stump

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Table is the keys of the screen; digits and Enter answer.
func (s *Screen) Table() []part.Row {
	undo, figure := "", ""
	if len(s.figures()) > 0 {
		figure = "figure"
	}
	if id := s.before(); id != record.NoStump && id != s.id {
		undo = fmt.Sprintf("take back %q", paper.Shorten(s.x.LastAct(), 18))
	} else if e, ok := s.record.Undoable(); ok {
		undo = fmt.Sprintf("take back %q", paper.Shorten(s.says(e), 18))
	}
	move := func(by int, open bool) func() part.Msgs { return func() part.Msgs { return s.move(by, open) } }
	return []part.Row{
		part.ToTakeBack.Row(s.undo).Named(undo).Told("Take back the newest answer on this stump."),
		part.ToNext.Row(part.Does(part.Next{After: s.id})).
			Told("Leave this stump as it is and go to the next that needs work; in a round, to the next of the round."),
		part.ToWhy.Row(s.why).Told("Why: the sums, the facts and by whose word."),
		part.ToNote.Row(s.note).Told("A note on this stump."),
		part.ToCoach.Row(s.switchCoach),
		part.ToAlong.Row(move(1, true)).Named("ahead").Told("Ahead through the steps that are still open, before their time; Shift-Tab goes up."),
		{Binding: part.On("", "", "shift+tab"), Do: move(-1, true)},
		part.ToEnlarge.Row(s.nextFigure).Named(figure),
		{Binding: part.On("up down", "", "up"), Says: "Through the steps that were answered, to see or correct them.", Do: move(-1, false)},
		{Binding: part.On("", "", "down"), Do: move(1, false)},
		part.ToDone.Row(s.story).Named("story").Told("The story of this stump: every answer, those taken back too."),
		part.ToEnd.Row(s.end),
		part.ToSettle.Row(s.settle).Named(s.settleWord()),
		part.ToLimb.Row(s.addLimb).Named(""),
		part.ToLots.Row(s.lots).Told("Lots of scion wood; where wood of a held lot stands here, what is to be done about it."),
		part.ToWeather.Row(part.Does(part.Weather{})).Named(""),
		part.ToFind.Row(s.place).Told("Go to another stump: row/tree, or a tree of this row."),
		part.ToPutBack.Row(s.redo).Named(""),
		part.ToBack.Row(s.back).Named("").Told("Back: to the question asked now, then to the round or the block."),
	}
}

func (s *Screen) help() part.Msgs {
	answers := []part.Row{
		{Binding: part.On("1-9", ""), Says: "Answer. In a list of checks a digit marks the one that is not right."},
		{Binding: part.On("Enter", ""), Says: "Take the likely answer, marked with a dot, or what was typed. Where a thing must be seen first there is none."},
	}
	return s.x.Help("stump", answers, s.Table(), s.x.Common(nil))
}

func (s *Screen) place() part.Msgs { return s.x.AskPlace(s.id.Row, "") }

// switchCoach has the coach speak or be silent, and the question put as it is put
// then.
func (s *Screen) switchCoach() part.Msgs {
	said := s.x.SwitchCoach()
	s.ask()
	return said
}
