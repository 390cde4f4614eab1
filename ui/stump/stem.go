package stump

import (
	"fmt"
	"regexp"
	"strings"

	"barkslip/core/walk"
	"barkslip/ui/paper"
)

// The walk is a stem up the left edge: a heavy line where it is done, a tie across
// it for each answer, the present step a filled bar, and a thin line on.

// marks are what the stem is drawn of, three columns
// each, the bar two.
type marks struct{ tie, heavy, thin, bar string }

func (s *Screen) marks() marks {
	if s.x.Plain {
		return marks{tie: "=#=", heavy: " # ", thin: " : ", bar: "##"}
	}
	return marks{tie: "╺╋╸", heavy: " ┃ ", thin: " │ ", bar: "██"}
}

// stemWidth is the columns of the stem in a window: more where there are more.
func stemWidth(window int) int {
	switch {
	case window >= 160:
		return 42
	case window >= 120:
		return 36
	case window >= 100:
		return 34
	}
	return 31
}

// gutter is the columns left free at the right of the stem.
const gutter = 2

// stemRow is a line of the stem with what is told of it.
type stemRow struct {
	line  paper.Line
	steps int // of which it tells; none for that of a part
}

// stem is the walk in a width and at most a height. The part in hand is open, and
// those beside it where there is room; the others are a line each. Airy, with a line between them where there is room.
func (s *Screen) stem(width, height int, airy bool) []paper.Line {
	knots := s.walk.Knots()
	unfolded := s.unfolded(knots, airy, height)
	column := s.answerColumn(knots, unfolded, width)
	var parts [][]stemRow
	rows, here := 0, 0
	for p := walk.PartCutBack; p <= walk.PartAfter; p++ {
		steps := ofPart(knots, p)
		if !unfolded[p] {
			parts = append(parts, []stemRow{{line: s.folded(p, steps, column, width)}})
			rows++
			continue
		}
		open := []stemRow{{line: s.opened(p, steps)}}
		for _, k := range steps {
			if k.Step == s.asked.Step {
				here = rows + len(open)
			}
			open = append(open, stemRow{s.stepLine(k, column, width), 1})
		}
		parts = append(parts, open)
		rows += len(open)
	}
	between := paper.Text(paper.Faint, " "+s.marks().thin)
	airy = airy && rows+len(parts)+3 <= height
	var out []stemRow
	for i, part := range parts {
		if i > 0 && airy {
			gap := between
			if i <= int(s.asked.Step.Part-walk.PartCutBack) {
				gap = paper.Text(paper.Plain, " "+s.marks().heavy)
				here++
			}
			out = append(out, stemRow{line: gap})
		}
		out = append(out, part...)
	}
	out = s.shortened(out, here, height-1)
	lines := []paper.Line{nil}
	for _, r := range out {
		lines = append(lines, r.line)
	}
	if len(lines) < height {
		lines = append(lines, between)
	}
	return lines
}

// unfolded is the parts of which each step has its line: the one in hand and, where
// the height has room for them too, those before and behind it. Late in the years
// the early parts stay folded.
func (s *Screen) unfolded(knots []walk.Knot, airy bool, height int) map[walk.Part]bool {
	present := s.asked.Step.Part
	open := map[walk.Part]bool{present: true}
	if !airy || present == walk.PartAfter {
		return open
	}
	rows := 2*int(walk.PartAfter) + 3 + len(ofPart(knots, present)) // with a line between the parts
	for by := walk.Part(1); by < walk.PartAfter; by++ {
		for _, p := range []walk.Part{present - by, present + by} {
			if n := len(ofPart(knots, p)); n > 0 && rows+n <= height && p != walk.PartAfter {
				open[p] = true
				rows += n
			}
		}
	}
	return open
}

// shortened is the stem in at most a height: the steps farthest from the present
// one, above it and then below it, become a line that counts them. The fewer lines,
// the fewer steps stay beside it.
func (s *Screen) shortened(rows []stemRow, here, height int) []stemRow {
	for kept := 2; kept >= 0 && len(rows) > height; kept-- {
		rows, here = s.counted(rows, here, height, kept)
	}
	if over := len(rows) - height; over > 0 { // fewer lines than parts: the present step stays
		from := max(0, min(here-height/2, over))
		rows = rows[from : from+max(height, 0)]
	}
	return rows
}

// counted counts steps above and below those kept beside the present one, as many
// as are over the height.
func (s *Screen) counted(rows []stemRow, here, height, kept int) ([]stemRow, int) {
	first := here
	for first > 0 && rows[first-1].steps > 0 {
		first--
	}
	if over := len(rows) - height; over > 0 {
		if n := min(over+1, here-kept-first); n > 1 {
			rows = s.told(rows, first, n, s.marks().heavy, "before")
			here -= n - 1
		}
	}
	last := here
	for last+1 < len(rows) && rows[last+1].steps > 0 {
		last++
	}
	if over := len(rows) - height; over > 0 {
		if n := min(over+1, last-here-kept); n > 1 {
			rows = s.told(rows, last-n+1, n, s.marks().thin, "after")
		}
	}
	return rows, here
}

// told is the rows with some of them told in one.
func (s *Screen) told(rows []stemRow, from, n int, mark, where string) []stemRow {
	steps := 0
	for _, r := range rows[from : from+n] {
		steps += r.steps
	}
	says := paper.Text(paper.Faint, fmt.Sprintf(" %s  %d steps %s", mark, steps, where))
	return append(append(rows[:from:from], stemRow{says, steps}), rows[from+n:]...)
}

