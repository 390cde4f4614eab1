package block

import (
	"fmt"
	"strings"

	"barkslip/core/record"
	"barkslip/ui/part"
)

// Tell is how the block stands, in words.
func (b *Screen) Tell() part.Telling {
	t := part.Telling{Head: b.x.Site().Name + ", the block"}
	if len(b.rows) == 0 {
		t.Question = "No stumps in this block yet."
		t.Says = []string{"b begins a block, from rows and trees or from a list."}
		return t
	}
	all := b.count()
	t.Question = fmt.Sprintf("%s. Work due now on %d, %d late.", b.where(), all.needy, all.all.late)
	say := func(words string) { t.Says = append(t.Says, words+".") }
	say("Stages: " + stagesTold(&all.all.stages))
	if all.known > 0 {
		say(fmt.Sprintf("Took: %d of %d grafts", all.taken, all.known))
	}
	if words := b.paceWords(); len(words) > 0 {
		say(words[0])
	}
	heat, _ := b.heatWords()
	say(strings.TrimSuffix(heat, "."))
	say(fmt.Sprintf("At hand: %s. n goes to the next to do, g to the rounds, 4/17 to a stump; map tells the rows, row 4 one row", b.Cursor().Place()))
	return t
}

// stagesTold is how many stumps there are at each stage.
func stagesTold(c *part.StageCounts) string {
	var words []string
	for st, n := range c {
		if n > 0 {
			words = append(words, fmt.Sprintf("%d %s", n, record.Stage(st)))
		}
	}
	if len(words) == 0 {
		return "none of the stumps"
	}
	return strings.Join(words, ", ")
}

// Map tells one row stump by stump, or for 0 every row by its stages and what it
// needs.
func (b *Screen) Map(number int) ([]string, error) {
	var out []string
	counts := b.count()
	for i, r := range b.rows {
		switch {
		case number == 0:
			words := fmt.Sprintf("Row %d: %s", r.number, stagesTold(&counts.rows[i].stages))
			if needs := b.needs(&counts.rows[i], part.SpokenWidth).Words(); needs != "" {
				words += "; " + needs
			}
			out = append(out, words+".")
		case int(r.number) == number:
			return []string{fmt.Sprintf("Row %d: %s.", r.number, stumpsTold(r))}, nil
		}
	}
	if number > 0 {
		return nil, fmt.Errorf("there is no row %d in this block", number)
	}
	return out, nil
}

// stumpsTold is the stumps of a row, those of one stage beside one another told as
// one.
func stumpsTold(r row) string {
	var words []string
	for from := 0; from < len(r.sums); {
		to := from
		for to+1 < len(r.sums) && r.sums[to+1].Stage == r.sums[from].Stage {
			to++
		}
		span := treeOf(r.sums[from].ID)
		if to > from {
			span += " to " + treeOf(r.sums[to].ID)
		}
		words = append(words, span+" "+r.sums[from].Stage.String())
		from = to + 1
	}
	return strings.Join(words, ", ")
}

// treeOf is a stump's tree, with its limb.
func treeOf(id record.StumpID) string {
	_, tree, _ := strings.Cut(id.Place(), "/")
	return tree
}
