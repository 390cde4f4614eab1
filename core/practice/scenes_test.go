package practice

import (
	"testing"

	"barkslip/core/walk"
)

// Each scene leads to the step that it is told for.
func TestScenesLeadWhereTheyAreToldFor(t *testing.T) {
	for i, s := range scenes {
		for seed := range uint64(40) {
			tale := newTale(seed)
			s.tell(tale)
			if got := tale.walk().Present(); got != s.step {
				t.Errorf("scene %d for %s, seed %d: the walk asks %s", i, s.step, seed, got)
				break
			}
		}
	}
	for _, s := range walk.Steps() {
		if deeds[s.ID] == "" {
			t.Errorf("no deed for %s", s.ID)
		}
	}
}
