// Package main_test runs the built program as people do: in a terminal, with
// keys, over days that pass by a clock the tests set, and with the power cut.
package main_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// binary is the program built for these tests.
var binary string

// TestTerminal builds the program once and runs it through all that follows.
// The slow parts run with BARKSLIP_E2E=1. What is timed runs alone, the rest
// side by side.
func TestTerminal(t *testing.T) {
	if testing.Short() {
		t.Skip("builds and runs the program: not with -short")
	}
	if !havePty {
		t.Skip("needs the pseudo terminals of Linux")
	}
	binary = filepath.Join(t.TempDir(), "barkslip")
	if out, err := exec.Command("go", "build", "-o", binary, ".").CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, out)
	}
	for _, part := range []struct {
		name string
		test func(t *testing.T)
	}{
		{"first frame", testFirstFrame}, {"burst", testBurst}, {"kill", testKill}, {"sync", testSync},
		{"walk", testWalk}, {"keys", testKeys}, {"white", testWhite}, {"sizes", testSizes}, {"looks", testLooks}, {"while open", testWhileOpen}, {"look on", testLookOn}, {"join stopped", testJoinStopped}, {"sample cut off", testSampleCutOff},
	} {
		t.Run(part.name, part.test)
	}
}

// slow skips what takes long unless it was asked for.
func slow(t *testing.T) {
	t.Helper()
	if os.Getenv("BARKSLIP_E2E") != "1" {
		t.Skip("slow; BARKSLIP_E2E=1 runs it")
	}
}

// timed skips what measures time where the race detector slows everything.
func timed(t *testing.T) {
	t.Helper()
	if os.Getenv("BARKSLIP_RACE") == "1" {
		t.Skip("times mean nothing under the race detector")
	}
}

// patience is how long a test waits for what must come.
const patience = 20 * time.Second

// until polls until something holds.
func until(holds func() bool) bool {
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		if holds() {
			return true
		}
	}
	return holds()
}

var escapes = regexp.MustCompile("\x1b(\\[[0-9;?<>=]*[A-Za-z]|\\][^\a\x1b]*(\a|\x1b\\\\)|[()][0-9A-B]|[=>78])")

// text is what a terminal was sent without its escape sequences.
func text(raw string) string { return escapes.ReplaceAllString(raw, "") }

// flat is a text with all its white space as single spaces, so that words are
// found whichever way they were broken into lines.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }
