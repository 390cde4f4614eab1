package meet

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"strings"

	"barkslip/store"
)

// Crew is who shares a journal: its name, and its keys. The first key seals; each of them
// opens, so that former ones stand behind it.
type Crew struct {
	Name string
	Keys []Key
}

// Key is a crew's key for AES-256 (FIPS 197).
type Key [32]byte

// LongestName is how many letters a crew's name may have.
const LongestName = 32

// CheckName says why a name is none for a crew: it is part of the name of a stream and of
// its subjects.
func CheckName(name string) error {
	if name == "" || len(name) > LongestName {
		return fmt.Errorf("a crew's name has 1 to %d letters", LongestName)
	}
	for _, r := range name {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-' {
			return fmt.Errorf("a crew's name is of the letters a to z, digits and hyphens, such as hollow-lane; %q is none of them", r)
		}
	}
	return nil
}

// NewKey draws a key.
func NewKey(random io.Reader) (k Key, err error) {
	if _, err = io.ReadFull(random, k[:]); err != nil {
		return k, fmt.Errorf("this machine gives no random numbers: %w", err)
	}
	return k, nil
}

// KeyText is the text of a file with keys, the one that seals first.
func KeyText(keys ...Key) string {
	var out strings.Builder
	out.WriteString("# The key of a crew: whoever has it reads all that the crew sends.\n# The first seals; those behind it open what was sealed before.\n")
	for _, k := range keys {
		fmt.Fprintln(&out, hex.EncodeToString(k[:]))
	}
	return out.String()
}

// Most a file of keys holds.
const (
	mostKeys     = 64
	mostKeyBytes = 16 << 10
)

// ReadKeys reads a file with keys: one a line, of 64 hexadecimal digits; what stands
// behind a # is passed over.
func ReadKeys(r io.Reader) ([]Key, error) {
	text, err := io.ReadAll(io.LimitReader(r, mostKeyBytes+1))
	if err != nil {
		return nil, err
	}
	if len(text) > mostKeyBytes {
		return nil, fmt.Errorf("it is longer than %d bytes", mostKeyBytes)
	}
	var keys []Key
	n := 0
	for in := bufio.NewScanner(bytes.NewReader(text)); in.Scan(); {
		n++
		line, _, _ := strings.Cut(in.Text(), "#")
		line = strings.TrimSpace(strings.TrimPrefix(line, "\ufeff"))
		if line == "" {
			continue
		}
		key, err := hex.DecodeString(line)
		if err != nil || len(key) != len(Key{}) {
			return nil, fmt.Errorf("line %d: a key is %d hexadecimal digits", n, 2*len(Key{}))
		}
		if len(keys) == mostKeys {
			return nil, fmt.Errorf("line %d: there are more than %d keys", n, mostKeys)
		}
		keys = append(keys, Key(key))
	}
	if len(keys) == 0 {
		return nil, errors.New("there is no key in it")
	}
	return keys, nil
}

// mark tells a message's key without telling the key.
func (k Key) mark() [8]byte {
	sum := sha256.Sum256(append([]byte("barkslip key "), k[:]...))
	return [8]byte(sum[:])
}

// Mark tells the crew's journal, as this book can read it, from any other: where the keys
// change it is met from the beginning.
func (c Crew) Mark() store.CrewMark {
	text := []byte("barkslip crew " + c.Name + "\n")
	for _, k := range c.Keys {
		text = append(text, k[:]...)
	}
	return sha256.Sum256(text)
}

func (c Crew) stream() string { return "barkslip-" + c.Name }

// subjects are the subjects of the crew's stream.
func (c Crew) subjects() []string { return []string{c.stream() + ".>"} }
