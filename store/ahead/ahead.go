// Package ahead works on pieces on all cores and gives what came of them in order.
package ahead

import (
	"context"
	"iter"
	"runtime"
)

// Each gives what work makes of piece after piece, in their order. Pieces are taken and
// worked on by all cores, some of them ahead of the one that is given. At the end of ctx
// it ends, also while it waits for a piece.
func Each[P, T any](ctx context.Context, pieces iter.Seq[P], work func(P) []T) iter.Seq[T] {
	return func(yield func(T) bool) {
		enough := make(chan struct{})
		defer close(enough)
		made := make(chan chan []T, 2*runtime.GOMAXPROCS(0))
		go func() {
			defer close(made)
			for piece := range pieces {
				done := make(chan []T, 1)
				select {
				case made <- done:
					go func() { done <- work(piece) }()
				case <-enough:
					return
				}
			}
		}()
		for {
			var done chan []T
			select {
			case done = <-made:
			case <-ctx.Done():
			}
			if done == nil {
				return
			}
			for _, t := range <-done {
				if !yield(t) {
					return
				}
			}
		}
	}
}
