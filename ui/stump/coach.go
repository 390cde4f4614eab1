package stump

import (
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// The coach's lesson stands under the answers: what to look for, what to do when
// it is not right, why, then one caution, each said once a stump. Where it is longer than its room a key reads on in place.

// leastLesson is the lines that a lesson is given where there is little room.
const leastLesson = 3

// caution notes which caution is said at the step that is asked: the first of its
// cautions that was said at no other step of this stump.
func (s *Screen) caution() {
	if !s.x.Prefs.Coach {
		return
	}
	id := s.asked.Step.ID
	for _, c := range s.asked.Step.Cautions {
		switch at, said := s.cautioned[c.Says]; {
		case said && at == id:
			return
		case !said:
			s.cautioned[c.Says] = id
			return
		}
	}
}

// lessonLines is the whole lesson of the step.
func (s *Screen) lessonLines(width int) []paper.Line {
	st := s.asked.Step
	var lines []paper.Line
	for _, p := range []struct{ label, text string }{{"Look for ", st.LookFor}, {"If not   ", st.NotRight}, {"Why      ", st.Why}} {
		if p.text != "" {
			lines = append(lines, part.Under(p.label, paper.Growth, paper.Plain, p.text, width)...)
		}
	}
	for _, c := range st.Cautions {
		if s.cautioned[c.Says] == st.ID {
			lines = append(lines, part.Under("Caution  ", paper.Warn, paper.Plain, c.Says, width)...)
		}
	}
	return lines
}

// lesson is as much of the lesson as there is room for, from where it is read on;
// nothing while the coach is silent.
func (s *Screen) lesson(width, room int) []paper.Line {
	s.more = false
	if !s.x.Prefs.Coach {
		return nil
	}
	all := s.lessonLines(width)
	if room <= 0 || len(all) <= room {
		s.more = len(all) > max(room, 0)
		s.read, s.seen = 0, 0
		return all[:min(len(all), max(room, 0))]
	}
	s.more, s.seen = true, room
	if s.read >= len(all) {
		s.read = 0
	}
	return all[s.read:min(len(all), s.read+room)]
}

// readOn goes on in the lesson, and after its end back to its beginning. Where
// there is no room for any of it, it is read as a page.
func (s *Screen) readOn() part.Msgs {
	switch {
	case !s.x.Prefs.Coach:
		return part.Says("The coach is off; c has it speak.")
	case !s.more:
		return part.Says("That is all of it.")
	case s.seen == 0:
		return s.why()
	}
	s.read += s.seen
	return part.Says("")
}

// switchCoach has the coach speak or be silent, and the question put as it is put
// then.
func (s *Screen) switchCoach() part.Msgs {
	said := s.x.SwitchCoach()
	s.ask()
	return said
}
