package core

// HeadedBack is the leader cut back in the dormant season, or left to regrow
// because it had not passed its stake.
type HeadedBack struct {
	Short  bool    // too short: cut to strong buds to regrow
	Height Measure // of the cut above the graft
}

// Kind is headed-back.
func (*HeadedBack) Kind() string { return "headed-back" }

func (b *HeadedBack) fields(f fields) {
	f.flag("short", &b.Short)
	f.length("height", &b.Height)
}

func (b *HeadedBack) apply(_ *Stump, a *Attempt, e Event) { a.Headed = append(a.Headed, said(e, *b)) }
