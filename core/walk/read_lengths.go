package walk

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/core/trade"
	"barkslip/core/unit"
)

// startFrom makes an entry that corrects an answer begin with it: Enter takes
// what was said before as it stands.
func (e *Entry) startFrom(said string, bodies ...record.Body) {
	read := e.Read
	e.Likely = said
	e.Read = func(text string) ([]record.Body, error) {
		if text == said {
			return bodies, nil
		}
		return read(text)
	}
}

// exact prints measures one behind the other, those not given left out, as they
// could be typed again.
func (c *Case) exact(measures ...record.Measure) string {
	var words []string
	for _, m := range measures {
		if m.Given() {
			words = append(words, c.B.Units.Exact(m.Length))
		}
	}
	return strings.Join(words, ", ")
}

// eg is an example to be typed: the first where the block is kept in inches,
// the second where it is metric.
func (c *Case) eg(inches, metric string) string {
	if c.B.Units == unit.Metric {
		return metric
	}
	return inches
}

// readLength reads one length in the block's units, over least and up to most.
func (c *Case) readLength(text string, least, most unit.Length) (record.Measure, error) {
	m, err := record.ReadMeasure(text, c.B.Units.Bare())
	if err != nil {
		return m, err
	}
	if m.Length <= least || m.Length > most {
		return m, &unit.Error{Given: text, Accepted: fmt.Sprintf("more than %s and up to %s", c.length(least), c.length(most))}
	}
	return m, nil
}

// readLengths reads one or more lengths apart by spaces or x: "3.4 3.1". A
// whole number with a fraction behind it is one length: "3 1/2".
func (c *Case) readLengths(text string, most int, longest unit.Length) ([]record.Measure, error) {
	var out []record.Measure
	words := strings.Fields(strings.NewReplacer("x", " ", "×", " ", ",", " ").Replace(strings.ToLower(text)))
	for len(words) > 0 {
		n := lengthWords(words)
		m, err := c.readLength(strings.Join(words[:n], " "), 0, longest)
		if err != nil {
			return nil, err
		}
		out, words = append(out, m), words[n:]
	}
	if len(out) == 0 || len(out) > most {
		return nil, &unit.Error{Given: text, Accepted: fmt.Sprintf("1 to %d lengths such as %s", most, c.eg("3.4 3 1/8", "8.6 7.9"))}
	}
	return out, nil
}

// lengthWords is how many words the first length takes: one, "3 1/2", "3 1/2
// in", "5 ft 6 in".
func lengthWords(words []string) int {
	n := 1
	if n < len(words) && isWhole(words[0]) && strings.Contains(words[n], "/") {
		n++
	}
	if n < len(words) && isUnit(words[n]) {
		n++
	}
	if n < len(words) && isFeet(words[n-1]) {
		if more := lengthWords(words[n:]); !isFeet(words[n+more-1]) {
			n += more
		}
	}
	return n
}

func isWhole(s string) bool { return strings.Trim(s, "0123456789") == "" }

func isUnit(s string) bool { return strings.Trim(s, "abcdefghijklmnopqrstuvwxyz\"'") == "" }

func isFeet(s string) bool { return strings.HasSuffix(s, "ft") || strings.HasSuffix(s, "'") }

// checkAcross refuses a diameter that no stump has.
func (c *Case) checkAcross(text string, l unit.Length) error {
	if l <= 0 || l > trade.WidestStump {
		return &unit.Error{Given: text, Accepted: fmt.Sprintf("a diameter over 0 and up to %s", c.length(trade.WidestStump))}
	}
	return nil
}
