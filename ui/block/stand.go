package block

import (
	"fmt"
	"slices"
	"time"

	"barkslip/core/due"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// stand is how stumps stand at one minute, of a row, of several or of the block:
// of those that are shown, but for the number of all.
type stand struct {
	stumps, kept       int
	stages             part.StageCounts
	late, open, differ int       // stumps
	lateWork, openWork tallied   // by kind, on how many stumps
	paint              int       // stumps whose white clock runs
	paintBy            time.Time // the first of those
}

// take takes in one stump that is shown.
func (s *stand) take(sum *due.Summary, now time.Time) {
	s.kept++
	s.stages[sum.Stage]++
	late, open := false, false
	for _, d := range sum.Dues {
		d = d.On(now)
		switch {
		case d.Late(now):
			late = true
			s.lateWork.add(d.Kind, 1)
		case d.Open(now):
			open = true
			s.openWork.add(d.Kind, 1)
		}
		if d.Kind == due.White {
			s.paint++
			s.firstPaint(d.By)
		}
	}
	if late {
		s.late++
	}
	if open || late {
		s.open++
	}
	if sum.Clash {
		s.differ++
	}
}

func (s *stand) firstPaint(by time.Time) {
	if !by.IsZero() && (s.paintBy.IsZero() || by.Before(s.paintBy)) {
		s.paintBy = by
	}
}

// add takes in how others stand.
func (s *stand) add(o *stand) {
	s.stumps, s.kept = s.stumps+o.stumps, s.kept+o.kept
	s.late, s.open, s.differ, s.paint = s.late+o.late, s.open+o.open, s.differ+o.differ, s.paint+o.paint
	for i, n := range o.stages {
		s.stages[i] += n
	}
	for _, w := range o.lateWork {
		s.lateWork.add(w.kind, w.n)
	}
	for _, w := range o.openWork {
		s.openWork.add(w.kind, w.n)
	}
	s.firstPaint(o.paintBy)
}

// words are the kinds of work, the most frequent first: as many as so many columns
// hold whole, and how many more there are.
func (t tallied) words(width int) (words string) {
	sorted := slices.Clone(t)
	slices.SortFunc(sorted, func(a, b struct {
		kind due.Kind
		n    int
	}) int {
		switch {
		case a.n != b.n:
			return b.n - a.n
		case a.kind.Before(b.kind):
			return -1
		}
		return 1
	})
	for i, w := range sorted {
		if i > 0 && len(words)+len(", ")+len(w.kind.Verb())+len(moreWords(len(sorted)-i-1)) > width {
			return words + moreWords(len(sorted)-i)
		}
		if i > 0 {
			words += ", "
		}
		words += w.kind.Verb()
	}
	return words
}

// moreWords is how many more kinds of work there are.
func moreWords(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" +%d", n)
}

// needs is what stumps need, in so many columns: white first, then what is late,
// then what can be done. Where the kinds of work have no room their number stands
// alone; what then has none is left out, from the end.
func (b *Screen) needs(s *stand, width int) paper.Line {
	l, over := b.needsIn(s, width, b.x.Width < part.FullWidth)
	if over {
		l, _ = b.needsIn(s, width, true)
	}
	return l.Cut(width)
}

// needsIn is what stumps need as far as it fits, and whether more was to be said.
func (b *Screen) needsIn(s *stand, width int, short bool) (l paper.Line, over bool) {
	add := func(ink paper.Ink, text string) {
		more := l
		if len(l) > 0 {
			more = more.Add(paper.Plain, ", ")
		}
		if more = more.Add(ink, text); over || len(l) > 0 && more.Width() > width {
			over = true
			return
		}
		l, over = more, more.Width() > width
	}
	if b.filter != nil && s.kept == 0 {
		return nil, false
	}
	work := func(n int, word string, kinds tallied) string {
		if short {
			return fmt.Sprintf("%d %s", n, word)
		}
		head := fmt.Sprintf("%d %s: ", n, word)
		return head + kinds.words(width-l.Width()-len(", ")-len(head))
	}
	if b.filter != nil {
		add(paper.Strong, fmt.Sprintf("%d of %d", s.kept, s.stumps))
	}
	if s.paint > 0 && s.paintBy.After(b.x.Time()) {
		add(paper.Warn, fmt.Sprintf("%d to paint by %s", s.paint, unit.When(s.paintBy, b.x.Time(), b.x.Site().Zone)))
	}
	if s.late > 0 {
		add(paper.Warn, work(s.late, "late", s.lateWork))
	}
	if s.differ > 0 {
		word := "disagree"
		if short {
			word = "differ"
		}
		add(paper.Lined, fmt.Sprintf("%d %s", s.differ, word))
	}
	if only, ok := s.openWork.alone(); ok && s.late == 0 && only == due.CutBack { // as many a day as the pace says
		add(paper.Plain, fmt.Sprintf("%d to cut back", s.open))
	} else if s.late == 0 && s.open > 0 {
		add(paper.Plain, work(s.open, "due", s.openWork))
	}
	return l, over
}

// alone is the one kind of work there is; ok is false for none or several.
func (t tallied) alone() (kind due.Kind, ok bool) {
	if len(t) != 1 {
		return kind, false
	}
	return t[0].kind, true
}
