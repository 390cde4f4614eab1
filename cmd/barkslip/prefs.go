package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/adrg/xdg"

	"barkslip/core/record"
	"barkslip/ui"
)

// prefsFile is where this computer remembers its user. It is no part of a book.
func prefsFile() string { return filepath.Join(xdg.ConfigHome, "barkslip", "prefs.json") }

// loadPrefs is what was remembered; a file that does not hold counts as none.
func loadPrefs() ui.Prefs {
	prefs := ui.Prefs{Theme: themes[0], Coach: true}
	text, err := os.ReadFile(prefsFile())
	if err != nil {
		return prefs
	}
	kept := prefs
	if json.Unmarshal(text, &kept) != nil {
		return prefs
	}
	kept.Hand = strings.TrimSpace(record.Clean(kept.Hand))
	if kept.Theme != themes[0] && kept.Theme != themes[1] {
		kept.Theme = prefs.Theme
	}
	return kept
}

// savePrefs remembers the user's choices by way of a second file, so that a
// full disk leaves the old ones.
func savePrefs(prefs ui.Prefs) error {
	fail := func(err error) error { return fmt.Errorf("hand and theme cannot be remembered: %s", cause(err)) }
	text, err := json.Marshal(prefs)
	if err != nil {
		return fail(err)
	}
	if err := os.MkdirAll(filepath.Dir(prefsFile()), 0o700); err != nil {
		return fail(err)
	}
	temp := prefsFile() + ".new"
	if err := os.WriteFile(temp, append(text, '\n'), 0o600); err != nil {
		return fail(err)
	}
	if err := os.Rename(temp, prefsFile()); err != nil {
		return fail(err)
	}
	return nil
}
