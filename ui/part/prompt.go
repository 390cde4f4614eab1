package part

import (
	"errors"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/unit"
	"barkslip/ui/paper"
)

// Prompt asks for one line of text in the place of the key line of the screen
// beneath.
type Prompt struct {
	Still
	x      *Session
	asks   string
	likely string
	field  Field
	take   func(text string) (Msgs, error)
	under  Screen
	which  *unit.EitherDay // a date in what was typed, of which it is asked which day is meant
}

// Asks is the message of a prompt. Text that take cannot take, it says so with an
// error, and the prompt stays.
func (x *Session) Asks(asks, likely string, words bool, take func(text string) (Msgs, error)) Msgs {
	return x.AsksFrom("", asks, likely, words, take)
}

// AsksFrom is Asks with a text begun.
func (x *Session) AsksFrom(begun, asks, likely string, words bool, take func(text string) (Msgs, error)) Msgs {
	return Msgs{Ask{&Prompt{x: x, asks: asks, likely: likely, field: NewField(words, begun), take: take}}}
}

// Over lays the prompt over a screen.
func (p *Prompt) Over(s Screen) { p.under = s }

// Key types, takes or leaves.
func (p *Prompt) Key(k tea.KeyMsg) Msgs {
	if p.which != nil {
		return p.pickDay(k)
	}
	switch k.String() {
	case "esc":
		return Msgs{Say{}, Back{}}
	case "enter":
		text := p.field.Text()
		if text == "" {
			text = p.likely
		}
		return p.taken(text)
	}
	if p.field.Key(k) {
		return nil
	}
	return Press(Typing(p.help), k, Useless)
}

// Typing are the keys that work while something is typed, where they are no text.
func Typing(help func() Msgs) []Row { return []Row{ToHelp.Row(help), ToWords.Row(Does(Words{}))} }

func (p *Prompt) help() Msgs { return p.x.TypingHelp(p.asks) }

// TypingHelp is the keys of a field.
func (x *Session) TypingHelp(asks string) Msgs {
	return x.Help(asks, []Row{
		ToOpen.Row(nil).Told("Take what was typed, or what stands there as likely."),
		ToBack.Row(nil).Told("Leave it; nothing is taken."),
		{Binding: On("left right", ""), Says: "Along what was typed; Home and End go to its beginning and its end."},
		{Binding: On("Backspace", ""), Says: "Take out the letter before the cursor; Ctrl-W the word."},
	}, Typing(nil))
}

// taken takes a text; of a date that may be two days it asks which.
func (p *Prompt) taken(text string) Msgs {
	msgs, err := p.take(text)
	if errors.As(err, &p.which) {
		return Says("")
	}
	if err != nil {
		return Fails(err)
	}
	return append(Msgs{Say{}, Back{}}, msgs...)
}

// pickDay takes which of two days is meant, or goes back to what was typed.
func (p *Prompt) pickDay(k tea.KeyMsg) Msgs {
	which := p.which
	day := map[string]unit.Date{"1": which.First, "2": which.Second}[k.String()]
	switch {
	case k.String() == "esc":
		p.which = nil
		return nil
	case day == 0:
		return Says("1 or 2; Esc goes back to what was typed.")
	}
	p.which = nil
	return p.taken(strings.Replace(p.field.Text(), which.Given, day.String(), 1))
}

// Field is where the text goes.
func (p *Prompt) Field() *Field {
	if p.which != nil {
		return nil
	}
	return &p.field
}

// Frame is that of the screen beneath with the prompt as its key line.
func (p *Prompt) Frame() Frame {
	f := p.under.Frame()
	if p.which != nil {
		f.Keys = paper.Line{{Text: " " + p.which.Given + " is which day?", Ink: paper.Strong}, {Text: "  1  ", Ink: paper.Accent},
			{Text: p.which.First.Long(), Ink: paper.Plain}, {Text: "   2  ", Ink: paper.Accent}, {Text: p.which.Second.Long(), Ink: paper.Plain}}
		f.Hint = "1 or 2; Esc goes back to what was typed."
		return f
	}
	l := paper.Line{{Text: " " + p.asks + " ", Ink: paper.Strong}}
	f.Keys = append(l, p.field.Line(p.likely, p.x.Width-l.Width())...)
	f.Hint = "Enter takes it, Esc leaves it, F1 shows the keys."
	return f
}
