//go:build !race

package scion

import (
	"testing"
	"time"

	"barkslip/core/unit"
)

func TestAnswersAreQuick(t *testing.T) {
	nodes := make([]Node, mostNodes)
	for i := range nodes {
		nodes[i] = Node{At: unit.Length(i) * 12, Buds: Buds(i % 3)}
	}
	stick := StickDefaults(longStick, nodes)
	stick.Per = 1
	for name, answer := range map[string]func() error{
		"cut":   func() error { _, err := Cuts(Defaults(10)); return err },
		"stick": func() error { _, err := CutStick(stick); return err },
	} {
		took := time.Hour // the shortest of five tries: a busy machine does not count
		for range 5 {
			start := time.Now()
			if err := answer(); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			took = min(took, time.Since(start))
		}
		if took > 50*time.Millisecond {
			t.Errorf("%s took %v", name, took)
		}
	}
}
