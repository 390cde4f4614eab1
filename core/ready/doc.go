// Package ready judges whether a stump can be grafted: what was found on it, and
// the verdict by the first rule that applies, with its reasons, what helps
// meanwhile and its cautions.
//
// It may import the record and the leaves.
package ready
