package main

import (
	"fmt"
	"runtime/debug"
	"time"
)

const version = "0.1.0"

// build is from which revision of the source the program was built.
type build struct {
	revision string // "" if that is not known
	at       time.Time
	changed  bool // there were changes that no revision holds
}

// revision is what the Go command put down when it built the program.
func revision() (b build) {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return b
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			b.revision = s.Value
		case "vcs.time":
			b.at, _ = time.Parse(time.RFC3339, s.Value)
		case "vcs.modified":
			b.changed = s.Value == "true"
		}
	}
	return b
}

// words are what --version says of a build.
func (b build) words() string {
	switch {
	case b.revision == "":
		return "revision unknown"
	case b.changed:
		return fmt.Sprintf("revision %.12s of %s, changed since", b.revision, b.at.Format("2 Jan 2006"))
	}
	return fmt.Sprintf("revision %.12s of %s", b.revision, b.at.Format("2 Jan 2006"))
}
