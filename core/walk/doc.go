// Package walk leads through one stump step by step: which step is asked, its
// question and answers, what to look for, why, and what to do when it is not
// right. Which step comes next follows from what is due.
//
// It may import what is due, readiness, the record and the leaves.
package walk
