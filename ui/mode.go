package ui

import "barkslip/ui/part"

// mode is what the window shows: the screens from the ground up, of which the
// last is seen and the others are what Esc goes back to; and what lies over the
// last.
type mode struct {
	up   []part.Screen
	over part.Screen   // a prompt, a list or a page; nil for none
	last []part.Screen // what lay there before, as the list over which its help is; Esc goes back to it
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
func (m *mode) put(s part.Screen) {
	m.up = append(m.up, s)
	m.bare()
}

// bare has nothing lie over the screen.
func (m *mode) bare() { m.over, m.last = nil, nil }

// lay lays a list, a page or a prompt over the screen. What lay there stays beneath.
func (m *mode) lay(over part.Screen) {
	if m.over != nil {
		m.last = append(m.last, m.over)
	}
	m.over = over
}

// lift takes off what lies over the screen, or over what lay there before.
func (m *mode) lift() {
	m.over = nil
	if n := len(m.last); n > 0 {
		m.over, m.last = m.last[n-1], m.last[:n-1]
	}
}

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
