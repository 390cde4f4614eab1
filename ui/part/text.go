package part

import (
	"fmt"
	"strings"

	"barkslip/ui/paper"
)

// Wrapped is a text in one ink over as many lines as it needs.
func Wrapped(ink paper.Ink, s string, width int) []paper.Line {
	var out []paper.Line
	for _, l := range paper.Wrap(s, width) {
		out = append(out, paper.Text(ink, l))
	}
	return out
}

// Under sets text behind a label, its further lines under its first.
func Under(label string, labelInk, ink paper.Ink, s string, width int) []paper.Line {
	indent := paper.Width(label) + 1
	var out []paper.Line
	for i, l := range paper.Wrap(s, max(width-indent, 10)) {
		head := paper.Text(paper.Plain, strings.Repeat(" ", indent))
		if i == 0 {
			head = paper.Line{{Text: label, Ink: labelInk}, {Text: " ", Ink: paper.Plain}}
		}
		out = append(out, head.Add(ink, l))
	}
	return out
}

// Indent sets lines in by some columns.
func Indent(n int, lines []paper.Line) []paper.Line {
	pad := strings.Repeat(" ", n)
	for i, l := range lines {
		lines[i] = append(paper.Line{{Text: pad, Ink: paper.Plain}}, l...)
	}
	return lines
}

// Counted is a number with its noun.
func Counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Spaced is a name as words: head-back becomes head back.
func Spaced(s string) string { return strings.ReplaceAll(s, "-", " ") }
