// Package practice makes up cases to judge: a stump at a moment, what is seen on
// it, a question and its answers, of which the rules of the walk hold one for the
// best. A case is made from its seed alone, the same for ever. Nothing here reads or
// writes a block's record.
//
// It may import the walk and what that stands on.
package practice
