package main

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/adrg/xdg"

	"barkslip/core/record"
	"barkslip/store/meet"
)

// FuzzPrefs reads what this computer remembers of its user from any bytes: what comes out
// can be shown and used.
func FuzzPrefs(f *testing.F) {
	f.Add([]byte(`{"Hand":"RK","Theme":"sunlight","Coach":false,"Crew":{"Name":"hollow-lane","URL":"nats://truck:4222","Key":"/k"}}`))
	f.Add([]byte(`{"Hand":"\u001b[2J","Theme":3}`))
	f.Add([]byte("\x00"))
	f.Fuzz(func(t *testing.T, text []byte) {
		was := xdg.ConfigHome
		xdg.ConfigHome = t.TempDir()
		defer func() { xdg.ConfigHome = was }()
		if err := writeOver(prefsFile(), text); err != nil {
			t.Fatal(err)
		}
		p := loadPrefs()
		if !slices.Contains(themes, p.Theme) || p.Hand != record.Clean(p.Hand) || p.Crew.Name != record.Clean(p.Crew.Name) || p.Crew.URL != record.Clean(p.Crew.URL) {
			t.Errorf("%q gives %+v", text, p)
		}
		if err := savePrefs(p); err != nil {
			t.Fatal(err)
		}
		if again := loadPrefs(); again != p {
			t.Errorf("%+v is read again as %+v", p, again)
		}
	})
}

// FuzzClockFile reads the time from a file of any bytes: a time within the years that an
// answer may have, or a word of what is accepted.
func FuzzClockFile(f *testing.F) {
	for _, text := range []string{"2027-05-04T14:30:00-07:00", "", "now", "9999-12-31T23:59:59Z", "2027-05-04T14:30:00-07:00\n\n", "\x00"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		path := filepath.Join(t.TempDir(), "clock")
		if err := os.WriteFile(path, text, 0o600); err != nil {
			t.Fatal(err)
		}
		at, err := clockFile(path)
		if err == nil && (at.Year() < record.FirstYear || at.Year() > record.LastYear) {
			t.Errorf("%q is taken for %v", text, at)
		}
	})
}

// FuzzKeyFile reads the keys of a crew from any bytes.
func FuzzKeyFile(f *testing.F) {
	f.Add([]byte(meet.KeyText(meet.Key{1}, meet.Key{2})))
	f.Add([]byte("# no key\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		path := filepath.Join(t.TempDir(), "key")
		if err := os.WriteFile(path, text, 0o600); err != nil {
			t.Fatal(err)
		}
		keys, err := readKeys(path)
		if err != nil {
			return
		}
		if err := os.WriteFile(path, []byte(meet.KeyText(keys...)), 0o600); err != nil {
			t.Fatal(err)
		}
		if again, err := readKeys(path); err != nil || !slices.Equal(again, keys) {
			t.Errorf("%q: %d keys, read again as %d, %v", text, len(keys), len(again), err)
		}
	})
}
