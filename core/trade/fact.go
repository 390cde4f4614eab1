// Package trade holds every figure the program states, each with its standing
// and, where it is published, its source; the cautions; and the worked answer
// that carries a computed number together with its reasons.
package trade

import (
	"slices"
	"strings"
)

// Standing says how firmly a figure may be stated.
type Standing string

// The standings. Disagree is for figures on which sources differ: the range is
// shown and the user may set the value.
const (
	Published Standing = "published"
	Common    Standing = "common practice"
	Memory    Standing = "from memory"
	Disagree  Standing = "sources disagree"
)

// Fact is one figure or rule of the trade, or a formula.
type Fact struct {
	ID       string   // kebab case, unique
	Topic    string   // where it belongs, see Topics
	Says     string   // the fact in one plain sentence, figures included
	Standing Standing // how firmly
	Source   string   // who published it; empty unless published or disputed
}

// Because is the short form of a fact in machine-readable answers.
type Because struct {
	Fact     string   `json:"fact"`
	Standing Standing `json:"standing"`
	Source   string   `json:"source"`
}

// Because is the fact's short form.
func (f Fact) Because() Because { return Because{f.Says, f.Standing, f.Source} }

var all []Fact

// state registers a fact; called once for each at start-up, in reading order.
func state(id, topic string, s Standing, source, says string) Fact {
	f := Fact{ID: id, Topic: topic, Says: says, Standing: s, Source: source}
	all = append(all, f)
	return f
}

// Facts lists every fact by topic, in the order a grafter meets them.
func Facts() []Fact {
	out := slices.Clone(all)
	slices.SortStableFunc(out, func(a, b Fact) int { return topicOrder(a) - topicOrder(b) })
	return out
}

// Topics are the headings of the table of facts, in order.
var Topics = []string{"ready", "wood", "cuts", "seal", "care", "practice", "sums"}

func topicOrder(f Fact) int { return slices.Index(Topics, f.Topic) }

// Cite is the standing with the source behind it, as shown to people.
func (f Fact) Cite() string {
	if f.Source == "" {
		return string(f.Standing)
	}
	return strings.Join([]string{string(f.Standing), f.Source}, ": ")
}
