package main

import (
	"bytes"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/adrg/xdg"

	"barkslip/core/record"
	"barkslip/store"
	"barkslip/store/meet"
	"barkslip/ui/part"
)

// mostCrewFile is how long a file of keys, certificates or credentials may be, in bytes.
const mostCrewFile = 64 << 10

// crewFolder is where this computer keeps its copies of the files that a crew needs.
func crewFolder() string { return filepath.Join(xdg.ConfigHome, "barkslip", "crew") }

// cleanCrew is a crew as it may be shown.
func cleanCrew(c part.Crew) part.Crew {
	for _, s := range []*string{&c.Name, &c.URL} {
		*s = strings.TrimSpace(record.Clean(*s))
	}
	return c
}

// checkCrew says what does not hold of what is set of a crew.
func checkCrew(c part.Crew) error {
	if c.Name != "" {
		if err := meet.CheckName(c.Name); err != nil {
			return err
		}
	}
	if c.URL != "" {
		if err := meet.CheckURL(c.URL); err != nil {
			return err
		}
	}
	if c.Key != "" {
		if _, err := readKeys(c.Key); err != nil {
			return err
		}
	}
	for what, path := range map[string]string{"the file of certificates": c.CA, "the credentials file": c.Credentials} {
		if path == "" {
			continue
		}
		if _, err := store.ReadPlain(path, mostCrewFile); err != nil {
			return fmt.Errorf("%s %s cannot be read: %s", what, path, cause(err))
		}
	}
	return nil
}

func readKeys(path string) ([]meet.Key, error) {
	text, err := store.ReadPlain(path, mostCrewFile)
	var keys []meet.Key
	if err == nil {
		keys, err = meet.ReadKeys(bytes.NewReader(text))
	}
	if err != nil {
		return nil, fmt.Errorf("the key file %s cannot be used: %s", path, cause(err))
	}
	return keys, nil
}

// keptCrew is a crew whose files are those of this computer: what lies elsewhere, as on a
// memory stick, is copied. A key that was there stays behind the new ones: what was sealed
// with it could not be read without.
func keptCrew(c part.Crew) (part.Crew, error) {
	for _, f := range []struct {
		path *string
		name string
	}{{&c.Key, c.Name + ".key"}, {&c.CA, c.Name + ".certificates"}, {&c.Credentials, c.Name + ".credentials"}} {
		to := filepath.Join(crewFolder(), f.name)
		if *f.path == "" || *f.path == to {
			continue
		}
		text, err := store.ReadPlain(*f.path, mostCrewFile)
		if err == nil && f.path == &c.Key {
			text, err = withFormer(to, text)
		}
		if err == nil {
			err = writeOver(to, text)
		}
		if err != nil {
			return c, fmt.Errorf("%s cannot be kept on this computer: %s", *f.path, cause(err))
		}
		*f.path = to
	}
	return c, nil
}

// makeKey draws a key and writes it into a new file, former ones behind it.
func makeKey(path string, former ...meet.Key) error {
	key, err := meet.NewKey(rand.Reader)
	if err == nil {
		err = writeNew(path, []byte(meet.KeyText(append([]meet.Key{key}, former...)...)))
	}
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s is there already; it is not written over, as what was sealed with it could not be read any more", path)
	}
	if err != nil {
		return fmt.Errorf("the key file %s cannot be written: %s", path, cause(err))
	}
	return nil
}

// withFormer is the text of a key file with the keys of another behind it.
func withFormer(former string, text []byte) ([]byte, error) {
	keys, err := meet.ReadKeys(bytes.NewReader(text))
	if err != nil {
		return nil, err
	}
	behind, err := readKeys(former)
	if _, missing := os.Stat(former); errors.Is(missing, fs.ErrNotExist) {
		return text, nil
	}
	if err != nil {
		return nil, err
	}
	for _, k := range behind {
		if !slices.Contains(keys, k) {
			keys = append(keys, k)
		}
	}
	return []byte(meet.KeyText(keys...)), nil
}

// newCrewKey makes a key for a crew on this computer; former ones stand behind it.
func newCrewKey(crew string) (string, error) {
	path := filepath.Join(crewFolder(), crew+".key")
	key, err := meet.NewKey(rand.Reader)
	if err != nil {
		return "", err
	}
	text, err := withFormer(path, []byte(meet.KeyText(key)))
	if err == nil {
		err = writeOver(path, text)
	}
	if err != nil {
		return "", fmt.Errorf("the key file %s cannot be written: %s", path, cause(err))
	}
	return path, nil
}

// openedCrew is a crew with its keys, and its server.
func openedCrew(c part.Crew) (crew meet.Crew, server meet.Server, err error) {
	keys, err := readKeys(c.Key)
	return meet.Crew{Name: c.Name, Keys: keys}, meet.Server{URL: c.URL, CA: c.CA, Credentials: c.Credentials}, err
}
