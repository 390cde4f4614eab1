// Package practice is the screens of practice: the skills and what is asked next, a case,
// a sign-off, and who has learnt what. Nothing here reads or writes a book. It may import
// core and ui/part with its leaves, and no other screen.
package practice

import (
	"encoding/binary"

	tea "github.com/charmbracelet/bubbletea"

	"barkslip/core/practice"
	"barkslip/ui/part"
)

// Screen is practice: one of its views.
type Screen struct {
	x       *part.Session
	of      *practice.Learner // nil until somebody said who it is
	said    string            // of a file that was set aside, or of practice that is not kept
	view    view
	seed    *uint64        // of the next case, where one was given
	only    practice.Skill // asked alone; 0 for all
	signOff bool           // a sign-off is wanted first
}

// view is what is up in practice.
type view interface {
	rows() []part.Row // its keys
	frame() part.Frame
	name() string // in the help
}

// New is practice of the session's hand.
func New(x *part.Session) *Screen {
	s := &Screen{x: x}
	if p := x.Practice; p != nil {
		s.seed, s.only, s.signOff = p.Seed, p.Skill, p.SignOff
		if !p.Only {
			x.Practice = nil // it is gone to once
		}
	}
	s.home()
	return s
}

// Load reads what the hand has done so far.
func (s *Screen) Load() error {
	if s.of != nil || s.x.Hand == "" {
		return nil
	}
	return s.open(s.x.Hand)
}

// open reads what somebody has done.
func (s *Screen) open(initials string) error {
	s.said = ""
	of := &practice.Learner{Initials: initials}
	if s.x.Learners != nil {
		var err error
		if of, s.said, err = s.x.Learners.Learner(initials); err != nil {
			return err
		}
	}
	s.of = of
	s.home()
	switch {
	case s.signOff:
		s.signOff, s.view = false, &begin{s}
	case s.seed != nil || s.only != 0:
		s.ask()
	}
	return nil
}

// keep puts what was done on disk.
func (s *Screen) keep() part.Msgs {
	if s.x.Learners == nil {
		return nil
	}
	return part.Fails(s.x.Learners.Keep(s.of))
}

// chance is a seed: the one that was given and those after it, else any.
func (s *Screen) chance() uint64 {
	if s.seed != nil {
		seed := *s.seed
		next := seed + 1
		s.seed = &next
		return seed
	}
	var b [8]byte
	if _, err := s.x.Random.Read(b[:]); err != nil {
		return uint64(s.x.Now().UnixNano())
	}
	return binary.BigEndian.Uint64(b[:]) % 1_000_000_000
}

// Tick does nothing.
func (s *Screen) Tick() part.Msgs { return nil }

// Field is none.
func (s *Screen) Field() *part.Field { return nil }

// Key takes a key of the view's table.
func (s *Screen) Key(k tea.KeyMsg) part.Msgs { return part.Press(s.Table(), k, part.Useless) }

// Table is the keys of the view, with those of every one.
func (s *Screen) Table() []part.Row {
	hand := part.ToHand.Row(s.askInitials).Told("Somebody else's practice, or another spelling where two people have the same initials.")
	return append(append(s.view.rows(), hand), s.x.Leaving(s.help)...)
}

func (s *Screen) help() part.Msgs { return s.x.Help(s.view.name(), s.Table()) }

// Frame is that of the view.
func (s *Screen) Frame() part.Frame {
	f := s.view.frame()
	f.Title = "Practice"
	f.Keys = s.x.KeyLine(nil, s.view.rows())
	return f
}

// learner is the initials, "" where nobody said who it is.
func (s *Screen) learner() string {
	if s.of == nil {
		return ""
	}
	return s.of.Initials
}

// back leads from a view to the skills.
func (s *Screen) back() part.Row {
	return part.ToBack.Row(func() part.Msgs { s.home(); return part.Says("") }).Named("skills").Told("Back to the skills.")
}
