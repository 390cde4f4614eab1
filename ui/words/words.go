// Package words is the legend: what the marks of the block mean, and the words of
// the trade, with small drawings. It may import core and ui/part with its leaves,
// and no other screen.
package words

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Screen shows the marks and the words, or of the words those that begin with
// what was typed.
type Screen struct {
	part.Still
	x     *part.Session
	field part.Field
	page  *part.Page
}

// New is the legend from its beginning.
func New(x *part.Session) *Screen {
	s := &Screen{x: x, field: part.NewField(true, "")}
	s.fill()
	return s
}

// fill lays the page anew.
func (s *Screen) fill() { s.page = part.NewPage(s.x, "Marks and words", "", s.lines) }

// Field is where the first letters of a word go.
func (s *Screen) Field() *part.Field { return &s.field }

// Key types the first letters of a word, scrolls, or goes back.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs {
	typed := s.field.Text()
	switch key := k.String(); {
	case key == "esc" && typed != "":
		s.field.Clear()
	case key == " " && typed == "", key == "up", key == "down", key == "pgup", key == "pgdown",
		typed == "" && (key == "home" || key == "end"):
		return s.page.Key(k)
	case s.field.Key(k):
	default:
		return part.Press(s.table(), k, part.Useless)
	}
	if s.field.Text() != typed {
		s.fill()
	}
	return nil
}

// table is the keys beside those that type and scroll.
func (s *Screen) table() []part.Row {
	return []part.Row{
		part.ToBack.Row(part.Does(part.Back{})).Told("Back; with letters typed, to all words first."),
		part.ToHelp.Row(s.help),
	}
}

func (s *Screen) help() part.Msgs {
	return s.x.Help("marks and words", []part.Row{
		{Binding: part.On("a-z", ""), Says: "Type the first letters of a word to find it; Backspace takes a letter out."},
		{Binding: part.On("up down", ""), Says: "By a line. Space and Page Down read on, Page Up reads back, Home and End go to the beginning and the end."},
	}, s.table())
}

// Frame is the page, with what was typed in the key line.
func (s *Screen) Frame() part.Frame {
	f := s.page.Frame()
	f.Keys = append(paper.Text(paper.Strong, " Find "), s.field.Line("", s.x.Width/3)...)
	if s.x.Width >= part.FullWidth {
		f.Keys = f.Keys.Add(paper.Faint, "  type a word's first letters")
	}
	f.Keys = f.Keys.Add(paper.Faint, "   ").Add(paper.Accent, "Space").Add(paper.Faint, " read on   ").
		Add(paper.Accent, "Esc").Add(paper.Faint, " back")
	return f
}

// lines are all that is shown.
func (s *Screen) lines(width int) []paper.Line {
	begun := strings.ToLower(strings.TrimSpace(s.field.Text()))
	if begun != "" {
		var found []word
		for _, w := range trade {
			if begins(w.name, begun) {
				found = append(found, w)
			}
		}
		if len(found) == 0 {
			return []paper.Line{nil, paper.Text(paper.Plain, "  No word here begins with "+paper.Shorten(begun, 20)+". Esc shows all.")}
		}
		return told(found, width)
	}
	return append(s.marks(width), told(trade, width)...)
}

// begins says whether a word of a name begins with some letters.
func begins(name, letters string) bool {
	if strings.HasPrefix(name, letters) {
		return true
	}
	for _, w := range strings.Fields(name) {
		if strings.HasPrefix(w, letters) {
			return true
		}
	}
	return false
}

// marks are the marks of the block, with their pictures.
func (s *Screen) marks(width int) []paper.Line {
	out := []paper.Line{nil}
	say := func(ink paper.Ink, text string) {
		out = append(out, part.Indent(2, part.Wrapped(ink, text, s.x.Measure(width-4)))...)
	}
	say(paper.Strong, "The marks of the block")
	say(paper.Plain, "A stump's mark is as high as the stump has come, from standing to untied. One that is lost is crossed out.")
	out = append(out, nil)
	stages := record.Stages()
	half := (len(stages) + 1) / 2
	for i := range half {
		l := s.stage(stages[i])
		if j := i + half; j < len(stages) {
			l = append(l.Pad(min(width/2, 34)), s.stage(stages[j])...)
		}
		out = append(out, l)
	}
	mark := s.x.Mark(record.StageLeader)
	sign := func(l paper.Line, means string) {
		rest := part.Wrapped(paper.Plain, means, width-10)
		out = append(out, append(l.Pad(8), rest[0]...))
		out = append(out, part.Indent(8, rest[1:])...)
	}
	out = append(out, nil)
	sign(paper.Text(paper.Plain, "    ").Add(paper.Alarm, mark), "turned: work there is late")
	sign(paper.Text(paper.Plain, "    ").Add(paper.Warn, mark), "amber: it is sealed and waits to be painted white")
	sign(paper.Text(paper.Plain, "    ").Add(paper.Lined, mark), "underlined: answers disagree; e settles it")
	sign(paper.Text(paper.Accent, "   ["+mark+"]"), "the cursor; below the map stands what is due there")
	sign(paper.Text(paper.Accent, "   +"+mark), "picked, to be given one answer with a")
	out = append(out, nil)
	say(paper.Plain, "Seen whole, a line is a bar of the stages of its stumps. With a filter, stumps it does not show are left blank.")
	out = append(out, nil)
	say(paper.Strong, "Words of the trade, in the order of the work")
	return out
}

func (s *Screen) stage(of record.Stage) paper.Line {
	return paper.Text(paper.Plain, "    ").Add(part.StageInk(of), s.x.Mark(of)).Add(paper.Plain, "   "+of.String())
}

// Columns of a word: its name, what it means, the drawing.
const (
	nameWide = 16
	saysMost = 64
	drawn    = 22
	least    = 76 // columns from which the drawing stands beside
)

// told are words with what they mean; those that share a drawing stand together
// beside it, or over it in a narrow window.
func told(words []word, width int) (out []paper.Line) {
	for from, to := 0, 0; from < len(words); from = to {
		for to = from + 1; to < len(words) && words[to].draw == words[from].draw; to++ {
		}
		out = append(out, beside(words[from:to], words[from].draw, width)...)
	}
	return out
}

func beside(words []word, draw *drawing, width int) []paper.Line {
	wide := min(width-4-nameWide, saysMost)
	if draw != nil && width >= least {
		wide = min(width-4-nameWide-drawn-2, saysMost)
	}
	var lines []paper.Line
	for _, w := range words {
		says := part.Wrapped(paper.Plain, w.says, wide)
		lines = append(lines, nil)
		for i, l := range says {
			name := ""
			if i == 0 {
				name = w.name
			}
			lines = append(lines, append(paper.Text(paper.Strong, "  "+name).Pad(2+nameWide), l...))
		}
	}
	switch {
	case draw == nil:
	case width >= least:
		at := 2 + nameWide + wide + 2
		for i, l := range *draw {
			for len(lines) <= i+1 {
				lines = append(lines, nil)
			}
			lines[i+1] = lines[i+1].Pad(at).Add(paper.Plain, l)
		}
	default:
		lines = append(lines, nil)
		for _, l := range *draw {
			lines = append(lines, paper.Text(paper.Plain, strings.Repeat(" ", 2+nameWide)+l))
		}
	}
	return lines
}
