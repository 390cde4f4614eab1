package store

// load is entries on their way into the journal, in pieces: a long list need not be copied
// where it grows.
type load struct {
	pieces [][]Entry
	size   int // in bytes, about
}

const pieceLen = 4096

func (l *load) add(n Entry) {
	last := len(l.pieces) - 1
	if last < 0 || len(l.pieces[last]) == pieceLen {
		l.pieces, last = append(l.pieces, make([]Entry, 0, pieceLen)), last+1
	}
	l.pieces[last], l.size = append(l.pieces[last], n), l.size+n.size()
}

func (l *load) len() int {
	if len(l.pieces) == 0 {
		return 0
	}
	last := len(l.pieces) - 1
	return last*pieceLen + len(l.pieces[last])
}

// at is an entry by its place.
func (l *load) at(i int) *Entry { return &l.pieces[i/pieceLen][i%pieceLen] }

// all gives the entries with their places.
func (l *load) all(yield func(int, *Entry) bool) {
	for i := range l.len() {
		if !yield(i, l.at(i)) {
			return
		}
	}
}
