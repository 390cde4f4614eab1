package girth

import (
	"math"
	"strconv"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// sliver, in mm, is the difference that parsing and rounding may leave.
const sliver = 1e-6

// Count is how many scions a stump takes.
type Count struct {
	Girth   unit.Length  `json:"girth_mm"`
	Scions  int          `json:"scions"`
	Spacing unit.Length  `json:"spacing_mm"` // girth over scions
	Work    trade.Worked `json:"because"`
}

// Scions counts the scions for a stump across wide, and across2 at right
// angles (0: round). A width of 0 or less, or over trade.WidestStump, is Impossible.
func Scions(across, across2 unit.Length) (Count, error) {
	o := Oval{Across: across, Across2: across2}
	if err := o.check(); err != nil {
		return Count{}, err
	}
	girth := o.Girth()
	n := bySize(girth, o.Longest())
	c := Count{Girth: girth, Scions: n, Spacing: girth / unit.Length(n)}
	c.Work = trade.Worked{
		Question: "How many scions does the stump take?",
		Answer:   []trade.Input{{Name: "scions", Value: n}, {Name: "girth", Value: girth}, {Name: "spacing along the bark", Value: c.Spacing}},
		Formula: "girth / spacing for one scion, half rounds up; at least " + strconv.Itoa(trade.ScionsLeast) + ", at most " +
			strconv.Itoa(trade.ScionsMost) + ", on a wide stump " + strconv.Itoa(trade.ScionsMostWide),
		Inputs: append(o.inputs(), trade.Input{Name: "girth for one scion", Value: trade.GirthPerScion},
			trade.Input{Name: "a wide stump is over", Value: trade.WideStump}),
		Assumed: o.assumed(),
		Facts:   []trade.Fact{trade.ScionsByEye, trade.ScionSpacing, trade.ScionCap, trade.OvalStump, trade.EllipseGirth},
	}
	return c, nil
}

// bySize is the number of scions for a girth and the longer width.
func bySize(girth, longest unit.Length) int {
	most := trade.ScionsMost
	if longest > trade.WideStump+sliver {
		most = trade.ScionsMostWide
	}
	n := int(math.Floor(float64(girth/trade.GirthPerScion) + 0.5 + hair))
	return max(trade.ScionsLeast, min(n, most))
}

// check refuses widths no stump can have.
func (o Oval) check() error {
	if !(o.Across > 0 && o.Across <= trade.WidestStump+sliver) {
		return impossible("across", millimetres(o.Across), "a width above 0 and up to 40in (1016mm)")
	}
	if !(o.Across2 >= 0 && o.Across2 <= trade.WidestStump+sliver) {
		return impossible("across2", millimetres(o.Across2), "a width above 0 and up to 40in (1016mm), or none for a round stump")
	}
	if math.IsNaN(o.LongWay.Deg()) || math.IsInf(o.LongWay.Deg(), 0) {
		return impossible("long-way", number(o.LongWay.Deg()), "a bearing of 0 to 360 degrees")
	}
	return nil
}

func (o Oval) inputs() []trade.Input {
	in := []trade.Input{{Name: "across", Value: o.Across, Limits: trade.StumpLimits}}
	if o.Across2 > 0 {
		in = append(in, trade.Input{Name: "across at right angles", Value: o.Across2, Limits: trade.StumpLimits})
	}
	return in
}

func (o Oval) assumed() []string {
	if o.Across2 == 0 {
		return []string{"the stump is round, as no second width was given"}
	}
	return nil
}

func impossible(option, given, accepted string) error {
	return &trade.Impossible{Option: option, Given: given, Accepted: accepted}
}

func number(f float64) string { return strconv.FormatFloat(f, 'g', 6, 64) }

func millimetres(l unit.Length) string { return number(l.MM()) + "mm" }
