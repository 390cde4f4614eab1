package practice

import (
	"barkslip/core/practice"
	"barkslip/ui/part"
)

// askInitials asks whose practice it is. Where there is some under the initials already,
// it is said whose, and another spelling is offered.
func (s *Screen) askInitials() part.Msgs {
	return s.x.Asks("Whose practice? Initials:", s.x.Prefs.Hand, true, func(text string) (part.Msgs, error) {
		initials, err := practice.ReadInitials(text)
		if err != nil {
			return nil, err
		}
		if initials == s.learner() {
			return part.Says("It is " + initials + "'s practice already."), nil
		}
		there, err := s.there(initials)
		if err != nil {
			return nil, err
		}
		if there == nil {
			return s.becomes(initials)(), nil
		}
		other := practice.Other(initials, func(spelt string) bool { at, err := s.there(spelt); return at != nil || err != nil })
		return s.x.Picks("There is practice of "+initials+" here.", there.Whose(), []part.Item{
			{Word: "it is mine", Meaning: "go on with it", Take: s.becomes(initials)},
			{Word: "I am somebody else", Meaning: "practise as " + other, Take: s.becomes(other)},
		}), nil
	})
}

// there is the practice kept under some initials, nil where there is none.
func (s *Screen) there(initials string) (*practice.Learner, error) {
	if s.x.Learners == nil {
		return nil, nil
	}
	all, _, err := s.x.Learners.All()
	for _, l := range all {
		if l.Initials == initials {
			return l, nil
		}
	}
	return nil, err
}

// becomes has the practice be of somebody.
func (s *Screen) becomes(initials string) func() part.Msgs {
	return func() part.Msgs {
		if err := s.open(initials); err != nil {
			return part.Fails(err)
		}
		return part.Says("Practice of " + initials + ".")
	}
}
