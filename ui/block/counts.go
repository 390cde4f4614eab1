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

// cutOnly says whether all that is due there now is to cut it back.
func cutOnly(s *due.Summary, now time.Time) bool {
	for _, d := range s.Dues {
		if d = d.On(now); d.Open(now) && d.Kind != due.CutBack {
			return false
		}
	}
	return true
}

// totals are counts over the whole block at one minute, of the stumps shown.
type totals struct {
	at           time.Time
	shown        []bool // by stump; nil for all
	all          stand
	rows         []stand
	needy        int // with work to do now; of those to cut back as many as the pace says
	taken, known int // grafts
	pace         plan.Pace
}

// shows says whether a stump, by its place among all of the block, is shown.
func (t *totals) shows(i int) bool { return t.shown == nil || t.shown[i] }

// count counts the block anew once a minute and after every answer.
func (b *Screen) count() *totals {
	now := b.x.Time().Truncate(time.Minute)
	if b.totals != nil && b.totals.at.Equal(now) {
		return b.totals
	}
	t := &totals{at: now, rows: make([]stand, len(b.rows)), pace: plan.PaceOf(b.x.Site(), b.sums, now)}
	if b.filter != nil {
		t.shown = b.filter.shown(b, b.sums)
	}
	cuts := 0 // stumps to be cut back: as many are due as the pace says
	for n, r := range b.rows {
		here := &t.rows[n]
		here.stumps = len(r.sums)
		for i := range r.sums {
			if !t.shows(r.first + i) {
				continue
			}
			sum := &r.sums[i]
			t.taken, t.known = t.taken+sum.Taken, t.known+sum.Known
			open := here.open
			here.take(sum, now)
			switch {
			case here.open == open:
			case cutOnly(sum, now):
				cuts++
			default:
				t.needy++
			}
		}
		t.all.add(here)
	}
	if t.pace.Known {
		cuts = min(cuts, t.pace.CutBack)
	}
	t.needy += cuts
	b.totals = t
	return t
}

// joined are stages told as one where there is no room for each.
var joined = []struct {
	word     string
	from, to record.Stage
}{
	{"standing", record.StageStanding, record.StageStanding}, {"draining", record.StageDraining, record.StageDraining},
	{"grafted", record.StageGrafted, record.StagePainted}, {"growing", record.StagePushing, record.StageHeadedBack},
	{"untied", record.StageUntied, record.StageUntied}, {"lost", record.StageFailed, record.StageGivenUp},
}

// stageWords is how many stumps there are at each stage, each behind its mark: the
// legend of the map. Where they do not all fit a width, stages near one another are
// told as one, in the end without their marks.
func (b *Screen) stageWords(c *part.StageCounts, width int) paper.Line {
	var each, few paper.Line
	for st, n := range c {
		each = addStages(each, b.x.Mark(record.Stage(st))+" ", record.Stage(st), record.Stage(st).String(), n, "   ")
	}
	if each.Width() <= width {
		return each
	}
	for _, tight := range []struct {
		gap   string
		marks bool
	}{{"  ", true}, {" ", true}, {"  ", false}, {" ", false}} {
		few = nil
		for _, j := range joined {
			n := 0
			for st := j.from; st <= j.to; st++ {
				n += c[st]
			}
			st, mark := (j.from+j.to)/2, ""
			if tight.marks {
				mark = b.x.Mark(st) + " "
			}
			few = addStages(few, mark, st, j.word, n, tight.gap)
		}
		if few.Width() <= width {
			break
		}
	}
	return few
}

// addStages adds to a legend how many stumps there are at a stage, behind its mark;
// nothing where there are none.
func addStages(l paper.Line, mark string, st record.Stage, word string, n int, gap string) paper.Line {
	if n == 0 {
		return l
	}
	if len(l) > 0 {
		l = l.Add(paper.Plain, gap)
	}
	return l.Add(part.StageInk(st), mark).Add(paper.Plain, fmt.Sprintf("%s %d", word, n))
}

// counts are the lines under the field: the stages, then work due, what is late,
// how it took and the pace.
func (b *Screen) counts(width int) []paper.Line {
	t := b.count()
	stages := b.stageWords(&t.all.stages, width-1)
	if len(stages) == 0 {
		stages = paper.Text(paper.Plain, "none of the stumps")
	}
	lines := []paper.Line{append(paper.Text(paper.Plain, " "), stages...).Cut(width)}
	due := " Work due now"
	if b.x.Width < part.FullWidth {
		due = " Due now"
	}
	l := paper.Line{{Text: fmt.Sprintf("%s %d", due, t.needy), Ink: paper.Strong}}
	if t.all.late > 0 {
		l = l.Add(paper.Plain, ", ").Add(paper.Warn, fmt.Sprintf("%d late", t.all.late))
	}
	if t.known > 0 {
		l = l.Add(paper.Plain, fmt.Sprintf("  took %d of %d", t.taken, t.known))
	}
	for _, words := range b.paceWords() {
		if l.Width()+2+paper.Width(words) <= width {
			l = l.Add(paper.Plain, "  "+words)
			break
		}
	}
	lines = append(lines, l.Cut(width))
	words, ink := b.heatWords()
	return append(lines, paper.Text(ink, " "+words).Cut(width))
}

// paceWords is the pace under the field, while bark slips and work is left, from
// whole words to fewer; the first for which there is room is shown.
func (b *Screen) paceWords() []string {
	p := b.count().pace
	from := "from " + p.Slip.From.Short()
	left, days := part.Counted(p.Left, "more day"), fmt.Sprintf("%d d", p.Left)
	switch {
	case !p.Known || p.Standing+p.Draining == 0 || p.Today < p.Slip.From.Add(-paceAhead):
		return nil
	case p.Today < p.Slip.From && p.CutBack == 0:
		return []string{"bark slips " + from, "slips " + from}
	case p.Today < p.Slip.From:
		return slipWords(from, from, fmt.Sprintf("cut back %d", p.CutBack), " today")
	case p.Standing > 0:
		return slipWords(left, days, fmt.Sprintf("cut back %d", p.CutBack), " today")
	}
	return slipWords(left, days, fmt.Sprintf("graft %d", p.Needed), " a day")
}

// slipWords is how long bark slips and what that asks for.
func slipWords(long, short, do, when string) []string {
	return []string{"bark slips " + long + ", " + do + when, "bark slips " + short + ", " + do + when, "slips " + short + ", " + do, "slips " + short}
}

// paceAhead is how many days before bark slips the pace is shown under the
// field: cutting back begins then.
const paceAhead = 14

// why says what the counts under the field mean.
func (b *Screen) why() part.Msgs {
	t := b.count()
	work := trade.Worked{
		Question: "What the counts mean",
		Answer: []trade.Input{{Name: "work due", Value: t.needy}, {Name: "late", Value: t.all.late},
			{Name: "grafts that took", Value: fmt.Sprintf("%d of %d", t.taken, t.known)}},
		Formula: "Work is due on a stump when something can be done on it now; it is late when something should have been done before now. " +
			"A graft took when it was seen alive 30 days or more after its stump first pushed; only grafts of which that is known are counted.",
		Facts: []trade.Fact{trade.MovingNotTaking, trade.WhiteIn, trade.DaysToGraft},
	}
	lines := func(width int) []paper.Line {
		return append([]paper.Line{nil}, part.WorkLines(work, b.x.Site().Units, b.x.Measure(width-4))...)
	}
	return part.Msgs{part.Read{Page: part.NewPage(b.x, "Why", "the counts", lines)}}
}
