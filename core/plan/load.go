package plan

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"time"

	"barkslip/core/due"
	"barkslip/core/girth"
	"barkslip/core/record"
	"barkslip/core/scion"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// Rates are the rates that a load goes by: the block's own, else the usual ones.
type Rates struct {
	PerStick, Nails, Wrap, Stakes, Ties int
	Sealer, Paint, Tape, Knot           unit.Length
}

// RatesOf is the rates of a block.
func RatesOf(b *record.Block) Rates {
	own := func(m record.Measure, usual unit.Length) unit.Length { return cmp.Or(m.Length, usual) }
	l := b.Load
	return Rates{
		PerStick: cmp.Or(l.PerStick, trade.GraftsPerStick), Nails: cmp.Or(l.Nails, trade.NailsPerScion), Wrap: cmp.Or(l.Wrap, trade.WrapPerScion),
		Stakes: cmp.Or(l.Stakes, trade.StakesPerStump), Ties: cmp.Or(l.Ties, trade.TiesFirstYear), Sealer: own(l.Sealer, trade.SealerCoat),
		Paint: own(l.Paint, trade.PaintCoat), Tape: own(l.Tape, trade.TapePerTie), Knot: own(l.Knot, trade.TwineKnot),
	}
}

// Load is what some work takes.
type Load struct {
	Stumps   int // that are grafted
	Measured int // of them, those whose size is known
	Scions   int
	Sticks   []StickLoad
	Nails    []NailLoad
	Wrap     int     // squares
	Sealer   float64 // ml
	Paint    float64 // ml
	Stakes   int
	Ties     int
	Tape     unit.Length
	Twine    unit.Length
	Across   unit.Length // that a stump of unknown size was taken for; 0 if there was none
	Rates    Rates
}

// StickLoad is the wood of a variety and of the thickness that suits some stumps.
type StickLoad struct {
	Variety     string
	Least, Most unit.Length // thickness
	Scions      int
	Sticks      int // of 12 in
	Wood        []WoodFor
}

// WoodFor is a lot that can serve.
type WoodFor struct {
	Lot    string
	Left   record.WoodLeft
	Known  bool // its sticks were counted
	Untold bool // nobody told how thick it is
}

// NailLoad is the nails of a length that is sold.
type NailLoad struct {
	Size unit.Length
	N    int
}

// Empty says whether nothing has to be taken along.
func (l Load) Empty() bool {
	return l.Stumps == 0 && l.Wrap == 0 && l.Sealer == 0 && l.Paint == 0 && l.Stakes == 0 && l.Ties == 0 && l.Twine == 0
}

// loader adds up a load.
type loader struct {
	Load
	b      *record.Block
	sold   []unit.Length
	across unit.Length      // of a stump of unknown size
	groups map[stickKey]int // scions
	nails  map[unit.Length]int
	of     func(record.StumpID) string
}

type stickKey struct {
	variety     string
	least, most unit.Length
}

func newLoader(b *record.Block, sums []due.Summary, of func(record.StumpID) string) *loader {
	l := &loader{b: b, of: of, across: meanAcross(sums), groups: map[stickKey]int{}, nails: map[unit.Length]int{}, sold: trade.NailsSold}
	if b.Units == unit.Metric {
		l.sold = trade.NailsSoldMetric
	}
	l.Rates = RatesOf(b)
	return l
}

// meanAcross is the size that a stump of unknown size is taken for.
func meanAcross(sums []due.Summary) unit.Length {
	sum, n := unit.Length(0), 0
	for i := range sums {
		if s := &sums[i]; s.Across > 0 && !tooSmall(s) && s.Across <= trade.WidestStump {
			sum, n = sum+s.Across, n+1
		}
	}
	if n < fewestSizes {
		return trade.AcrossUsual
	}
	return sum / unit.Length(n)
}

// SeasonLoad is what grafting the stumps given takes, and their first season after
// it; all is the block, by whose stumps one of unknown size goes; of is the variety of a
// stump.
func SeasonLoad(b *record.Block, graft, all []due.Summary, of func(record.StumpID) string, wood []Wood) Load {
	l := newLoader(b, all, of)
	for i := range graft {
		s := &graft[i]
		l.graft(s)
		l.cover(s, true)
		l.Stakes += l.Rates.Stakes
		l.Ties += l.Rates.Ties
		l.twine(s)
	}
	return l.done(wood)
}

// DayLoad is what the work of some calls of a round takes on its day: grafting
// those whose wait is over, and what else is due there.
func DayLoad(b *record.Block, calls []due.Call, day unit.Date, all []due.Summary, of func(record.StumpID) string, wood []Wood) Load {
	l := newLoader(b, all, of)
	for _, c := range calls {
		at, known := due.Find(all, c.Stump)
		if !known {
			continue
		}
		s := &all[at]
		sealed := Grafts(s, b, day)
		if sealed {
			l.graft(s)
		}
		for _, d := range c.Dues {
			switch d.Kind {
			case due.Finish, due.Seal:
				sealed = true
			case due.Reseal:
				l.Sealer += l.covered(s) * l.Rates.Sealer.MM() / 1000
			case due.White:
				l.Paint += l.covered(s) * l.Rates.Paint.MM() / 1000
			case due.Stake:
				l.Stakes += l.Rates.Stakes
			case due.Tie:
				l.Ties++
			case due.Twine:
				l.twine(s)
			}
		}
		l.cover(s, sealed)
	}
	return l.done(wood)
}

