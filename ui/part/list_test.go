package part

import (
	"strings"
	"testing"
)

// TestListKeysAreApart sees that no two items of a list share a key, and that
// none is a key with which a list is moved about in or left.
func TestListKeysAreApart(t *testing.T) {
	for i, c := range itemKeys {
		if strings.ContainsRune(itemKeys[:i], c) {
			t.Errorf("%q picks two items", c)
		}
		if strings.ContainsRune("qjk", c) {
			t.Errorf("%q picks an item and moves or leaves", c)
		}
	}
}
