// Package ui is the terminal program: a router that hands the keys to the screen
// that is up and does what its messages ask. It imports the screens, a package
// each, and ui/part with its leaves; none of them imports it. It knows the book
// only by an interface.
package ui

import "barkslip/ui/part"

// What a program that opens the screens has to give; see package part.
type (
	// Options wire the screens to the world.
	Options = part.Options
	// Book is what the screens need of the book.
	Book = part.Book
	// Prefs are what a laptop remembers of its user.
	Prefs = part.Prefs
)
