package core

// StumpAdded puts a stump into its block, with what a list may say of it.
type StumpAdded struct {
	Across  Measure // diameter as listed, 0 if unknown
	Stock   string  // species or rootstock
	Variety string  // variety planned, "" for the block's
	Note    string
}

// Kind is stump-added.
func (*StumpAdded) Kind() string { return "stump-added" }

func (b *StumpAdded) fields(f fields) {
	f.length("across", &b.Across)
	f.text("stock", &b.Stock)
	f.text("variety", &b.Variety)
	f.text("note", &b.Note)
}

func (*StumpAdded) question() string { return "added" }

func (b *StumpAdded) apply(s *Stump, _ *Attempt, e Event) { s.Added = standing(e, *b) }
