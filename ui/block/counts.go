package block

import (
	"fmt"
	"time"

	"barkslip/core/due"
	"barkslip/core/plan"
	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// isLate says whether something should have been done there before now.
func isLate(s due.Summary, x *part.Session) bool { return s.Late(x.Time()) }

// isOpen says whether work is due there now.
func isOpen(s due.Summary, x *part.Session) bool { return s.Open(x.Time()) }

// cutOnly says whether all that is due there now is to cut it back.
func cutOnly(s due.Summary, now time.Time) bool {
	for _, d := range s.Dues {
		if d = d.On(now); d.Open(now) && d.Kind != due.CutBack {
			return false
		}
	}
	return true
}

// totals are counts over the whole block at one minute.
type totals struct {
	at           time.Time
	stage        map[record.Stage]int
	late, needy  int
	taken, known int // grafts
	pace         plan.Pace
}

// count counts the block anew once a minute and after every answer.
func (b *Screen) count() *totals {
	now := b.x.Time().Truncate(time.Minute)
	if b.totals != nil && b.totals.at.Equal(now) {
		return b.totals
	}
	t := &totals{at: now, stage: map[record.Stage]int{}, pace: plan.PaceOf(b.x.Site(), b.sums, now)}
	cuts := 0 // stumps to be cut back: as many are due as the pace says
	for _, s := range b.sums {
		t.stage[s.Stage]++
		t.taken, t.known = t.taken+s.Taken, t.known+s.Known
		if isLate(s, b.x) {
			t.late++
		}
		switch {
		case !isOpen(s, b.x):
		case cutOnly(s, now):
			cuts++
		default:
			t.needy++
		}
	}
	if t.pace.Known {
		cuts = min(cuts, t.pace.CutBack)
	}
	t.needy += cuts
	b.totals = t
	return t
}

// roomForAll is the height at which stages without a stump are shown too.
const roomForAll = 20

// counts is the right side: how many at each stage, where work is due, what is
// late, how it took, and the pace. Where there is no room for all, the stages
// come last and those without a stump are left out.
func (b *Screen) counts(width, height int) []paper.Line {
	t := b.count()
	stages, sums := b.stageCounts(t, height < roomForAll), b.sumLines(t, width)
	if len(stages)+1+len(sums) <= height {
		return append(append(stages, nil), sums...)
	}
	lines := append(append(sums, nil), b.stageCounts(t, true)...)
	return lines[:min(len(lines), height)]
}

func (b *Screen) stageCounts(t *totals, short bool) (lines []paper.Line) {
	for _, st := range record.Stages() {
		if t.stage[st] > 0 || !short {
			l := paper.Line{{Text: st.Mark(), Ink: stageInk(st)}, {Text: " " + st.String(), Ink: paper.Plain}}
			lines = append(lines, l.Pad(15).Add(paper.Strong, fmt.Sprintf("%6d", t.stage[st])))
		}
	}
	return lines
}

func (b *Screen) sumLines(t *totals, width int) (lines []paper.Line) {
	sum := func(ink paper.Ink, word string, n int) {
		lines = append(lines, paper.Line{{Text: word, Ink: ink}}.Pad(15).Add(ink, fmt.Sprintf("%6d", n)))
	}
	sum(paper.Strong, "work due", t.needy)
	if t.late > 0 {
		sum(paper.Warn, "! late", t.late)
	}
	if t.known > 0 {
		lines = append(lines, paper.Text(paper.Plain, fmt.Sprintf("took %d of %d grafts", t.taken, t.known)))
	}
	if words := b.paceWord(); words != "" {
		lines = append(lines, paper.Text(paper.Plain, paper.Shorten(words, width)))
	}
	return lines
}

// paceWord is the pace beside the field, while bark slips and work is left.
func (b *Screen) paceWord() string {
	p := b.count().pace
	switch {
	case !p.Known || p.Standing+p.Draining == 0 || p.Today < p.Slip.From.Add(-paceAhead):
		return ""
	case p.Today < p.Slip.From && p.CutBack == 0:
		return "slips from " + p.Slip.From.Short()
	case p.Today < p.Slip.From:
		return fmt.Sprintf("slips %s, cut back %d", p.Slip.From.Short(), p.CutBack)
	case p.Standing > 0 && b.x.Width < part.FullWidth:
		return fmt.Sprintf("slip %d d, cut back %d", p.Left, p.CutBack)
	case p.Standing > 0:
		return fmt.Sprintf("slip %d d left, cut back %d", p.Left, p.CutBack)
	}
	return fmt.Sprintf("slip %d d left, %d a day", p.Left, p.Needed)
}

// paceAhead is how many days before bark slips the pace is shown beside the
// field: cutting back begins then.
const paceAhead = 14

// why says what the counts beside the field mean.
func (b *Screen) why() part.Msgs {
	t := b.count()
	work := trade.Worked{
		Question: "What the counts mean",
		Answer: []trade.Input{{Name: "work due", Value: t.needy}, {Name: "late", Value: t.late},
			{Name: "grafts that took", Value: fmt.Sprintf("%d of %d", t.taken, t.known)}},
		Formula: "Work is due on a stump when something can be done on it now; it is late when something should have been done before now. " +
			"A graft took when it was seen alive 30 days or more after its stump first pushed; only grafts of which that is known are counted.",
		Facts: []trade.Fact{trade.MovingNotTaking, trade.WhiteIn, trade.DaysToGraft},
	}
	lines := func(width int) []paper.Line {
		return append([]paper.Line{nil}, part.WorkLines(work, b.x.Site().Units, min(width-4, 96))...)
	}
	return part.Msgs{part.Read{Page: part.NewPage(b.x, "Why", "the counts", lines)}}
}
