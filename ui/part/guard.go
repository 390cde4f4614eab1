package part

import "time"

// Guard keeps a key held down from answering several questions: after a key
// has answered, the same key coming again within holdGap of its last coming is
// a held key, however long it is held. Another key, or a pause, frees it.
type Guard struct {
	key   string
	last  time.Time
	digit time.Time // when a digit last came that was an answer, or was ignored
	blind time.Time // up to when no key can be about what is shown
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

// A key that takes longer than slow to act, as on a slow disk, leaves keys behind it that
// were pressed while the old question still stood. Those come at once; nobody has read the
// new one within unseen.
const (
	slow   = 100 * time.Millisecond
	unseen = 100 * time.Millisecond
)

// Acted notes when a key began to act and when what came of it was shown.
func (g *Guard) Acted(began, shown time.Time) {
	if shown.Sub(began) > slow {
		g.blind = shown.Add(unseen)
	}
}

// Blind says whether a key that comes now was pressed before what is shown could be seen.
func (g *Guard) Blind(now time.Time) bool { return now.Before(g.blind) }

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

// numberGap is within what digits come that are typed as one number.
const numberGap = 300 * time.Millisecond

func isDigit(key string) bool { return len(key) == 1 && '0' <= key[0] && key[0] <= '9' }

// Number says whether a digit comes so soon behind one that answered that both
// were typed as a number: it answers no second question.
func (g *Guard) Number(key string, now time.Time) bool {
	if !isDigit(key) || g.digit.IsZero() || now.Sub(g.digit) >= numberGap {
		return false
	}
	g.digit = now
	return true
}

// Answered notes the key that just answered a question.
func (g *Guard) Answered(key string, now time.Time) {
	g.key, g.last = key, now
	if isDigit(key) {
		g.digit = now
	}
}
