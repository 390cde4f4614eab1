package sample

import (
	"math"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/walk"
)

// ground is the block as it is laid out: rows of trees, the earlier seasons'
// first, this season's behind them.
type ground struct {
	Plan
	block   record.ID
	today   unit.Date
	perRow  int
	earlier int // stumps first grafted in earlier seasons
	ages    int // seasons back to the first
	batch   int // stumps of one graft day this season
	lots    []lot
	onStep  func(walk.StepID) // told of each step that is answered, if it is given
	onWork  func(due.Kind)    // told of each kind of work that is met, if it is given
	of      *ground           // the smaller block whose lives are lived again here, nil if each is its own
	was     int               // of its lives, the one told last
	model   []entry           // and what was told of it
	bookAs  *record.Book      // the block as it is put down
	blockAs *record.Block
}

// The graft days of this season lie three days apart; the seventh is today.
const (
	batches     = 10
	todaysBatch = 6
	batchApart  = 3
)

func layOut(p Plan) *ground {
	c := seeded(p.Seed, math.MaxUint64)
	g := &ground{Plan: p, block: c.id(), today: unit.DateOf(p.Now), perRow: rowOf, ages: max(4, p.Seasons)}
	if p.Stumps > largeBlock {
		g.perRow = longRowOf
	}
	share := float64(p.Seasons) / float64(p.Seasons+1)
	if p.Seasons == 1 {
		share = 1.0 / 3
	}
	g.earlier = int(share * float64(p.Stumps))
	if p.Stumps >= 4*g.perRow {
		g.earlier -= g.earlier % g.perRow
	}
	g.batch = max(1, (p.Stumps-g.earlier+batches-1)/batches)
	g.makeLots(&c)
	return g
}

// place is where the i-th stump along the walk stands: up one row, down the
// next.
func (g *ground) place(i int) record.StumpID {
	row, tree := i/g.perRow+1, i%g.perRow+1
	if row%2 == 0 {
		tree = g.perRow + 1 - tree
	}
	return record.StumpID{Block: g.block, Row: uint16(row), Tree: uint16(tree)}
}

// age is how many seasons ago the i-th stump was first grafted, and how far
// along that season's stumps it stands, 0 to under 1.
func (g *ground) age(i int) (seasons int, along float64) {
	if i >= g.earlier {
		return 0, float64(i-g.earlier) / float64(g.Stumps-g.earlier)
	}
	at := float64(i) * float64(g.ages) / float64(g.earlier)
	return g.ages - int(at), at - math.Floor(at)
}

// graftDay is the day on which the i-th stump's first graft was or is planned.
func (g *ground) graftDay(i int) unit.Date {
	seasons, along := g.age(i)
	if seasons > 0 {
		return workday(g.today.AddYears(-seasons).Add(-14 + int(along*20)))
	}
	b := (i - g.earlier) / g.batch
	if b == todaysBatch {
		return g.today
	}
	return workday(g.today.Add(batchApart * (b - todaysBatch)))
}

// workday is the day, or the Saturday before a Sunday.
func workday(d unit.Date) unit.Date {
	if d.Weekday() == time.Sunday {
		return d.Add(-1)
	}
	return d
}

// high is the day's highest temperature in whole degrees Fahrenheit, the same
// whoever asks: a warm spell comes every few weeks.
func (g *ground) high(d unit.Date) int {
	c := seeded(g.Seed, uint64(d)|1<<40)
	spell := math.Sin(float64(d)/4.1) * 12
	year := 28 * math.Sin(2*math.Pi*float64(d.YearDay()-105)/365)
	return int(54 + year + spell + 9*c.real())
}
