// Package plan looks ahead over a whole block: whether it will be grafted while
// bark slips, how many stumps to cut back, what to load, and what the block's
// own record says of chance.
//
// It may import the walk and all below it.
package plan
