package ui

import "barkslip/ui/part"

// mode is what the window shows: the screens from the ground up, of which the
// last is seen and the others are what Esc goes back to; and what lies over the
// last.
type mode struct {
	up   []part.Screen
	over part.Screen // a prompt, a list or a page; nil for none
}

// top is what takes the keys.
func (m *mode) top() part.Screen {
	if m.over != nil {
		return m.over
	}
	return m.screen()
}

// screen is the one that is up, whatever lies over it.
func (m *mode) screen() part.Screen { return m.up[len(m.up)-1] }

// push puts a screen up over the others, once it could be loaded.
func (m *mode) push(s part.Screen) error {
	if err := s.Load(); err != nil {
		return err
	}
	m.put(s)
	return nil
}

// put puts a screen up that is loaded.
func (m *mode) put(s part.Screen) { m.up, m.over = append(m.up, s), nil }

// pop takes the screen off that is up; the ground stays.
func (m *mode) pop() {
	m.up = m.up[:max(len(m.up)-1, 1)]
}

// find is the screen of a kind that is up or beneath, if there is one.
func find[S part.Screen](m *mode) (s S, ok bool) {
	for _, up := range m.up {
		if s, ok = up.(S); ok {
			return s, true
		}
	}
	return s, false
}

// upon is the screen that is up, if it is of a kind.
func upon[S part.Screen](m *mode) (s S, ok bool) {
	if len(m.up) > 0 {
		s, ok = m.screen().(S)
	}
	return s, ok
}
