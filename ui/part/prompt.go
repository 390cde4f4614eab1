package part

import (
	tea "github.com/charmbracelet/bubbletea"

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
	switch k.String() {
	case "esc":
		return Msgs{Say{}, Back{}}
	case "enter":
		text := p.field.Text()
		if text == "" {
			text = p.likely
		}
		msgs, err := p.take(text)
		if err != nil {
			return Fails(err)
		}
		return append(Msgs{Say{}, Back{}}, msgs...)
	}
	p.field.Key(k)
	return nil
}

// Field is where the text goes.
func (p *Prompt) Field() *Field { return &p.field }

// Frame is that of the screen beneath with the prompt as its key line.
func (p *Prompt) Frame() Frame {
	f := p.under.Frame()
	l := paper.Line{{Text: " " + p.asks + " ", Ink: paper.Strong}}
	f.Keys = append(l, p.field.Line(p.likely, p.x.Width-l.Width())...)
	f.Hint = "Enter takes it, Esc leaves it."
	return f
}
