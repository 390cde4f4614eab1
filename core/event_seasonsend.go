package core

// SeasonsEnd is how the stump stood when the season ended.
type SeasonsEnd struct {
	Alive int    // grafts alive
	Word  string // strong, fair, weak, dead
}

// SeasonWords lists how a stump may end a season.
var SeasonWords = []string{"strong", "fair", "weak", "dead"}

// Kind is seasons-end.
func (*SeasonsEnd) Kind() string { return "seasons-end" }

func (b *SeasonsEnd) fields(f fields) {
	f.number("alive", &b.Alive)
	f.text("word", &b.Word)
}

func (b *SeasonsEnd) check() error { return oneOf("word", b.Word, true, SeasonWords...) }

func (b *SeasonsEnd) apply(_ *Stump, a *Attempt, e Event) { a.Seasons = append(a.Seasons, said(e, *b)) }
