package part

import (
	"barkslip/core/due"
	"barkslip/core/record"
)

// AddLimb adds the next limb of a stump's tree as a stump of its own, as one act;
// it gives the limb, and what was done in words.
func (x *Session) AddLimb(tree record.StumpID) (record.StumpID, string, error) {
	s, err := x.Book.Stump(tree)
	if err != nil {
		return record.NoStump, "", err
	}
	id, says, err := s.NextLimb()
	if err != nil {
		return record.NoStump, "", err
	}
	limb, err := x.Book.Stump(id)
	if err != nil {
		return record.NoStump, "", err
	}
	events, err := limb.Answer(x.Given(says))
	if err != nil {
		return record.NoStump, "", err
	}
	if _, err := x.Write(events...); err != nil {
		return record.NoStump, "", err
	}
	x.nameAct(LimbAdded(id))
	words := "Limb " + id.Letter() + " added to " + id.Trunk().Place() + ": " + id.Place() + " is a stump of its own."
	if len(s.Limbs) == 0 && s.Added != nil {
		words += " The trunk is none now."
	}
	return id, words + " u takes it back.", nil
}

// LimbAdded is the adding of a limb in a few words.
func LimbAdded(id record.StumpID) string {
	return "limb " + id.Letter() + " of " + id.Trunk().Place() + " added"
}

// TakeLimbBack takes back the adding of a limb, on which no answer stands, and
// opens what is left of its tree.
func (x *Session) TakeLimbBack(s *record.Stump, adding record.Event) Msgs {
	taken := Says("Took back: " + LimbAdded(s.ID) + ".")
	if x.LastStump() == s.ID {
		taken = x.TakeBack()
	} else if _, err := x.Withdraw(s.Act(adding)); err != nil {
		return Fails(err)
	}
	if x.isStump(s.ID) { // it failed, and says so
		return taken
	}
	if id, ok := x.StumpOf(s.ID.Trunk()); ok {
		return append(Msgs{Open{Stump: id}}, taken...)
	}
	return append(Msgs{Back{}}, taken...)
}

// StumpOf is the stump at a place: of a trunk that has limbs the first of these;
// ok is false where there is none.
func (x *Session) StumpOf(id record.StumpID) (record.StumpID, bool) {
	if x.isStump(id) {
		return id, true
	}
	for _, s := range x.Summaries(id.Block) {
		if id.Limb == 0 && s.ID.Trunk() == id {
			return s.ID, true
		}
	}
	return id, false
}

func (x *Session) isStump(id record.StumpID) bool {
	_, found := due.Find(x.Summaries(id.Block), id)
	return found
}
