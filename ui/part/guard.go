package part

import "time"

// Guard keeps a key held down from answering several questions: after a key
// has answered, the same key coming again within holdGap of its last coming is
// a held key, however long it is held. Another key, or a pause, frees it.
type Guard struct {
	key  string
	last time.Time
}

// holdGap is longer than the usual pause before a held key begins to repeat
// (500 to 660 ms).
const holdGap = 700 * time.Millisecond

// Held says whether this coming of the key is only a key held down.
func (g *Guard) Held(key string, now time.Time) bool {
	if key != g.key {
		g.key = ""
		return false
	}
	held := now.Sub(g.last) < holdGap
	g.last = now
	if !held {
		g.key = ""
	}
	return held
}

// The pace at which a held key repeats. Keys that come faster came in one burst.
const (
	repeatLeast = 10 * time.Millisecond
	repeatMost  = 120 * time.Millisecond
)

// Repeating says whether this coming of the key, on its way into a field, is
// the key that answered the question before, held down still. Typing loses
// nothing: it is slower than a key repeats, and a burst is faster.
func (g *Guard) Repeating(key string, now time.Time) bool {
	if key != g.key {
		g.key = ""
		return false
	}
	gap := now.Sub(g.last)
	g.last = now
	return gap > repeatLeast && gap < repeatMost
}

// Answered notes the key that just answered a question.
func (g *Guard) Answered(key string, now time.Time) { g.key, g.last = key, now }
