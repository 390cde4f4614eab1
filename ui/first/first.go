// Package first is the screen of first use: the questions that begin a block. It
// may import core and ui/part with its leaves, and no other screen.
package first

import (
	"errors"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// Screen begins a block: one question after another, each with a likely answer.
// Nothing is written until the last is answered.
type Screen struct {
	part.Still
	x     *part.Session
	at    int // question asked
	field part.Field
	begun bool // past the choice of how to begin
	list  bool // from a list
	given map[string]string

	several []string // zones that what was typed may mean
}

// New is the screen before its first question.
func New(x *part.Session) *Screen { return &Screen{x: x, given: map[string]string{}} }

// Asked is the name of the question asked, "" before the first.
func (f *Screen) Asked() string {
	if !f.begun {
		return ""
	}
	return questions[f.at].name
}

// Field is that of the question asked.
func (f *Screen) Field() *part.Field {
	if !f.begun {
		return nil
	}
	return &f.field
}

// Key answers or goes back.
func (f *Screen) Key(k tea.KeyMsg) part.Msgs {
	switch key := k.String(); {
	case !f.begun:
		return f.begin(k)
	case key == "enter":
		return f.answer()
	case key == "esc":
		f.back()
	case !f.field.Key(k):
		help := func() part.Msgs { return f.x.TypingHelp(questions[f.at].words) }
		return part.Press(part.Typing(help), k, part.Useless)
	}
	return nil
}

// begin takes the choice of how to begin.
func (f *Screen) begin(k tea.KeyMsg) part.Msgs {
	switch k.String() {
	case "1", "enter", "2", "3":
		if f.x.Looking() {
			return part.Fails(part.ErrLooking)
		}
	}
	switch k.String() {
	case "1", "enter", "2":
		f.begun, f.list, f.at = true, k.String() == "2", -1
		return f.next()
	case "3":
		return f.sample()
	case "4":
		return part.Msgs{part.Practice{}}
	case "5":
		if items := f.x.AwayItems(); len(items) > 0 {
			return f.x.Picks("Which block is seen again?", "", items)
		}
	case part.ToMeet.Keys[0], part.ToMeet.Keys[1]:
		if f.x.Meeting != nil {
			return f.x.Meet()
		}
	case "esc":
		if len(f.x.Book.Folded().List()) > 0 {
			return part.Msgs{part.Back{}}
		}
		return part.Msgs{part.NoUse{Why: "Nothing lies behind this. q leaves the program."}}
	}
	help := func() part.Msgs { return f.x.Help("start", f.x.Leaving(nil)) }
	return part.Press(f.x.Leaving(help), k, func(tea.KeyMsg) part.Msgs { return part.Msgs{part.NoUse{Why: "Press a digit from 1 to 4."}} })
}

func (f *Screen) sample() part.Msgs {
	if f.x.Sample == nil {
		return part.Fails(errors.New("the made-up book is not to be had here"))
	}
	return part.OtherBook(f.x.Sample, "A made-up block in a book of its own, to try things on. Nothing in it is real; b leads back.")
}

// ask asks the question at hand, with what was given before.
func (f *Screen) ask() { f.field = part.NewField(true, f.given[questions[f.at].name]) }

// next goes to the next question that is not skipped, or makes the block.
func (f *Screen) next() part.Msgs {
	for f.at++; f.at < len(questions); f.at++ {
		if q := questions[f.at]; q.skip == nil || !q.skip(f) {
			f.ask()
			return nil
		}
	}
	msgs, err := f.make()
	if err != nil {
		f.back()
		return part.Fails(err)
	}
	return msgs
}

func (f *Screen) back() {
	for f.at--; f.at >= 0; f.at-- {
		if q := questions[f.at]; q.skip == nil || !q.skip(f) {
			f.ask()
			return
		}
	}
	f.begun = false
}

func (f *Screen) answer() part.Msgs {
	q := questions[f.at]
	text := part.Typed(f.field.Text())
	if text == "" {
		text = q.likely(f)
	}
	if q.check != nil {
		if err := q.check(f, text); err != nil {
			return part.Fails(err)
		}
	}
	f.takes(q.name, text)
	msgs := part.Says("")
	if q.name == "hand" {
		msgs = msgs.And(f.x.SetHand(strings.ToUpper(text))...)
	}
	return msgs.And(f.next()...)
}

const whatItIs = "Barkslip takes you through a block of walnuts to be grafted, stump by stump, and knows what each needs next."

// ways are the ways to begin: key, word, meaning.
func (f *Screen) ways() [][3]string {
	ways := [][3]string{{"1", "a block", "by name, rows and trees"}, {"2", "a list", "stumps from a CSV file"},
		{"3", "the sample", "a made-up block in a book of its own, to try things on"},
		{"4", "practice", "made-up cases to judge, before you stand at a tree"}}
	if len(f.x.Book.Folded().Others()) > 0 {
		ways = append(ways, [3]string{"5", "put away", "a block that was put away, or is made up"})
	}
	if f.x.Meeting != nil {
		ways = append(ways, [3]string{part.ToMeet.Keys[0], "a crew", "take what your crew has, from its server"})
	}
	return ways
}

// because is why the question is asked.
func (f *Screen) because() string {
	if questions[f.at].name == "agree" {
		return f.disagree()
	}
	return questions[f.at].because
}

// Frame shows the question asked, or the ways to begin.
func (f *Screen) Frame() part.Frame {
	width := min(f.x.Width-4, 76)
	out := part.Frame{Title: "Barkslip", Where: "a new block"}
	var lines []paper.Line
	if !f.begun {
		lines = []paper.Line{nil, paper.Text(paper.Strong, "How do you want to begin?"), nil}
		lines = append(lines, part.Wrapped(paper.Plain, whatItIs, width)...)
		lines = append(lines, nil)
		for i, c := range f.ways() {
			lines = append(lines, part.Choice(c[0], c[1], i == 0).Pad(19).Add(paper.Faint, c[2]))
		}
		out.Keys = f.x.KeyLine(nil, nil)
	} else {
		q := questions[f.at]
		lines = []paper.Line{nil, paper.Text(paper.Strong, q.words), nil}
		lines = append(lines, part.Wrapped(paper.Plain, f.because(), width)...)
		lines = append(lines, nil, paper.Text(paper.Faint, q.asks), f.field.Line(q.likely(f), width))
		if q.name == "zone" {
			lines = append(lines, f.zoneLines()...)
		}
		out.Keys = paper.Text(paper.Faint, " Enter takes it   Esc back   F1 keys   Ctrl-C leaves the program")
	}
	out.Body = part.Indent(2, lines)
	return out
}
