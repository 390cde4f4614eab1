package part

import "errors"

// Looking says whether the screens look on at a book that is open elsewhere:
// nothing is written then.
func (x *Session) Looking() bool { return x.Refresh != nil }

// ErrLooking says why an answer goes nowhere.
var ErrLooking = errors.New("looking on: nothing is written here; answer in the program that has the book open")

// Renew takes in what changed in a book that is looked on at; it says whether
// anything did. An error is said and what was seen stays.
func (x *Session) Renew() (bool, error) {
	if !x.Looking() {
		return false, nil
	}
	newer, err := x.Refresh()
	if newer {
		x.Reread()
	}
	return newer, err
}