func ofPart(knots []walk.Knot, p walk.Part) []walk.Knot {
	var out []walk.Knot
	for _, k := range knots {
		if k.Step.Part == p {
			out = append(out, k)
		}
	}
	return out
}

// answered says whether a step has an answer that stands.
func answered(k walk.Knot) bool { return k.Done }

// tells is the step whose answer stands for its part.
var tells = map[walk.Part]walk.StepID{walk.PartCutBack: walk.StepHeight, walk.PartLook: walk.StepBleeding, walk.PartGraft: walk.StepScion,
	walk.PartSeal: walk.StepWhite, walk.PartAfter: walk.StepVisit}

// stemText is the column at which names begin; those of steps stand one further
// in.
const stemText = 5

// answerColumn is where answers stand under one another: behind the longest name
// of the open parts, or as far before that as the longest answer needs.
func (s *Screen) answerColumn(knots []walk.Knot, unfolded map[walk.Part]bool, width int) int {
	name, answer := 0, 0
	for _, k := range knots {
		if unfolded[k.Step.Part] {
			name = max(name, paper.Width(k.Step.Name))
			answer = max(answer, paper.Width(k.Answer))
		} else if k.Step.ID == tells[k.Step.Part] {
			answer = max(answer, paper.Width(k.Answer))
		}
	}
	return min(stemText+1+name+2, max(width-gutter-answer, stemText+10))
}

// folded is a part in one line: tied when all its steps are.
func (s *Screen) folded(p walk.Part, steps []walk.Knot, column, width int) paper.Line {
	done, answer := 0, ""
	for _, k := range steps {
		if answered(k) {
			done++
		}
		if k.Step.ID == tells[p] {
			answer = k.Answer
		}
	}
	mark, ink := s.marks().thin, paper.Faint
	switch {
	case done == len(steps) && done > 0:
		mark, ink = s.marks().tie, paper.Plain
	case done > 0:
		mark = s.marks().heavy
	}
	l := paper.Line{{Text: " " + mark + " ", Ink: ink}, {Text: p.String(), Ink: ink}}
	return answerAt(l, column, width, paper.Faint, answer)
}

// opened is the head of an open part.
func (s *Screen) opened(p walk.Part, steps []walk.Knot) paper.Line {
	mark, ink, name := s.marks().thin, paper.Faint, paper.Plain
	if p <= s.asked.Step.Part && (p > walk.PartCutBack || len(steps) > 0 && answered(steps[0])) {
		mark, ink = s.marks().heavy, paper.Plain
	}
	if p == s.asked.Step.Part {
		name = paper.Strong
	}
	return paper.Line{{Text: " " + mark + " ", Ink: ink}, {Text: p.String(), Ink: name}}
}

// stepLine is a step: tied with its answer, open with when it is due, or the
// present one, which fills its line.
func (s *Screen) stepLine(k walk.Knot, column, width int) paper.Line {
	words, ink := k.Answer, paper.Plain
	if !answered(k) && k.Due != nil {
		words, ink = s.x.DueWords(*k.Due)
	}
	if k.Step == s.asked.Step {
		l := paper.Line{{Text: " ", Ink: paper.Plain}, {Text: s.marks().bar, Ink: paper.Accent}}
		l = l.Add(paper.Present, "   "+strings.ToUpper(k.Step.Name))
		if ink != paper.Warn || !k.Due.Late(s.x.Time()) {
			return fill(answerAt(l, column, width, paper.Present, words), width)
		}
		return fill(l, width-paper.Width(words)-2).Add(paper.Alarm, " "+words+" ")
	}
	mark, name := s.marks().thin, paper.Faint
	if answered(k) {
		mark, name = s.marks().tie, paper.Plain
	}
	l := paper.Line{{Text: " " + mark + "  ", Ink: name}, {Text: k.Step.Name, Ink: name}}
	return answerAt(l, column, width, ink, words)
}

// fill is the bar of the present step up to its end.
func fill(l paper.Line, width int) paper.Line {
	return l.Add(paper.Present, strings.Repeat(" ", max(width-gutter-l.Width(), 0)))
}

// answerAt sets an answer at the column of the answers, or right behind the name
// where it has no room there.
func answerAt(l paper.Line, column, width int, ink paper.Ink, answer string) paper.Line {
	if answer == "" {
		return l
	}
	gap := paper.Plain
	if ink == paper.Present {
		gap = ink
	}
	least := l.Width() + 2
	at := max(min(column, width-gutter-paper.Width(answer)), least)
	l = l.Add(gap, strings.Repeat(" ", at-l.Width()))
	return l.Add(ink, brief(answer, width-gutter-at))
}

// year is the year behind a day, from what stands before the day of a due.
var (
	year = regexp.MustCompile(`(\d [A-Z][a-z]{2}) \d{4}\b`)
	from = regexp.MustCompile(`^(from|in|by) `)
)

// brief is an answer, or a due's day, in the room there is. What goes before a
// word is cut is the year, then what was said last, mostly the day, then the last
// words; of a due its day stays.
func brief(answer string, room int) string {
	if paper.Width(answer) > room {
		answer = from.ReplaceAllString(year.ReplaceAllString(answer, "$1"), "")
	}
	for _, sep := range []string{", ", " "} {
		for paper.Width(answer) > room {
			at := strings.LastIndex(answer, sep)
			if at <= 0 {
				break
			}
			answer = strings.TrimRight(answer[:at], ",;")
		}
	}
	return paper.Shorten(answer, room)
}
