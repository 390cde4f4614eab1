package trade

import (
	"encoding/json"

	"barkslip/core/unit"
)

// Worked is the working of one computed answer: what was asked, the formula in
// words, what went in, what had to be assumed, and the facts it rests on. It
// feeds the why-screen, the text for people and the `because` of JSON alike.
type Worked struct {
	Question string  // what the number answers, as a short title
	Answer   []Input // the results by name
	Formula  string  // in words
	Inputs   []Input
	Assumed  []string
	Facts    []Fact
}

// Input is a named quantity: a unit type, a number or text.
type Input struct {
	Name   string // "" where the value is a whole sentence
	Value  any
	Limits []unit.Length // that a length is held against; it is printed on its own side of each
}

// Show prints the quantity in the units of a system.
func (in Input) Show(sys unit.System) string {
	if l, ok := in.Value.(unit.Length); ok && len(in.Limits) > 0 {
		return sys.Beside(l, in.Limits...)
	}
	return sys.Show(in.Value)
}

// Line is the quantity with its name before it; one without a name is a sentence
// of its own.
func (in Input) Line(sys unit.System) string {
	if in.Name == "" {
		return in.Show(sys)
	}
	return in.Name + ": " + in.Show(sys)
}

// MarshalJSON writes the facts alone, as `because` in machine-readable answers.
func (w Worked) MarshalJSON() ([]byte, error) {
	out := make([]Because, 0, len(w.Facts))
	for _, f := range w.Facts {
		out = append(out, f.Because())
	}
	return json.Marshal(out)
}

// Lines prints the working for people, one item a line, in their units.
func (w Worked) Lines(sys unit.System) []string {
	lines := []string{w.Question}
	for _, a := range w.Answer {
		lines = append(lines, "  "+a.Line(sys))
	}
	if w.Formula != "" {
		lines = append(lines, "How: "+w.Formula)
	}
	for _, in := range w.Inputs {
		lines = append(lines, "  "+in.Name+": "+in.Show(sys))
	}
	for _, a := range w.Assumed {
		lines = append(lines, "Assumed: "+a)
	}
	for _, f := range w.Facts {
		lines = append(lines, "Because: "+f.Says+" ("+f.Cite()+")")
	}
	return lines
}

// Impossible is a combination of inputs that cannot be: the option at fault,
// what it was given and what would be accepted.
type Impossible struct {
	Option   string // as on the command line without dashes: across, tip
	Given    string
	Accepted string
}

func (e *Impossible) Error() string {
	return e.Option + ": " + e.Given + " cannot be; give " + e.Accepted
}
