package block

import (
	"fmt"

	"barkslip/core/record"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// legend says in words what the marks mean.
func (b *Screen) legend() part.Msgs {
	lines := func(width int) []paper.Line {
		out := []paper.Line{nil}
		say := func(text string) {
			out = append(out, part.Indent(2, part.Wrapped(paper.Plain, text, min(width-4, 96)))...)
		}
		say("A stump's mark is as high as the stump has come; one that is lost is crossed out.")
		out = append(out, nil)
		for _, st := range record.Stages() {
			l := paper.Line{{Text: "    ", Ink: paper.Plain}, {Text: b.x.Mark(st), Ink: part.StageInk(st)}}
			out = append(out, l.Add(paper.Plain, "  "+st.String()))
		}
		late := paper.Line{{Text: "   ", Ink: paper.Plain}, {Text: " " + b.x.Mark(record.StageLeader), Ink: paper.Alarm}}
		differ := paper.Line{{Text: "   ", Ink: paper.Plain}, {Text: " " + b.x.Mark(record.StageLeader), Ink: paper.Lined}}
		here := paper.Line{{Text: fmt.Sprintf("   [%s]", b.x.Mark(record.StageLeader)), Ink: paper.Accent}}
		picked := paper.Line{{Text: "   +" + b.x.Mark(record.StageLeader), Ink: paper.Accent}}
		out = append(out, nil,
			late.Pad(7).Add(paper.Plain, "turned: work there is late; amber alone: a white clock runs"),
			differ.Pad(7).Add(paper.Plain, "underlined: answers disagree; E opens the next"),
			here.Pad(7).Add(paper.Plain, "the cursor; below stands what is due there"),
			picked.Pad(7).Add(paper.Plain, "picked, for one answer with a"), nil)
		say("Seen whole, a line is a bar of the stages of its stumps, as long as it has stumps. With a filter, the stumps it does not show are left blank.")
		return out
	}
	return part.Msgs{part.Read{Page: part.NewPage(b.x, "The marks", "block", lines)}}
}
