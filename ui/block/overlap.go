package block

import (
	"fmt"
	"slices"
	"strings"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// overlap is what two blocks have in common by row and tree.
type overlap struct {
	stumps   int    // that both have
	answers  [2]int // on these, of each block
	examples []string
}

// mostExamples is how many of the stumps in common are named.
const mostExamples = 3

func sameName(a, b string) bool {
	return strings.EqualFold(strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " "))
}

// overlap looks at the stumps that two blocks have in common. Those with answers
// on both are named first.
func (b *Screen) overlap(here, other *record.Block) (o overlap, err error) {
	theirs := map[record.StumpID]bool{}
	for _, s := range b.x.Summaries(other.ID) {
		theirs[s.ID] = true
	}
	var rest []string
	for _, s := range b.x.Summaries(here.ID) {
		twin := s.ID
		twin.Block = other.ID
		if !theirs[twin] {
			continue
		}
		o.stumps++
		var told [2]int
		var words [2]string
		for i, id := range []record.StumpID{s.ID, twin} {
			stump, err := b.x.Book.Stump(id)
			if err != nil {
				return o, err
			}
			told[i], words[i] = answersOn(stump, here.Units)
			o.answers[i] += told[i]
		}
		says := fmt.Sprintf("%s: %s here, %s there", s.ID.Place(), words[0], words[1])
		if told[0] > 0 && told[1] > 0 {
			o.examples = append(o.examples, says)
		} else {
			rest = append(rest, says)
		}
	}
	o.examples = slices.Concat(o.examples, rest)
	o.examples = o.examples[:min(len(o.examples), mostExamples)]
	return o, b.x.Trouble()
}

// answersOn is how many answers stand on a stump, and the newest in words.
func answersOn(s *record.Stump, sys unit.System) (n int, newest string) {
	newest = "nothing answered"
	for _, e := range s.Live {
		if _, added := e.Body.(*record.StumpAdded); !added {
			n++
			newest = record.Say(e.Body, sys)
		}
	}
	return n, newest
}

// words is the overlap as it is shown before two blocks are made one.
func (o overlap) words(here, other *record.Block) string {
	if o.stumps == 0 {
		return "They have no stump in common, by row and tree: all stumps of both stand in one block then."
	}
	says := fmt.Sprintf("%s in common, by row and tree, with %s in %s and %s in %s. Each becomes one stump with the answers of both. ",
		part.Counted(o.stumps, "stump"), part.Counted(o.answers[0], "answer"), here.Name, part.Counted(o.answers[1], "answer"), other.Name)
	return says + strings.Join(o.examples, "; ") + "."
}
