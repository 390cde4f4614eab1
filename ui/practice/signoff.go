package practice

import (
	"fmt"

	"barkslip/core/practice"
	"barkslip/core/trade"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// begin is before a sign-off: what it is, and whether it is begun or gone on with.
type begin struct{ *Screen }

func (b *begin) name() string { return "sign-off" }

func (b *begin) rows() []part.Row {
	word := "begin"
	if b.of.Open() != nil {
		word = "go on"
	}
	return []part.Row{part.ToOpen.Row(b.start).Named(word).Told("Begin the sign-off, or go on with the one that was begun."), b.back()}
}

// start begins a sign-off or goes on with the one begun; the cases drawn are kept at once,
// so that they are the same when it is left and gone on with.
func (b *begin) start() part.Msgs {
	off := b.of.Open()
	var msgs part.Msgs
	if off == nil {
		b.of.Begin(b.chance(), b.x.Now())
		msgs = b.keep()
		off = b.of.Open()
	}
	b.view = &asked{Screen: b.Screen, c: off.Case(), off: off, given: -1}
	return part.Says("").And(msgs...)
}

func (b *begin) frame() part.Frame {
	wide := min(b.x.Width-4, 76)
	asks := fmt.Sprintf("Sign-off: %d cases that %s has not seen.", trade.SignOffCases, b.of.Initials)
	if off := b.of.Open(); off != nil {
		asks = fmt.Sprintf("The sign-off of %s, %d of %d answered: go on?", practice.DayWords(off.Begun), off.At(), len(off.Cases))
	}
	lines := append([]paper.Line{nil}, part.Wrapped(paper.Strong, asks, wide)...)
	lines = append(lines, nil)
	lines = append(lines, part.Wrapped(paper.Plain, "Each case has one answer, by one key. Nothing is explained on the way, and the next case comes at once. It can be left with Esc and gone on with "+
		"later.", wide)...)
	lines = append(lines, nil)
	lines = append(lines, part.Wrapped(paper.Plain, fmt.Sprintf("At least %d right, and no skill with more than %d missed, is signed off. This mark is the choice of the program.",
		trade.SignOffRight, trade.SignOffMissed), wide)...)
	return part.Frame{Where: b.of.Initials + ", sign-off", Body: part.Indent(2, lines)}
}
