package walk

import (
	"fmt"
	"strconv"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// readMeasured reads one or two diameters and the bearing of the longer one.
// What is not typed stays as it was in the answer that is corrected.
func (c *Case) readMeasured(text string) ([]record.Body, error) {
	sizes, way, said := strings.Cut(text, "@")
	m := c.measuredBefore()
	if strings.TrimSpace(sizes) != "" || !m.Across.Given() {
		parts, err := c.readLengths(sizes, 2, trade.WidestStump)
		if err != nil {
			return nil, err
		}
		m.Across = parts[0]
		if len(parts) == 2 {
			m.Across2 = parts[1]
		}
	}
	if m.Across2.Length > m.Across.Length {
		m.Across, m.Across2 = m.Across2, m.Across
		if m.LongWaySaid {
			m.LongWay = (m.LongWay + 90).Normal() // the one at right angles is the longer now
		}
	}
	if said {
		var err error
		if m.LongWay, err = c.readBearing(way); err != nil {
			return nil, err
		}
		m.LongWaySaid = true
	}
	return []record.Body{&m}, nil
}

// measuredBefore is the measure that is being corrected, an empty one where
// there is none.
func (c *Case) measuredBefore() record.StumpMeasured {
	if !c.again || c.A.Measured == nil {
		return record.StumpMeasured{}
	}
	return c.A.Measured.What
}

func askMeasure(c *Case, a *Ask) {
	a.Question = "How far across, and at right angles?"
	a.Because = "One number for a round stump, two for an oval one."
	if c.Found.Across > 0 && c.A.Measured == nil {
		a.Because = fmt.Sprintf("Recorded earlier as %s; measure the face you cut.", c.across(c.Found.Across))
	}
	a.Entry = &Entry{Asks: "across, then at right angles: " + c.eg("3.4 3.1", "8.6 7.9"), Read: c.readMeasured}
	if m := c.measuredBefore(); m.Across.Given() {
		a.Because = "A number not typed again stays as it was."
		a.Entry.startFrom(c.measuredWords(m)) // nothing changes, so the slots stand
	}
}

// measuredWords prints a measure as it could be typed: 3.4 in, 3.1 in @030.
func (c *Case) measuredWords(m record.StumpMeasured) string {
	words := c.exact(m.Across, m.Across2)
	if m.LongWaySaid {
		words += " @" + m.LongWay.Degrees()
	}
	return words
}

func doneMeasure(c *Case) answer {
	m := c.A.Measured
	switch {
	case m == nil || len(c.A.FreshCuts) > 0 && record.Newer(record.Last(c.A.FreshCuts), *m):
		return open
	case m.What.Across2.Given():
		return told(fmt.Sprintf("%s x %s", strings.TrimSuffix(c.across(m.What.Across.Length), " in"), c.across(m.What.Across2.Length)))
	}
	return told(c.across(m.What.Across.Length))
}

// longWays are the ways a longer diameter may lie.
var longWays = []struct {
	word    string
	bearing unit.Bearing
}{{"north-south", 0}, {"NE to SW", 45}, {"east-west", 90}, {"SE to NW", 135}}

func askLongWay(c *Case, a *Ask) {
	a.Question = "Which way does the longer diameter lie?"
	a.Because = fmt.Sprintf("It is %s one way and %s the other.", c.across(c.A.Measured.What.Across.Length), c.across(c.A.Measured.What.Across2.Length))
	for i, w := range longWays {
		m := c.A.Measured.What
		m.LongWay, m.LongWaySaid = w.bearing, true
		a.choose(strconv.Itoa(i+1), w.word, "", &m)
	}
	a.choice(Choice{Key: "5", Word: "a bearing", Meaning: "type it", Entry: &Entry{Text: true, Asks: "N, NNE; degrees; or the clock seen from the shade side: 3h", Read: func(text string) ([]record.Body, error) {
		b, err := c.readBearing(text)
		m := c.A.Measured.What
		m.LongWay, m.LongWaySaid = b, true
		return []record.Body{&m}, err
	}}})
	a.Likely = "1"
	if c.again && c.longWayGiven() {
		a.Likely = "5"
		for i, way := range longWays {
			if c.A.Measured.What.LongWay == way.bearing {
				a.Likely = strconv.Itoa(i + 1)
			}
		}
		a.Choices[4].Entry.startFrom(c.A.Measured.What.LongWay.Degrees(), &c.A.Measured.What)
	}
}

func doneLongWay(c *Case) answer {
	if c.A.Measured == nil || !c.A.Measured.What.LongWaySaid {
		return open
	}
	return told(c.A.Measured.What.LongWay.Words())
}
