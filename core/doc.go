// Package core holds the rooms of the program that do sums and keep rules: the
// record of a block, whether a stump is ready, what it needs next, the walk
// that leads through it, and what is planned from all of them. All of it is
// pure: the clock, time zones and random numbers are passed in.
package core
