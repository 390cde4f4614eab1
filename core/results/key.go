// Package results counts what took, what stands and what was lost to what: the
// grafts of the summaries, grouped by what may have made the difference.
package results

import "strings"

// Key is what grafts are grouped by.
type Key uint8

// The keys, in the order in which they are offered.
const (
	Lot Key = iota
	Variety
	Row
	Hand
	Week
	Bleeding
	Waited
	Cover
	Advice
	Thickness
	keys
)

var keyNames = [keys]string{"lot", "variety", "row", "hand", "week", "bleeding", "waited", "cover", "advice", "thickness"}

// Keys lists them.
func Keys() (out []Key) {
	for k := range keys {
		out = append(out, k)
	}
	return out
}

// Named is a key by its name; ok is false for none.
func Named(name string) (k Key, ok bool) {
	for k, have := range keyNames {
		if strings.EqualFold(have, name) {
			return Key(k), true
		}
	}
	return 0, false
}

// String is the key's name.
func (k Key) String() string { return keyNames[k] }

// Words is what the groups of a key are, in a phrase.
func (k Key) Words() string {
	return [keys]string{"by lot of wood", "by variety", "by row", "by hand that set the scion", "by week", "by bleeding last seen before the scion",
		"by days from cutting back to the scion", "by cover of the seal", "with or against advice", "by thickness of the scion"}[k]
}

// Unknown is the group of the grafts of which a key was not told.
const Unknown = "unknown"
