package part

import (
	"unicode/utf8"

	"barkslip/core/record"
	"barkslip/ui/figure"
	"barkslip/ui/paper"
)

// The heights of a stump in eighths of a cell, and the mark of one that is lost;
// in the finest characters and in plain ones.
const (
	heights, lostMark           = "·▁▂▃▄▅▆▇█", "×"
	plainHeights, plainLostMark = "012345678", "x"
)

// Mark is a stump as high as it has come: from standing to untied in eighths, or
// lost.
func (o Options) Mark(s record.Stage) string {
	all, lost := heights, lostMark
	if o.Plain {
		all, lost = plainHeights, plainLostMark
	}
	if s.Lost() {
		return lost
	}
	return string([]rune(all)[s.Height()])
}

// TallMark is a stump as high as it has come where there are two lines for it: what
// stands in the upper one and in the lower. An eighth is left free over the
// highest, so that rows stay apart.
func (o Options) TallMark(s record.Stage) (upper, lower string) {
	all := []rune(heights)
	switch eighths := 2*s.Height() - 1; {
	case o.Plain || s.Lost() || eighths < 0:
		return " ", o.Mark(s)
	case eighths > 8:
		return string(all[eighths-8]), string(all[8])
	default:
		return " ", string(all[eighths])
	}
}

// StageInk is the ink of a stage; its height tells it without.
func StageInk(s record.Stage) paper.Ink { return inkOf[stageInk(s)] }

func stageInk(s record.Stage) figure.Ink {
	switch {
	case s.Lost():
		return figure.Faint
	case s >= record.StagePushing:
		return figure.Growth
	}
	return figure.Plain
}

// StageCounts is how many stumps there are at each stage.
type StageCounts [record.StageGivenUp + 1]int

// All is how many there are at any stage.
func (c *StageCounts) All() (n int) {
	for _, at := range c {
		n += at
	}
	return n
}

// StageBar is a bar of so many columns whose parts are as wide as there are stumps
// at each stage, from standing up to untied and the lost last. A stage that occurs
// has a column at least while there is room for one each.
func (o Options) StageBar(c *StageCounts, width int) paper.Line {
	var stretches []figure.Stretch
	for i, n := range columnsOf(c, width) {
		s := record.Stage(i)
		mark, _ := utf8.DecodeRuneInString(o.Mark(s))
		stretches = append(stretches, figure.Stretch{Of: float64(n), Sign: mark, Ink: stageInk(s)})
	}
	return Bar(width, float64(width), stretches...)
}

// columnsOf shares columns out among the stages: one for each that occurs, the
// rest by the largest remainder.
func columnsOf(c *StageCounts, width int) (out StageCounts) {
	all, left := c.All(), width
	if all == 0 || width <= 0 {
		return out
	}
	for s, n := range c {
		if n > 0 && left > 0 {
			out[s] = 1
			left--
		}
	}
	for ; left > 0; left-- {
		most, lacks := 0, 0.0
		for s, n := range c {
			if short := float64(n)*float64(width)/float64(all) - float64(out[s]); n > 0 && (short > lacks || lacks == 0 && out[most] == 0) {
				most, lacks = s, short
			}
		}
		out[most]++
	}
	return out
}
