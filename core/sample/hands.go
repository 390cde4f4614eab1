package sample

// hand is somebody of the crew; skill shifts the odds of a graft.
type hand struct {
	initials string
	skill    float64
}

// crew is four made-up hands; the last is learning.
var crew = []hand{{"MK", 0.4}, {"JT", 0.2}, {"RD", 0}, {"AS", -0.6}}

// grafter is who grafts the i-th stump: hands take stretches of a row in turn, in
// each row the next begins.
func (g *ground) grafter(i int) hand { return crew[(i/5+i/g.perRow)%len(crew)] }

// office is who keeps the book of the block.
const office = "MK"
