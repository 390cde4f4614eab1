package stump

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Frame shows the stem, the question and its figure.
func (s *Screen) Frame() part.Frame {
	x := s.x
	b := x.Site()
	f := part.Frame{Title: b.Name, Where: s.heading(), Short: []string{s.id.Long(), s.id.Place()}, Only: x.OnlyWords()}
	if x.Width < part.FullWidth || x.Height < part.FullHeight-2 {
		f.Body = s.small()
	} else {
		wide := stemWidth(x.Width)
		right, drawn := s.question(x.Width-wide-1, x.BodyHeight())
		f.Body = sideBySide(s.left(wide, x.BodyHeight(), drawn), wide, right)
	}
	named := false
	f.Keys, named = s.keyLine() // last: what can be read on depends on what was shown
	if says := s.takesBack(); says != "" && !named {
		f.Hint = brief("u takes back: "+says, x.Width-3) + "."
	}
	return f
}

// left is the stem, and below it the figure where it was drawn nowhere else. For a
// figure that is needed the stem is told in fewer lines.
func (s *Screen) left(width, height int, drawn bool) []paper.Line {
	least := s.leastFigure()
	if drawn || len(s.figures()) == 0 {
		return s.stem(width, height, true)
	}
	most := height
	if s.needsFigure() {
		most -= least + 1
	}
	lines := s.stem(width, most, false)
	room := height - len(lines) - 1
	if room < least {
		return s.stem(width, height, true)
	}
	figure := s.figure(width-gutter-1, min(room, 12))
	if len(figure) == 0 {
		return s.stem(width, height, true)
	}
	return append(append(lines, nil), part.Indent(1, figure)...)
}

// sideBySide puts lines at a column of others.
func sideBySide(left []paper.Line, column int, right []paper.Line) []paper.Line {
	out := make([]paper.Line, max(len(left), len(right)))
	for i := range out {
		var l, r paper.Line
		if i < len(left) {
			l = left[i]
		}
		if i < len(right) {
			r = right[i]
		}
		out[i] = l
		if len(r) > 0 {
			out[i] = l.Beside(column, r)
		}
	}
	return out
}

// keyLine is the keys that do something now. While text is typed letters are
// text, so none is offered. It names what is taken back where that leaves room for
// all the others, and says whether it does.
func (s *Screen) keyLine() (line paper.Line, named bool) {
	answers := s.answerKeys()
	if f := s.Field(); f != nil && f.Letters() {
		return append(answers, paper.Line{{Text: " Esc", Ink: paper.Accent}, {Text: " clears it ", Ink: paper.Faint}}...), true
	}
	table := s.Table()
	if says := s.takesBack(); says != "" {
		full := slices.Clone(table)
		full[0].Binding = part.On("u", fmt.Sprintf("take back %q", says))
		if s.x.Shows(answers, full) {
			return s.x.KeyLine(answers, full), true
		}
	}
	return s.x.KeyLine(answers, table), false
}

func (s *Screen) heading() string {
	words := s.id.Long()
	stock := s.x.Site().Species
	if s.record.Added != nil && s.record.Added.What.Stock != "" {
		stock = s.record.Added.What.Stock
	}
	if stock != "" && s.x.Width >= threeColumns {
		words += "   " + stock
	}
	if v := s.walk.Variety(); v != "" {
		words += ", for " + v
	}
	return words
}

func (s *Screen) answerKeys() paper.Line {
	switch {
	case s.doubt == nil && s.entry() != nil:
		return paper.Line{{Text: " Enter", Ink: paper.Accent}, {Text: " takes it ", Ink: paper.Faint}}
	case s.doubt == nil && s.asked.Checks != nil:
		all := " all good "
		if slices.Contains(s.good, false) {
			all = " as marked "
		}
		return paper.Line{{Text: " Enter", Ink: paper.Accent}, {Text: all, Ink: paper.Faint},
			{Text: fmt.Sprintf(" 1-%d", len(s.asked.Checks.Items)), Ink: paper.Accent}, {Text: " is not ", Ink: paper.Faint}}
	}
	first, last := "", ""
	for _, ch := range s.choices() {
		if first == "" || ch.Key < first {
			first = ch.Key
		}
		last = max(last, ch.Key)
	}
	if first != last {
		first += "-" + last
	}
	line := paper.Line{{Text: " " + first, Ink: paper.Accent}}
	if s.likely() != "" {
		return line.Add(paper.Faint, " or ").Add(paper.Accent, "Enter").Add(paper.Faint, " ")
	}
	return line.Add(paper.Faint, " answer ")
}

