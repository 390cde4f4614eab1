package pdf

import (
	"slices"
	"strings"

	"golang.org/x/text/unicode/bidi"
)

// cluster is a letter with the marks over and under it, which stay with it.
type cluster struct {
	letters string
	class   bidi.Class
	level   int // 0 left to right, 1 right to left, 2 a number among the latter
}

// turned orders a text as it is seen in a line that runs from left to right, by
// the rules of Unicode Standard Annex 9 for text without embeddings: words from
// right to left are turned, numbers among them are not, and what parts two words
// goes with them where both run the same way.
func turned(words string) string {
	line := clusters(words)
	joinNumbers(line)
	setLevels(line)
	pairBrackets(line)
	for level := 2; level > 0; level-- {
		turnRuns(line, level)
	}
	var out strings.Builder
	for _, c := range line {
		if c.level == 1 {
			c.letters = mirrored.Replace(c.letters)
		}
		out.WriteString(c.letters)
	}
	return out.String()
}

// mirrored turns brackets round.
var mirrored = strings.NewReplacer("(", ")", ")", "(", "[", "]", "]", "[", "{", "}", "}", "{", "<", ">", ">", "<", "«", "»", "»", "«")

func clusters(words string) (out []cluster) {
	for _, r := range words {
		class := classOf(r)
		if class == bidi.NSM && len(out) > 0 {
			out[len(out)-1].letters += string(r)
			continue
		}
		out = append(out, cluster{letters: string(r), class: class})
	}
	return out
}

// joinNumbers makes what parts two halves of a number, as in 12/4, a part of it.
func joinNumbers(line []cluster) {
	number := func(c cluster) bool { return c.class == bidi.EN }
	for i := 1; i+1 < len(line); i++ {
		if c := line[i].class; (c == bidi.CS || c == bidi.ES) && number(line[i-1]) && number(line[i+1]) {
			line[i].class = bidi.EN
		}
	}
}

// pairBrackets has a bracket that closes go the way of the one that opened.
func pairBrackets(line []cluster) {
	var open []int
	for i, c := range line {
		switch {
		case strings.ContainsAny(c.letters, "([{"):
			open = append(open, line[i].level)
		case strings.ContainsAny(c.letters, ")]}") && len(open) > 0:
			line[i].level, open = open[len(open)-1], open[:len(open)-1]
		}
	}
}

// setLevels levels words and numbers by the last word before them, then what
// parts them by both sides of it.
func setLevels(line []cluster) {
	right := false // the last word runs from right to left
	open := 0      // from where on nothing is levelled yet
	before := 0    // the way of what stands there
	for i := range line {
		c := &line[i]
		switch c.class {
		case bidi.R, bidi.AL:
			c.level, right = 1, true
		case bidi.L:
			c.level, right = 0, false
		case bidi.EN, bidi.AN:
			if c.level = 0; right {
				c.level = 2
			}
		default:
			continue
		}
		way := min(c.level, 1)
		for j := open; j < i; j++ {
			line[j].level = min(before, way)
		}
		open, before = i+1, way
	}
}

// turnRuns turns round each run of clusters at a level or above.
func turnRuns(line []cluster, level int) {
	for from := 0; from < len(line); from++ {
		to := from
		for to < len(line) && line[to].level >= level {
			to++
		}
		slices.Reverse(line[from:to])
		from = max(from, to-1)
	}
}
