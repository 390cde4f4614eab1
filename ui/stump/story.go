package stump

import (
	"fmt"
	"slices"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// story shows every answer in order, year by year and graft by graft, those
// taken back or replaced marked. It opens at the newest.
func (s *Screen) story() part.Msgs {
	again := map[record.ID]bool{}
	for _, of := range s.histories() {
		for _, e := range of.Again() {
			again[e.ID] = true
		}
	}
	lines := func(width int) []paper.Line { return s.storyLines(again, width-3) }
	return part.Msgs{part.Read{Page: part.NewPage(s.x, "Story", s.id.Long(), lines).AtEnd()}}
}

func (s *Screen) storyLines(again map[record.ID]bool, width int) []paper.Line {
	b, marks := s.x.Site(), s.storyMarks()
	var lines []paper.Line
	found, all := map[record.ID]record.Event{}, s.storyEvents()
	for _, e := range all {
		found[e.ID] = e
	}
	year := 0
	for _, e := range all {
		at := e.At.In(b.Zone)
		if again[e.ID] {
			lines = append(lines, nil, paper.Text(paper.Strong, "   Grafted again"))
		}
		if at.Year() != year {
			year = at.Year()
			lines = append(lines, nil, paper.Text(paper.Strong, fmt.Sprintf("   %d", year)))
		}
		mark, ink := marks[e.ID], paper.Plain
		if mark != "" {
			ink = paper.Faint
		}
		label := fmt.Sprintf("%-2s%-14s%-4s", mark, at.Format("2 Jan 15:04"), e.Hand)
		lines = append(lines, part.Indent(1, part.Under(label, paper.Faint, ink, s.storyWords(e, found)+s.storyPlace(e), width))...)
	}
	return append(lines, nil, paper.Text(paper.Faint, "   - taken back, = corrected later; nothing is erased."))
}

// histories are the records that the story tells: the stump's, and that of the
// trunk before it had limbs.
func (s *Screen) histories() []*record.Stump {
	if s.record.Trunk == nil {
		return []*record.Stump{s.record}
	}
	return []*record.Stump{s.record, s.record.Trunk}
}

// storyEvents is every event of the story, in order.
func (s *Screen) storyEvents() (all []record.Event) {
	for _, of := range s.histories() {
		all = append(all, of.All...)
	}
	return record.InOrder(all)
}

// storyPlace says where on the tree an answer was given, if not here.
func (s *Screen) storyPlace(e record.Event) string {
	switch {
	case e.Stump.Limb == s.id.Limb:
		return ""
	case e.Stump.Limb == 0:
		return " (on the trunk)"
	}
	return " (at limb " + e.Stump.Letter() + ")"
}

// storyMarks are the signs of the answers that do not stand: taken back, or said
// anew by a later one.
func (s *Screen) storyMarks() map[record.ID]string {
	marks := map[record.ID]string{}
	all := s.storyEvents()
	for i := len(all) - 1; i >= 0; i-- {
		e := all[i]
		w, taking := e.Body.(*record.Withdrawn)
		switch {
		case taking && marks[e.ID] == "":
			marks[w.Of] = "-"
		case !taking && marks[e.ID] == "" && !s.stands(e.ID):
			marks[e.ID] = "="
		}
	}
	return marks
}

func (s *Screen) stands(id record.ID) bool {
	return slices.ContainsFunc(s.histories(), func(of *record.Stump) bool { return of.Stands(id) })
}

// storyWords is an event in words; one that takes back names what it took back,
// or put back.
func (s *Screen) storyWords(e record.Event, found map[record.ID]record.Event) string {
	word, other := "took back", "put back"
	for range longestChain {
		w, taking := e.Body.(*record.Withdrawn)
		if !taking {
			return record.Say(e.Body, s.x.Site().Units) + s.lotWords(e.Body) + s.whiteCame(e)
		}
		of, known := found[w.Of]
		if !known {
			return word
		}
		if _, again := of.Body.(*record.Withdrawn); !again {
			return word + ": " + record.Say(of.Body, s.x.Site().Units)
		}
		word, other, e = other, word, of
	}
	return word
}

// whiteCame says of white how late it came, where the bark under the dark sealer
// had passed the limit by then; "" otherwise.
func (s *Screen) whiteCame(e record.Event) string {
	if _, white := e.Body.(*record.PaintedWhite); !white {
		return ""
	}
	late, ok := due.WhiteLate(s.record, s.x.Site(), e.At)
	if !ok {
		return ""
	}
	at := e.At.In(s.x.Site().Zone)
	return " " + at.Format("15:04") + ", " + late.Words(at)
}

// longestChain is how many takings back of takings back are followed.
const longestChain = 100
