package record

import (
	"fmt"
	"slices"
	"strings"

	"barkslip/core/unit"
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

// Word is what a grafter says of bark: it slips, it drags, it is stuck.
func (s Slip) Word() string {
	if s == SlipsClean {
		return "slips"
	}
	return string(s)
}

// Rain is a day's rain in a word.
type Rain string

// The words for a day's rain; "" where it was not said.
const (
	NoRain  Rain = "none"
	Showers Rain = "showers"
	Rainy   Rain = "rain"
)

// Rains lists them from dry to wet.
var Rains = []Rain{NoRain, Showers, Rainy}

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

func budWords(nodes []Node) string {
	paired, buds := 0, 0
	for _, n := range nodes {
		switch n.Buds {
		case Paired:
			paired, buds = paired+1, buds+2
		case First:
			buds++
		}
	}
	return fmt.Sprintf("%d nodes, %d buds", len(nodes), buds)
}

// CutPlaces is where the scions of a stick are cut: "3/4 to 5 1/2 in, 6 to 11
// in", from the butt.
func CutPlaces(pieces []Piece, sys unit.System) string {
	var words []string
	for _, p := range pieces {
		from, to := place(p.From.Length, sys), place(p.To.Length, sys)
		_, kind, _ := cutBehind(to)
		words = append(words, strings.TrimSuffix(from, kind)+" to "+to)
	}
	return strings.Join(words, ", ")
}

// place is a place along a stick, to the eighth of an inch or finer up to 2 ft
// and to the tenth beyond.
func place(l unit.Length, sys unit.System) string {
	if sys == unit.US && l >= 2*unit.Foot {
		return fmt.Sprintf("%.1f in", l.Inches())
	}
	return sys.Length(l)
}

// cutBehind parts a length from its unit.
func cutBehind(s string) (number, kind string, ok bool) {
	if i := strings.LastIndex(s, " "); i >= 0 {
		return s[:i], s[i:], true
	}
	return s, "", false
}

// Verdict is what a stump needs before it can be grafted, as judged.
type Verdict string

// Verdicts lists them in the order in which they lead.
var Verdicts = []Verdict{"other-graft", "cut-back", "take-limb-off", "wait", "look", "gash", "drill", "wipe", "leave", "fresh-cut", "graft"}