// likely is the key of the choice that Enter takes now, "" for none.
func (s *Screen) likely() string {
	if s.doubt != nil {
		return ""
	}
	return s.asked.Likely
}

// threeColumns is the window from which the figure has a column of its own.
const threeColumns = 120

// question is what stands beside the stem: the question alone, why, the answers
// and the coach, and the figure beside or below them; drawn says whether it had
// room there.
func (s *Screen) question(width, height int) (lines []paper.Line, drawn bool) {
	if s.fig > 0 {
		if large := s.largeFigure(width, height); large != nil {
			return large, true
		}
	}
	if s.x.Width < threeColumns {
		return s.column(width-1, height, true)
	}
	text := min(max(width*9/20, 46), 72)
	room := width - text - 3
	figure := s.figure(room, min(height-2, room*3/5+4)) // no higher than its width fills
	if len(figure) == 0 {
		return s.column(min(width-1, 84), height, false)
	}
	lines, _ = s.column(text, height, false)
	return sideBySide(lines, text+2, append([]paper.Line{nil}, figure...)), true
}

// largeFigure is the question with its figure alone, and what is typed.
func (s *Screen) largeFigure(width, height int) []paper.Line {
	lines := append([]paper.Line{nil}, part.Wrapped(paper.Strong, s.asked.Question, width-1)...)
	if s.doubt == nil && s.entry() != nil {
		lines = append(lines, s.answers(width-1)...)
	}
	if large := s.figure(width-1, height-len(lines)-1); len(large) > 0 {
		return append(append(lines, nil), large...)
	}
	return nil
}

// column is the question with air about it, why, the answers and the coach under
// one another; with figure, the figure where it is largest among them.
func (s *Screen) column(width, height int, figure bool) (lines []paper.Line, drawn bool) {
	question, said, answers := s.fitting(width, height)
	air := height - len(question) - len(said) - len(answers) // blank lines, the first before the answers
	if air >= 3 {
		lines = append(lines, nil)
	}
	lines = append(lines, question...)
	if air >= 2 {
		lines = append(lines, nil)
	}
	lines = append(lines, said...)
	if air >= 1 {
		lines = append(lines, nil)
	}
	from := len(lines)
	lines = append(lines, answers...)
	if figure {
		lines, drawn = s.besideAnswers(lines, from, width, height)
	}
	least := 0
	if figure && !drawn && len(s.figures()) > 0 {
		least = s.leastFigure()
	}
	room := height - len(lines) - 1
	if s.x.Prefs.Coach && room-least-1 < leastLesson {
		least = 0 // the lesson has the room
	}
	lesson := s.lesson(width, room-least-min(least, 1))
	if len(lesson) > 0 {
		lines = append(append(lines, nil), lesson...)
		room -= len(lesson) + 1
	}
	if least > 0 && room >= least {
		lines = append(lines, nil)
		lines = append(lines, s.figure(width, min(room, max(12, height/2)))...)
		drawn = true
	}
	return lines, drawn
}

// fitting is the question, why with what must not be missed, and the answers, in no
// more lines than there are: answers are told in fewer words before anything else
// is, and the question and every answer always have room.
func (s *Screen) fitting(width, height int) (question, said, answers []paper.Line) {
	question = part.Wrapped(paper.Strong, s.asked.Question, width)
	warnings := s.warnings(width)
	said = append(part.Wrapped(paper.Plain, s.because(), width), warnings...)
	answers = s.answersIn(width, height-len(question)-len(said))
	if room := max(height-len(question)-len(answers), 0); len(said) > room {
		warnings = shortened(warnings, width, room)
		said = append(sentences(s.because(), width, room-len(warnings)), warnings...)
	}
	return question, said, answers
}

// shortened is the first of some lines, with a sign where more follow.
func shortened(lines []paper.Line, width, room int) []paper.Line {
	if len(lines) <= room {
		return lines
	}
	lines = lines[:room]
	if room > 0 {
		lines[room-1] = lines[room-1].Cut(width-2).Add(lines[room-1][0].Ink, "…")
	}
	return lines
}

