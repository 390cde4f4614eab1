package walk

import (
	"fmt"
	"math"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

func askTorn(c *Case, a *Ask) {
	a.Question = "Where is the bark torn?"
	a.Because = "Bearing of the middle and length along the bark; slots keep clear of it."
	a.Entry = &Entry{Text: true, Asks: c.arcExample() + "; more with a space", Read: c.readTorn}
	if old := c.cutToCorrect(); len(old.Torn) > 0 {
		a.Entry.startFrom(c.arcWords(old.Torn, ":"), &old)
	}
}

func (c *Case) readTorn(text string) ([]record.Body, error) {
	torn, err := c.readArcs(text, "torn", trade.WidestStump*math.Pi)
	if err != nil {
		return nil, err
	}
	cut := c.A.FreshCuts[len(c.A.FreshCuts)-1].What
	cut.Torn = torn
	return []record.Body{&cut}, nil
}

func (c *Case) arcExample() string {
	return "side:length, such as " + c.eg("NE:2in, 120:2in, 3h:2in", "NE:5cm, 120:5cm, 3h:5cm")
}

// readArcs reads stretches of bark, none longer than the bark all round: 120:2in
// 270:1.
func (c *Case) readArcs(text, why string, round unit.Length) ([]record.Arc, error) {
	var out []record.Arc
	for _, word := range strings.Fields(spacedHour.ReplaceAllString(strings.ReplaceAll(text, ",", " "), "${1}h")) {
		at, long, ok := strings.Cut(word, ":")
		if !ok {
			return nil, &unit.Error{Given: word, Accepted: c.arcExample()}
		}
		bearing, err := c.readBearing(at)
		if err != nil {
			return nil, err
		}
		width, err := record.ReadMeasure(long, c.B.Units.Bare())
		switch {
		case err != nil:
			return nil, err
		case width.Length <= 0 || width.Length >= round:
			return nil, fmt.Errorf("%s of bark at %s cannot be: all round it is %s", c.length(width.Length), bearing.Words(), c.length(round))
		}
		out = append(out, record.Arc{Bearing: bearing, Width: width, Why: why})
	}
	if len(out) == 0 {
		return nil, &unit.Error{Given: text, Accepted: c.arcExample()}
	}
	return out, nil
}

// arcWords prints stretches of bark by bearing and length, with what parts the
// two: "120:2in 270:1in" as it could be typed.
func (c *Case) arcWords(arcs []record.Arc, parted string) string {
	var words []string
	for _, t := range arcs {
		words = append(words, t.Bearing.Degrees()+parted+strings.ReplaceAll(c.B.Units.Exact(t.Width.Length), " ", ""))
	}
	return strings.Join(words, " ")
}

func doneTorn(c *Case) answer {
	n := len(c.A.FreshCuts)
	if n == 0 || c.torn() {
		return open
	}
	return told(c.arcsSaid(c.A.FreshCuts[n-1].What.Torn))
}

// arcsSaid names stretches of bark: "2 in at 120°, ESE; 1 in at 270°, W".
func (c *Case) arcsSaid(arcs []record.Arc) string {
	var words []string
	for _, t := range arcs {
		words = append(words, fmt.Sprintf("%s at %s", c.length(t.Width.Length), t.Bearing.Words()))
	}
	return strings.Join(words, "; ")
}
