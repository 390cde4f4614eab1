package part

import (
	"errors"
	"strings"
	"unicode"
)

// AskHand asks for the initials that go with every answer.
func (x *Session) AskHand() Msgs {
	return x.Asks("Whose hand? Initials:", x.Prefs.Hand, true, func(text string) (Msgs, error) {
		text = strings.ToUpper(Typed(text))
		if err := CheckInitials(text); err != nil {
			return nil, err
		}
		return Says("Hand: " + text + ".").And(x.SetHand(text)...), nil
	})
}

// SetHand has the answers that follow be of a hand, also after the next start.
func (x *Session) SetHand(initials string) Msgs {
	x.Hand, x.Prefs.Hand = initials, initials
	return x.keepPrefs()
}

// CheckInitials refuses what is not one to four letters.
func CheckInitials(text string) error {
	if n := len([]rune(text)); n < 1 || n > 4 || strings.ContainsFunc(text, func(c rune) bool { return !unicode.IsLetter(c) }) {
		return errors.New("give one to four letters, such as RK")
	}
	return nil
}
