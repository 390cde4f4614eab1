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

// Frame shows the stake, the question and its figure.
func (s *Screen) Frame() part.Frame {
	x := s.x
	b := x.Site()
	f := part.Frame{Title: b.Name, Where: s.heading(), Only: x.OnlyWords()}
	f.Keys = s.keyLine()
	if x.Width < part.FullWidth || x.Height < part.FullHeight-2 {
		f.Body = s.small()
		return f
	}
	right := s.question(x.Width-stakeWidth-1, x.BodyHeight())
	stake := s.stake(x.BodyHeight())
	for i := range max(len(stake), len(right)) {
		var l, r paper.Line
		if i < len(stake) {
			l = stake[i]
		}
		if i < len(right) {
			r = right[i]
		}
		f.Body = append(f.Body, l.Beside(stakeWidth, r))
	}
	return f
}

// keyLine is the keys that do something now. While text is typed letters are
// text, so none is offered.
func (s *Screen) keyLine() paper.Line {
	answers := s.answerKeys()
	if f := s.Field(); f != nil && f.Letters() {
		return append(answers, paper.Line{{Text: " Esc", Ink: paper.Accent}, {Text: " clears it ", Ink: paper.Faint}}...)
	}
	return s.x.KeyLine(answers, s.Table())
}

func (s *Screen) heading() string {
	words := s.id.Long()
	stock := s.x.Site().Species
	if s.record.Added != nil && s.record.Added.What.Stock != "" {
		stock = s.record.Added.What.Stock
	}
	if stock != "" && s.x.Width >= 100 {
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
	return paper.Line{{Text: " " + first, Ink: paper.Accent}, {Text: " answer ", Ink: paper.Faint}}
}

// question is the right side: the question alone, why, the answers, and below
// or beside them the figure and the coach.
func (s *Screen) question(width, height int) []paper.Line {
	text := width - 1
	beside := width >= 76
	if beside {
		text = 46
	}
	lines := []paper.Line{nil}
	lines = append(lines, part.Wrapped(paper.Strong, s.asked.Question, text)...)
	if s.fig > 0 {
		if s.doubt == nil && s.entry() != nil {
			lines = append(lines, s.answers(text)...)
		}
		if large := s.figure(width-1, min(height-len(lines)-1, 24)); len(large) > 0 {
			return append(append(lines, nil), large...)
		}
	}
	lines = append(lines, nil)
	lines = append(lines, part.Wrapped(paper.Plain, s.because(), text)...)
	lines = append(lines, s.warnings(text)...)
	lines = append(lines, nil)
	lines = append(lines, s.answers(text)...)
	if s.x.Prefs.Coach {
		lines = fit(append(lines, s.lesson(text)...), height)
	}
	if beside {
		return s.withFigure(lines, text, width, height)
	}
	if narrow, ok := s.besideAnswers(lines, width, height); ok {
		return narrow
	}
	if room := height - len(lines) - 1; room >= s.leastFigure() {
		lines = append(lines, nil)
		lines = append(lines, s.figure(width-1, min(room, 12))...)
	}
	return lines
}

// besideAnswers puts the figure to the right of short answers, where it can be
// larger than under them.
func (s *Screen) besideAnswers(lines []paper.Line, width, height int) ([]paper.Line, bool) {
	if s.x.Prefs.Coach {
		return nil, false
	}
	answers := s.answers(width - 1)
	wide := 0
	for _, l := range answers {
		wide = max(wide, l.Width())
	}
	from := len(lines) - len(answers)
	w, h := width-wide-3, height-from
	if w < 16 || h < 8 || h <= height-len(lines)+1 && len(answers) < 3 {
		return nil, false
	}
	for y, f := range s.figure(w, h) {
		if from+y == len(lines) {
			lines = append(lines, nil)
		}
		lines[from+y] = lines[from+y].Beside(wide+2, f)
	}
	return lines, true
}

func (s *Screen) withFigure(lines []paper.Line, text, width, height int) []paper.Line {
	figure := s.figure(width-text-3, min(height-1, 24))
	out := make([]paper.Line, max(len(lines), len(figure)+1))
	for i := range out {
		var l, r paper.Line
		if i < len(lines) {
			l = lines[i]
		}
		if i > 0 && i <= len(figure) {
			r = figure[i-1]
		}
		out[i] = l.Beside(text+2, r)
	}
	return out
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

// answers are the choices as number, word, meaning; or the field; or the
// checks.
func (s *Screen) answers(width int) []paper.Line {
	switch {
	case s.doubt == nil && s.entry() != nil:
		e := s.entry()
		return append(part.Wrapped(paper.Faint, e.Asks, width), s.field.Line(e.Likely, width))
	case s.asked.Checks != nil:
		if s.doubt == nil {
			return append(s.checks(width), s.offered(width)...)
		}
	}
	return s.offered(width)
}

// offered is the choices as number, word, meaning.
func (s *Screen) offered(width int) []paper.Line {
	wide := 0
	for _, ch := range s.choices() {
		wide = max(wide, paper.Width(ch.Word))
	}
	var out []paper.Line
	for _, ch := range s.choices() {
		dot, ink := "  ", paper.Plain
		if s.doubt == nil && ch.Key == s.asked.Likely {
			dot, ink = s.x.Dot(), paper.Strong
		}
		l := paper.Line{{Text: dot, Ink: paper.Accent}, {Text: ch.Key + "  ", Ink: paper.Accent}, {Text: ch.Word, Ink: ink}}
		out = append(out, l.Pad(wide+7).Add(paper.Faint, ch.Meaning).Cut(width))
	}
	return out
}

func (s *Screen) checks(width int) []paper.Line {
	var out []paper.Line
	for i, item := range s.asked.Checks.Items {
		word, ink := "good", paper.Plain
		if !s.good[i] {
			word, ink = "NOT ", paper.Alarm
		}
		l := paper.Line{{Text: "  ", Ink: paper.Plain}, {Text: fmt.Sprint(i + 1), Ink: paper.Accent}, {Text: "  " + word + " ", Ink: ink},
			{Text: " " + item.Word, Ink: paper.Plain}}
		out = append(out, l.Cut(width))
	}
	return out
}

// lesson is the coach: the cautions of the step, what to look for, why, and what
// to do when it is not right.
func (s *Screen) lesson(width int) []paper.Line {
	st := s.asked.Step
	lines := []paper.Line{nil}
	for _, c := range st.Cautions { // first: they are never what there is no room for
		lines = append(lines, part.Under("Caution  ", paper.Warn, paper.Plain, c.Says, width)...)
	}
	for _, p := range []struct{ label, text string }{{"Look for ", st.LookFor}, {"Why      ", st.Why}, {"If not   ", st.NotRight}} {
		if p.text != "" {
			lines = append(lines, part.Under(p.label, paper.Growth, paper.Plain, p.text, width)...)
		}
	}
	return lines
}

// small is the screen without stake or figure, for a small window.
func (s *Screen) small() []paper.Line {
	width := s.x.Width - 2
	knots := s.walk.Knots()
	done := 0
	for _, k := range knots {
		if answered(k) {
			done++
		}
	}
	head := fmt.Sprintf("%s: %s, %d of %d steps tied", s.asked.Step.Part, s.asked.Step.Name, done, len(knots))
	lines := part.Under(s.knot(false, true), paper.Accent, paper.Strong, s.asked.Question, width)
	answers := s.answers(width)
	var between []paper.Line // as much as there is room for, warnings first
	between = append(between, s.warnings(width)...)
	between = append(between, part.Wrapped(paper.Plain, s.because(), width)...)
	room := max(s.x.BodyHeight()-len(lines)-len(answers), 0)
	if room > len(between) {
		lines = append([]paper.Line{paper.Text(paper.Faint, head)}, lines...)
	}
	lines = append(lines, between[:min(room, len(between))]...)
	return part.Indent(1, append(lines, answers...))
}

// fit cuts lines to a height and says where the rest stands.
func fit(lines []paper.Line, height int) []paper.Line {
	if len(lines) <= height {
		return lines
	}
	return append(lines[:height-1], paper.Text(paper.Faint, "w shows the rest"))
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
