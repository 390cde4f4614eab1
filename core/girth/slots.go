package girth

import (
	"math"
	"strconv"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// MostSlots is the most slots a layout may be asked for.
const MostSlots = 24

// equalGap is how far apart two smallest gaps may be and still count as equal
// when a side is preferred.
const equalGap = 1 * unit.Millimetre

// SlotPlan is a stump and what is wanted of its slots.
type SlotPlan struct {
	Across, Across2 unit.Length   // Across2 is 0 for a round stump
	LongWay         unit.Bearing  // of the longer diameter
	Scions          int           // 0: as Scions counts
	Blocked         []Arc         // bark that can carry no slot
	Slot            unit.Length   // width of a slot, kept clear of blocked bark; 0: trade.SlotWidth
	Toward          *unit.Bearing // the side one slot should be nearest, if any
}

// Oval is the outline of the plan's stump.
func (p SlotPlan) Oval() Oval { return Oval{p.Across, p.Across2, p.LongWay} }

// Slot is the place of one slot's centre.
type Slot struct {
	Bearing unit.Bearing `json:"bearing_deg"` // from the stump's centre
	Along   unit.Length  `json:"along_mm"`    // clockwise from the end of the long diameter at LongWay
}

// Layout is where the slots go.
type Layout struct {
	Girth  unit.Length  `json:"girth_mm"`
	Scions int          `json:"scions"` // as placed
	Fewer  bool         `json:"fewer"`  // than asked
	Tight  bool         `json:"tight"`  // two, nearer than trade.ClosestScions
	Gap    unit.Length  `json:"gap_mm"` // the smallest between neighbours along the bark; the girth for one slot
	Slots  []Slot       `json:"slots"`  // clockwise from the end of the long diameter
	Work   trade.Worked `json:"because"`
}

// Slots places the slots so that the smallest gap between neighbouring
// centres, along the bark and all the way round, is as large as can be.
//
// While more than two are asked and that gap would be under
// trade.ClosestScions, one fewer is placed. Two are placed however close, down
// to side by side; one where the free bark has no room beside the first slot.
// Of the layouts with the largest gap the one with a slot nearest LongWay is
// taken; with Toward, of those within a millimetre of it (but not for that
// under trade.ClosestScions) the one with a slot nearest Toward.
//
// Errors are *trade.Impossible, on blocked when no bark is free.
func Slots(p SlotPlan) (Layout, error) {
	if err := p.check(); err != nil {
		return Layout{}, err
	}
	oval, asked := p.Oval(), p.asked()
	r := p.ring()
	if len(r.free) == 0 {
		return Layout{}, impossible("blocked", "bark blocked all the way round", "arcs that leave bark for a slot of "+millimetres(p.slot()))
	}
	n, gap := p.room(r, asked)
	out := Layout{Girth: oval.Girth(), Scions: n, Fewer: n < asked}
	points := p.layOut(r, n, gap)
	out.Gap = unit.Length(smallest(points, r.round))
	out.Tight = n == 2 && out.Gap < trade.ClosestScions-sliver
	for _, at := range points {
		out.Slots = append(out.Slots, Slot{oval.Bearing(unit.Length(at)), unit.Length(at)})
	}
	out.Work = p.work(out, asked)
	return out, nil
}

// asked is the number of slots wanted.
func (p SlotPlan) asked() int {
	if p.Scions > 0 {
		return p.Scions
	}
	return bySize(p.Oval().Girth(), p.Oval().Longest())
}

func (p SlotPlan) slot() unit.Length {
	if p.Slot > 0 {
		return p.Slot
	}
	return trade.SlotWidth
}

// ring is the bark with the places a slot's centre may have.
func (p SlotPlan) ring() ring {
	var blocked []span
	for _, arc := range p.Blocked {
		middle, half := p.Oval().Along(arc.Bearing).MM(), (arc.Width+p.slot()).MM()/2
		blocked = append(blocked, span{middle - half, middle + half})
	}
	return newRing(p.Oval().Girth().MM(), blocked)
}

// room is how many of the asked slots are placed, and their largest gap in mm.
func (p SlotPlan) room(r ring, asked int) (n int, gap float64) {
	for n = asked; n > 2; n-- {
		if gap = r.widest(n); gap >= trade.ClosestScions.MM()-sliver {
			return n, gap
		}
	}
	sideBySide := math.Min(p.slot().MM(), r.round/2) // on a stem too thin for two whole slots: opposite
	if gap = r.widest(n); n == 2 && gap < sideBySide-sliver {
		return 1, r.round
	}
	return n, gap
}

// layOut picks among the layouts of n slots whose smallest gap is the largest.
func (p SlotPlan) layOut(r ring, n int, gap float64) []float64 {
	oval, side := p.Oval(), p.LongWay
	if p.Toward != nil {
		side = *p.Toward
		gap = math.Max(gap-equalGap.MM()+sliver, math.Min(gap, trade.ClosestScions.MM()))
	}
	nearer := func(a, b float64) bool {
		return oval.Bearing(unit.Length(a)).From(side) < oval.Bearing(unit.Length(b)).From(side)-sliver
	}
	return r.spread(n, gap, oval.Along(side).MM(), nearer)
}

// smallest is the smallest gap between neighbours in a round.
func smallest(points []float64, round float64) float64 {
	least := round - (points[len(points)-1] - points[0])
	for i := 1; i < len(points); i++ {
		least = math.Min(least, points[i]-points[i-1])
	}
	return least
}

// check refuses what no stump can have.
func (p SlotPlan) check() error {
	if err := p.Oval().check(); err != nil {
		return err
	}
	if p.Scions < 0 || p.Scions > MostSlots {
		return impossible("scions", strconv.Itoa(p.Scions), "1 to "+strconv.Itoa(MostSlots))
	}
	for _, arc := range p.Blocked {
		if err := arc.check(); err != nil {
			return err
		}
	}
	if p.Slot != 0 && !(p.Slot > 0 && p.Slot <= p.Oval().Girth()) {
		return impossible("slot", millimetres(p.Slot), "a width above 0 and not over the girth, "+millimetres(p.Oval().Girth()))
	}
	if t := p.Toward; t != nil && (math.IsNaN(t.Deg()) || math.IsInf(t.Deg(), 0)) {
		return impossible("toward", number(t.Deg()), "a bearing of 0 to 360 degrees")
	}
	return nil
}
