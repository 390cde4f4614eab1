package store

import (
	"runtime"
	"sync"
)

// inParts does so many pieces of work on all cores, in parts of at least some pieces. A
// fault in one is an error, as of guard; of several errors the first is given.
func inParts(pieces, some int, do func(from, to int) error) error {
	share := max(some, (pieces-1)/(4*runtime.GOMAXPROCS(0))+1)
	switch {
	case pieces == 0:
		return nil
	case pieces <= share:
		return do(0, pieces)
	}
	var works sync.WaitGroup
	errs := make([]error, (pieces-1)/share+1)
	for n := range errs {
		from := n * share
		works.Go(func() { errs[n] = guard(func() error { return do(from, min(from+share, pieces)) }) })
	}
	works.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
