package core

import "errors"

// Same says that two blocks, two lots or two hands are one. The lower id, or
// the initials first in the alphabet, is the one that goes on.
type Same struct {
	What string // block, lot or hand
	A, B string // ids, or initials
}

// Kind is same.
func (*Same) Kind() string { return "same" }

func (s *Same) fields(f fields) {
	f.text("what", &s.What)
	f.text("a", &s.A)
	f.text("b", &s.B)
}

func (s *Same) check() error {
	if err := oneOf("what", s.What, false, "block", "lot", "hand"); err != nil {
		return err
	}
	if s.A == "" || s.B == "" || s.A == s.B {
		return errors.New("same needs two different names")
	}
	if s.What == "hand" {
		return nil
	}
	_, errA := ParseID(s.A)
	_, errB := ParseID(s.B)
	return errors.Join(errA, errB)
}

func (s *Same) applyBook(book *Book, _ Event) { book.join(s.What, s.A, s.B) }
