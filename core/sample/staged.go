package sample

// staged is a part that a stump plays so that a block of the usual size always
// has one of each kind to look at; most play none.
type staged uint8

const (
	asItFalls   staged = iota
	lateToPaint        // its white clock ran out this morning
	justSet            // its last scion is in, its seal to come
	stillWet           // its sealer was not dry when they came to paint
	disputed           // two hands entered two heights for its cut
	againstAll         // grafted although it was told to wait
	isGivenUp
	staysFailed
)

// stagedAt is the part the i-th stump plays.
func (g *ground) stagedAt(i int) staged {
	if i < g.earlier {
		switch share := i * 240 / max(g.Stumps, 1); {
		case g.Stumps > largeBlock:
			return asItFalls
		case share == 47:
			return isGivenUp
		case share == 33:
			return staysFailed
		}
		return asItFalls
	}
	batch, k := (i-g.earlier)/g.batch, (i-g.earlier)%g.batch
	switch {
	case batch == todaysBatch && k == 0:
		return lateToPaint
	case batch == todaysBatch && k == g.batch/2:
		return justSet
	case batch == todaysBatch && k == 2:
		return stillWet
	case batch == todaysBatch+1 && k == 3:
		return disputed
	case batch == todaysBatch-2 && k == 5:
		return againstAll
	}
	return asItFalls
}