// besideAnswers puts the figure to the right of short answers that begin at a
// line, where it can be larger than under them. With the coach on it leaves the
// lines below to the lesson.
func (s *Screen) besideAnswers(lines []paper.Line, from, width, height int) ([]paper.Line, bool) {
	wide := 0
	for _, l := range lines[from:] {
		wide = max(wide, l.Width())
	}
	least := max(s.leastFigure(), 7)
	w, h := width-wide-3, height-from
	below := h - (len(lines) - from) - 1 // lines for the figure under the answers
	if s.x.Prefs.Coach {
		below -= leastLesson
		h = max(min(h, max(len(lines)-from, least)), min(h-leastLesson-4, w/2))
	}
	under := below >= least && h <= below+2 && !s.x.Prefs.Coach // as large under them
	if w < smallFigure || h < least || under {
		return lines, false
	}
	figure := s.figure(w, h)
	for y, f := range figure {
		if from+y == len(lines) {
			lines = append(lines, nil)
		}
		lines[from+y] = lines[from+y].Beside(wide+2, f)
	}
	return lines, len(figure) > 0
}

func (s *Screen) because() string {
	if until := s.asked.Until; until != nil && until.After(s.x.Time()) {
		at, in := unit.When(*until, s.x.Time(), s.x.Site().Zone), part.Span(until.Sub(s.x.Time()))
		if strings.Contains(s.asked.Question+s.asked.Because, at) {
			return fmt.Sprintf("%s (%s)", s.asked.Because, in)
		}
		return fmt.Sprintf("%s (%s, %s)", s.asked.Because, at, in)
	}
	return s.asked.Because
}

func (s *Screen) warnings(width int) []paper.Line {
	var out []paper.Line
	warn := s.asked.Warn
	if s.doubt != nil {
		warn = s.doubt.Says
	} else if bodies := s.typed(); len(bodies) == 1 { // as it stands in the field
		if w, ok := bodies[0].(*record.WoodChosen); ok {
			warn = s.walk.Unfit(*w)
		}
	}
	for _, l := range paper.Wrap(warn, width-2) {
		out = append(out, paper.Text(paper.Alarm, " "+l+" "))
	}
	for _, held := range s.heldWords() {
		out = append(out, part.Wrapped(paper.Warn, held, width)...)
	}
	if n := s.record.Newest; s.x.Earlier.IsZero() && n.Sub(s.x.Time()) > time.Minute {
		out = append(out, part.Wrapped(paper.Warn, "The newest answer here is of "+unit.When(n, s.x.Time(),
			s.x.Site().Zone)+", after this clock. Is the clock right?", width)...)
	}
	if a := s.record.Added; a != nil && a.What.Note != "" && s.asked.Step.Part < walk.PartAfter {
		out = append(out, paper.Text(paper.Faint, paper.Shorten("Note: "+a.What.Note, width)))
	}
	if s.record.TrunkCarries() {
		out = append(out, part.Wrapped(paper.Warn, "Grafts stand on the trunk of this tree too; j tells of them.", width)...)
	}
	for _, c := range s.record.Clashes {
		out = append(out, part.Wrapped(paper.Warn, s.disagreement(c), width)...)
	}
	if s.minds() {
		for _, c := range s.walk.Advice.Cautions {
			out = append(out, part.Wrapped(paper.Warn, "Mind: "+c, width)...)
		}
	}
	return out
}

// minds says whether what the readiness minds is said here: up to the measure,
// where it can still change what is done.
func (s *Screen) minds() bool {
	if len(s.walk.A.Grafts) > 0 {
		return false
	}
	switch s.asked.Step.ID {
	case walk.StepNewGashes, walk.StepFreshCut, walk.StepNewFace, walk.StepMeasure, walk.StepLongWay:
		return true
	}
	return s.asked.Step.Part < walk.PartGraft
}

