package ui

import "barkslip/ui/paper"

// prompt asks for one line of text in the place of the key line.
type prompt struct {
	r      *root
	asks   string
	field  field
	likely string
	take   func(text string) error // an error keeps the prompt open
}

const promptWords = "Enter takes it, Esc leaves it."

func (r *root) ask(asks, likely string, any bool, take func(text string) error) {
	r.x.say(promptWords)
	r.prompt = &prompt{r: r, asks: asks, likely: likely, field: field{any: any}, take: take}
}

func (p *prompt) key(key string) {
	switch key {
	case "esc":
		p.r.prompt = nil
		p.r.x.say("")
	case "enter":
		text := p.field.text
		if text == "" {
			text = p.likely
		}
		if err := p.take(text); err != nil {
			p.r.x.fail(err)
			return
		}
		if p.r.prompt == p {
			p.r.prompt = nil
		}
		if p.r.x.said == promptWords && p.r.prompt == nil {
			p.r.x.say("")
		}
	default:
		p.field.typed(key)
	}
}

func (p *prompt) line() paper.Line {
	l := paper.Line{{Text: " " + p.asks + " ", Ink: paper.Strong}}
	return append(l, p.field.line(p.likely, p.r.x.width-l.Width())...)
}
