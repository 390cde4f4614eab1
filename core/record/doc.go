// Package record is the journal of a block and what is folded from it: events, a
// file for each part of the work; the record of a stump, its attempts, grafts and
// stage; the book of blocks, lots and weather. It decides what an answer becomes
// (Answer), what is taken back together (Act, Undo), and holds the two written
// forms of an event (Line, Pack).
//
// It is pure: the clock, the time zones and random numbers are passed in, and
// neither the order in which events are given nor repetition makes a difference. It
// imports only pure standard packages and the leaves of core: units, facts of the
// trade, sums. What is ready, due or asked next is made from it, and it knows
// nothing of these.
package record
