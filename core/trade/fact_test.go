package trade

import (
	"regexp"
	"slices"
	"testing"
)

func TestEveryFactHasAStanding(t *testing.T) {
	kebab := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	seen := map[string]bool{}
	for _, f := range Facts() {
		if !kebab.MatchString(f.ID) || seen[f.ID] {
			t.Errorf("%q is not a name of its own in kebab case", f.ID)
		}
		seen[f.ID] = true
		if !slices.Contains(Topics, f.Topic) {
			t.Errorf("%s: unknown topic %q", f.ID, f.Topic)
		}
		if f.Says == "" {
			t.Errorf("%s says nothing", f.ID)
		}
		sourced := f.Standing == Published || f.Standing == Disagree
		if !slices.Contains([]Standing{Published, Common, Memory, Disagree}, f.Standing) || sourced != (f.Source != "") {
			t.Errorf("%s: standing %q with source %q", f.ID, f.Standing, f.Source)
		}
	}
	if len(seen) < 80 {
		t.Errorf("only %d facts", len(seen))
	}
}
