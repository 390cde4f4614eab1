package main

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/adrg/xdg"

	"barkslip/core/record"
	"barkslip/store"
	"barkslip/ui"
)

// prefsFile is where this computer remembers its user. It is no part of a book.
func prefsFile() string { return filepath.Join(xdg.ConfigHome, "barkslip", "prefs.json") }

// loadPrefs is what was remembered; a file that does not hold counts as none.
func loadPrefs() ui.Prefs {
	prefs := ui.Prefs{Theme: themes[0], Coach: true}
	text, err := store.ReadPlain(prefsFile(), mostPrefs)
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
	kept.Crew = cleanCrew(kept.Crew)
	return kept
}

// mostPrefs is how long the file may be, in bytes.
const mostPrefs = 64 << 10

// savePrefs remembers the user's choices.
func savePrefs(prefs ui.Prefs) error {
	fail := func(err error) error {
		return fmt.Errorf("what was set on this computer cannot be remembered: %s", cause(err))
	}
	text, err := json.Marshal(prefs)
	if err != nil {
		return fail(err)
	}
	if err := writeOver(prefsFile(), append(text, '\n')); err != nil {
		return fail(err)
	}
	return nil
}
