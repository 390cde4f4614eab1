package figure

import (
	"math"

	"barkslip/core/unit"
)

func bearing(b unit.Bearing) *unit.Bearing { return &b }

// drawn is any of the figures.
type drawn interface {
	Draw(w, h int, mode Mode) Figure
}

// Two scions, a usual one in inches and a thick one in millimetres.
var (
	slim = Scion{
		Thick: 0.4 * unit.Inch, Bark: 0.05 * unit.Inch, Pith: 0.12 * unit.Inch, LongCut: 2.5 * unit.Inch, Tip: 0.06 * unit.Inch, Back: 0.5 * unit.Inch,
		Nails: []unit.Length{15.9, 57.2}, Least: 0.4*unit.Inch + 0.8, Most: 0.4*unit.Inch + 6.35,
	}
	stout = Scion{
		Thick: 18, Bark: 2, Pith: 6, LongCut: 60, Tip: 5, Back: 13,
		Nails: []unit.Length{15, 53.5}, Least: 18.8, Most: 24.35, Sys: unit.Metric,
	}
)

// samples are the figures the goldens show.
var samples = map[string]drawn{
	"top": Top{
		Across: 4.2 * unit.Inch, Across2: 3.4 * unit.Inch, LongWay: 30, Shade: bearing(20),
		Slots:   []Slot{{20, "1", Set}, {105, "2", InHand}, {185, "3", Planned}, {290, "4", Planned}},
		Blocked: []Arc{{145, 1.2 * unit.Inch, "torn"}},
	},
	"top-metric": Top{
		Across: 52, LongWay: 90, Field: 80, Sys: unit.Metric,
		Slots: []Slot{{0, "1", Planned}, {180, "2", Planned}},
	},
	"scion": slim, "scion-thick": stout,
	"long-cut": Paring{Scion: slim}, "back-cut": Paring{Scion: slim, AtBack: true}, "back-cut-thick": Paring{Scion: stout, AtBack: true},
	"opening":        Opening{Across: 3.4 * unit.Inch, Slit: 3 * unit.Inch, Least: slim.Least, Most: slim.Most},
	"opening-metric": Opening{Across: 150, Slit: 76.2, Least: stout.Least, Most: stout.Most, Sys: unit.Metric},
	"slide-in":       Bed{Scion: slim, Flap: 4, Proud: unit.Inch / 4}, "proud": Bed{Scion: slim, Flap: 4, Proud: unit.Inch / 4, Stage: StandsProud},
	"nails":       Bed{Scion: slim, Flap: 4, Proud: unit.Inch / 4, Stage: Nailed, Long: []unit.Length{24, 18}},
	"nails-thick": Bed{Scion: stout, Flap: 4, Proud: 6, Stage: Nailed, Long: []unit.Length{31, 21}},
	"stick": Stick{
		Length: 24 * unit.Inch, TrimButt: unit.Inch / 2, TrimTip: unit.Inch / 2, ThickButt: unit.Inch / 2, ThickTip: 0.35 * unit.Inch,
		Nodes: []Node{{1.5 * unit.Inch, 2}, {3.2 * unit.Inch, 2}, {5 * unit.Inch, 1}, {7 * unit.Inch, 0}, {9.2 * unit.Inch, 2}, {11 * unit.Inch, 2},
			{13.1 * unit.Inch, 2}, {15 * unit.Inch, 2}, {17.4 * unit.Inch, 1}, {19.5 * unit.Inch, 2}, {21.3 * unit.Inch, 2}, {23 * unit.Inch, 0}},
		Pieces: []Piece{{6.45 * unit.Inch, 11.5 * unit.Inch, true}, {12.25 * unit.Inch, 15.5 * unit.Inch, false}, {16.75 * unit.Inch, 21.8 * unit.Inch, true}},
	},
	"stick-metric": Stick{
		Length: 300, Sys: unit.Metric, Nodes: []Node{{30, 2}, {90, 2}, {130, 2}, {180, 1}, {230, 2}}, Pieces: []Piece{{20, 143, true}},
	},
	"day":        warmDay(unit.US),
	"day-metric": warmDay(unit.Metric),
	"callus": Curve{
		X1: 14, Y1: 1, YName: "callus a day", XTicks: []Tick{{0, "1 May"}, {7, "8 May"}, {14, "15 May"}}, YTicks: []Tick{{0, "0"}, {0.5, "0.5"}, {1, "1"}},
		Series: []Series{{Name: "callus", Dots: true, Points: []Point{{0, 0.1}, {2, 0.2}, {4, 0.15}, {6, 0.4}, {8, 0.7}, {10, 0.9}, {12, 0.85}, {14, 0.95}}}},
		VLines: []Line{{At: 6, Label: "best 14 days", Dash: Dotted}},
	},
	"shoot": Shoot{
		From: unit.MakeDate(2027, 5, 20), To: unit.MakeDate(2027, 10, 10), StakeTop: 6 * unit.Foot, AimLow: 9 * unit.Foot, AimHigh: 10 * unit.Foot,
		Measured: []Reached{{unit.MakeDate(2027, 6, 1), 3 * unit.Inch}, {unit.MakeDate(2027, 6, 12), 11 * unit.Inch},
			{unit.MakeDate(2027, 6, 25), 26 * unit.Inch}, {unit.MakeDate(2027, 7, 10), 50 * unit.Inch}},
		Forecast: []Reached{{unit.MakeDate(2027, 7, 10), 50 * unit.Inch}, {unit.MakeDate(2027, 8, 1), 84 * unit.Inch},
			{unit.MakeDate(2027, 9, 1), 105 * unit.Inch}, {unit.MakeDate(2027, 10, 1), 112 * unit.Inch}},
		Ties: []unit.Length{unit.Foot, 2 * unit.Foot, 3 * unit.Foot}, Next: 4 * unit.Foot,
	},
	"shoot-metric": Shoot{
		From: unit.MakeDate(2027, 5, 20), To: unit.MakeDate(2027, 10, 10), StakeTop: 1500, AimLow: 2400, AimHigh: 2700, Sys: unit.Metric,
		Measured: []Reached{{unit.MakeDate(2027, 6, 1), 80}, {unit.MakeDate(2027, 6, 25), 500}, {unit.MakeDate(2027, 7, 20), 1100}},
	},
}

// warmDay is a warm day in May, drawn by hand.
func warmDay(sys unit.System) Day {
	line := func(name string, dash Dash, ink Ink, low, high unit.Temperature) DayLine {
		l := DayLine{Name: name, Dash: dash, Ink: ink}
		for h := 0.0; h <= 24; h += 0.5 {
			share := math.Max(0, math.Sin((h-6)/16*math.Pi))
			l.Points = append(l.Points, Reading{h, low + unit.Temperature(share)*(high-low)})
		}
		return l
	}
	return Day{
		Lines: []DayLine{line("black", Filled, Black, 15, 61), line("white", Hollow, White, 15, 41), line("air", Dotted, Faint, 15, 33)},
		Limit: 45, Sys: sys, Marks: []Mark{{10.5, "sealed 10:30", []string{"sealed"}, Plain}, {12.2, "white by 12:10", []string{"by 12:10", "12:10"}, Warn}},
	}
}