// Grafts says whether a stump can be grafted on a day, so that scions are taken
// along for it.
func Grafts(s *due.Summary, b *record.Block, day unit.Date) bool {
	return s.Stage == record.StageDraining && !tooSmall(s) && s.CutBack.Add(b.WaitDays()) <= day
}

// sized is the size of a stump, or what it is taken for.
func (l *loader) sized(s *due.Summary) unit.Length {
	if s.Across > 0 && s.Across <= trade.WidestStump {
		return s.Across
	}
	l.Across = l.across
	return l.across
}

// graft adds the wood and nails of a stump.
func (l *loader) graft(s *due.Summary) {
	across := l.sized(s)
	if s.Across > 0 {
		l.Measured++
	}
	l.Stumps++
	n, fit := scionsOn(across), scionFor(across)
	l.Scions += n
	l.groups[stickKey{l.of(s.ID), fit.Least, fit.Most}] += n
	cut, err := scion.Cuts(scion.Defaults(fit.Most))
	if err != nil {
		return
	}
	for i := range l.Rates.Nails {
		l.nails[l.size(cut.Nails[i%len(cut.Nails)].Length)] += n
	}
}

func scionsOn(across unit.Length) int {
	if c, err := girth.Scions(across, 0); err == nil && across > 0 {
		return c.Scions
	}
	return trade.ScionsUsual
}

func scionFor(across unit.Length) scion.FitAnswer {
	fit, err := scion.Fit(scion.Wood{Across: across})
	if err != nil {
		last := trade.ThicknessClassTable[len(trade.ThicknessClassTable)-1]
		fit.Least, fit.Most = last.Least, last.Most
	}
	return fit
}

// size is the length of nail that is sold for one reckoned: the next longer.
func (l *loader) size(long unit.Length) unit.Length {
	for _, s := range l.sold {
		if long <= s {
			return s
		}
	}
	return l.sold[len(l.sold)-1]
}

// cover adds what closes a graft.
func (l *loader) cover(s *due.Summary, sealed bool) {
	if !sealed {
		return
	}
	across := l.sized(s)
	l.Wrap += scionsOn(across)*l.Rates.Wrap + int(math.Ceil(face(across)/float64(trade.WrapSquare)))
	l.Sealer += l.covered(s) * l.Rates.Sealer.MM() / 1000
	l.Paint += l.covered(s) * l.Rates.Paint.MM() / 1000
}

func face(across unit.Length) float64 { return math.Pi * across.MM() * across.MM() / 4 }

// covered is what sealer and white cover of a stump, in square millimetres: its face, and
// its bark to below the slots.
func (l *loader) covered(s *due.Summary) float64 {
	across := l.sized(s)
	return face(across) + math.Pi*across.MM()*(trade.LongCut+trade.BelowSlot).MM()
}

func (l *loader) twine(s *due.Summary) {
	around := unit.Length(math.Pi) * l.sized(s)
	l.Twine += trade.LoopsOfTwine * (trade.LoopTimesGirth*around + l.Rates.Knot)
}

// done puts the load in order and the wood that is left beside it.
func (l *loader) done(wood []Wood) Load {
	for key, n := range l.groups {
		s := StickLoad{Variety: key.variety, Least: key.least, Most: key.most, Scions: n, Sticks: sticks(n, l.Rates.PerStick)}
		for _, w := range wood {
			got := w.Lot.Received.What
			thick := got.Thickness.Length
			if strings.EqualFold(got.Variety, key.variety) && (thick == 0 || thick >= key.least-hair && thick <= key.most+hair) {
				s.Wood = append(s.Wood, WoodFor{got.Name, w.Left, w.Counted, thick == 0})
			}
		}
		l.Sticks = append(l.Sticks, s)
	}
	slices.SortFunc(l.Sticks, func(a, b StickLoad) int {
		return cmp.Or(strings.Compare(a.Variety, b.Variety), cmp.Compare(a.Least, b.Least))
	})
	for _, size := range l.sold {
		if n := l.nails[size]; n > 0 {
			l.Load.Nails = append(l.Load.Nails, NailLoad{size, n})
		}
	}
	l.Tape = unit.Length(l.Ties) * l.Rates.Tape
	return l.Load
}

// fewestSizes is how many sizes must be known for the rest to go by them.
const fewestSizes = 5

func sticks(n, each int) int { return (n + each - 1) / each }

// hair is by how little a thickness may pass the end of its class and still suit:
// what was typed in another unit is not off by more.
const hair = unit.Millimetre / 2

// DayRound is the calls of a day at its end, or as they stand now on today, with as
// many stumps to cut back as the season has on it; see due.Round.
func DayRound(b *record.Block, sums []due.Summary, p Pace, day unit.Date, now time.Time) []due.Call {
	from, until := due.EndOf(day, b.Zone), due.EndOf(day, b.Zone)
	if day == b.Day(now) {
		from = now
	}
	cut := -1
	if p.Known {
		cut = p.Season.OnDay(day).CutBack
	}
	return due.Round(sums, due.Asked{From: from, Until: until, CutBack: cut})
}