// checks are what is looked at one by one, each with its mark.
func (s *Screen) checks(width int) []paper.Line {
	const column = 11
	var out []paper.Line
	for i, item := range s.asked.Checks.Items {
		word, ink := "good", paper.Plain
		if !s.good[i] {
			word, ink = "NOT ", paper.Alarm
		}
		l := paper.Line{{Text: "  ", Ink: paper.Plain}, {Text: fmt.Sprint(i + 1), Ink: paper.Accent}, {Text: "  " + word + " ", Ink: ink}}
		for _, words := range paper.Wrap(item.Word, max(width-column, 12)) {
			out = append(out, l.Pad(column).Add(paper.Plain, words))
			l = nil
		}
	}
	return out
}

// small is the screen without the stem, for a small window: the question and the
// answers whole, and of the rest as much as there is room for.
func (s *Screen) small() []paper.Line {
	width, height := s.x.Width-2, s.x.BodyHeight()
	if s.fig > 0 {
		if large := s.largeFigure(width+1, height); large != nil {
			return part.Indent(1, large)
		}
	}
	question := part.Under(strings.TrimSpace(s.marks().bar), paper.Accent, paper.Strong, s.asked.Question, width)
	answers := s.answersIn(width, height-len(question))
	if narrow := s.answers(width - smallFigure - 3); s.needsFigure() && len(question)+len(narrow) <= height {
		answers = narrow
	}
	room := max(height-len(question)-len(answers), 0)
	said := shortened(s.warnings(width), width, room) // these first
	room -= len(said)
	lesson := 0
	if s.x.Prefs.Coach {
		lesson = min(room, leastLesson, len(s.lessonLines(width)))
	}
	because := sentences(s.because(), width, room-lesson)
	room -= len(because)
	airy := room > lesson
	if airy {
		room--
	}

	var lines []paper.Line
	lines = append(append(lines, question...), append(said, because...)...)
	if airy {
		lines = append(lines, nil)
	}
	from := len(lines)
	lines = append(lines, answers...)
	lines = s.besideSmall(lines, from, room, width, height)
	if len(lines) < height {
		lines = append([]paper.Line{paper.Text(paper.Faint, s.standing())}, lines...)
	}
	return part.Indent(1, lines)
}

// sentences is as many whole sentences of a text as have room.
func sentences(text string, width, room int) []paper.Line {
	for text != "" {
		if lines := part.Wrapped(paper.Plain, text, width); len(lines) <= room {
			return lines
		}
		at := strings.LastIndex(strings.TrimSuffix(text, "."), ". ")
		text = text[:at+1]
	}
	return nil
}

// smallFigure is the columns that a figure needs beside the answers.
const smallFigure = 16

// besideSmall puts the lesson below the answers that begin at a line, in some
// lines, and the figure beside both where they leave it room.
func (s *Screen) besideSmall(lines []paper.Line, from, room, width, height int) []paper.Line {
	wide := 0
	for _, l := range lines[from:] {
		wide = max(wide, l.Width())
	}
	if s.x.Prefs.Coach && room > 0 {
		wide = max(wide, width*3/5)
	}
	w, h := width-wide-3, height-from
	var figure []paper.Line
	if w >= smallFigure && h >= 5 && len(s.figures()) > 0 {
		figure = s.figure(w, h)
	}
	if len(figure) == 0 {
		return append(lines, s.lesson(width, room)...)
	}
	lines = append(lines, s.lesson(wide, room)...)
	for y, f := range figure {
		if from+y == len(lines) {
			lines = append(lines, nil)
		}
		lines[from+y] = lines[from+y].Beside(wide+2, f)
	}
	return lines
}

// standing is where on the stem the walk stands, in a line.
func (s *Screen) standing() string {
	knots, done := s.walk.Knots(), 0
	for _, k := range knots {
		if answered(k) {
			done++
		}
	}
	return fmt.Sprintf("%s: %s, %d of %d steps done", s.asked.Step.Part, s.asked.Step.Name, done, len(knots))
}

// disagreement says which answers disagree, by whom and of when, and which of
// them counts meanwhile.
func (s *Screen) disagreement(c record.Clash) string {
	var said []string
	counts := "none of them counts"
	for _, e := range c.Events {
		words := record.Say(e.Body, s.x.Site().Units)
		said = append(said, fmt.Sprintf("%s (%s, %s)", words, e.Hand, unit.When(e.At, s.x.Time(), s.x.Site().Zone)))
		if e.ID == c.Holds {
			counts = words + " counts"
		}
	}
	return "Two answers stand: " + strings.Join(said, " and ") + ". Until e settles it " + counts + "."
}
