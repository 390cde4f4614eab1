package core

import (
	"fmt"
	"slices"
	"strings"
)

// Bleeding is how a face wets again after a wipe.
type Bleeding string

// The four answers to "is it bleeding?"; "" where nobody looked.
const (
	Dry     Bleeding = "dry"
	Damp    Bleeding = "damp"
	Weeping Bleeding = "weeping"
	Running Bleeding = "running"
)

// Bleedings lists them from dry to wet.
var Bleedings = []Bleeding{Dry, Damp, Weeping, Running}

// Slip is how the bark lifts from the wood.
type Slip string

// The three answers to "does the bark slip?"; "" where nobody tried.
const (
	SlipsClean Slip = "clean"
	Drags      Slip = "drags"
	Stuck      Slip = "stuck"
)

// Slips lists them from best to worst.
var Slips = []Slip{SlipsClean, Drags, Stuck}

// Cover is how the sealer is covered.
type Cover string

// The covers of a sealed graft.
const (
	Bare    Cover = "bare"
	Wrapped Cover = "wrapped"
)

// Covers lists them.
var Covers = []Cover{Wrapped, Bare}

// GraftState is what a visit finds on one graft.
type GraftState string

// What a visit may find.
const (
	NoChange GraftState = "no-change"
	Swelling GraftState = "swelling"
	Pushing  GraftState = "pushing"
	Growing  GraftState = "growing"
	Dead     GraftState = "dead"
)

// GraftStates lists them in order of life.
var GraftStates = []GraftState{NoChange, Swelling, Pushing, Growing, Dead}

// Scratch is what shows under scratched bark.
type Scratch string

// What a scratch may show; "" where none was made.
const (
	Green Scratch = "green"
	Brown Scratch = "brown"
)

// Buds says how many buds each node of a scion carries.
type Buds string

// The buds at a node.
const (
	Paired Buds = "ps" // first and second bud
	First  Buds = "p"  // the first bud only
	NoBud  Buds = "x"
)

// oneOf refuses a word outside its vocabulary; "" passes where allowed.
func oneOf[T ~string](name string, v T, empty bool, vocabulary ...T) error {
	if empty && v == "" || slices.Contains(vocabulary, v) {
		return nil
	}
	words := make([]string, len(vocabulary))
	for i, w := range vocabulary {
		words[i] = string(w)
	}
	return fmt.Errorf("%s is %q, not one of %s", name, Clean(string(v)), strings.Join(words, ", "))
}
