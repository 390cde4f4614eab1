package main_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"barkslip/core/record"
)

// world is one user's laptop: folders, a book in the usual place, and a clock
// that stands where the test puts it. The laptop is set to UTC, the blocks lie
// elsewhere.
type world struct {
	t   *testing.T
	dir string
	env []string
}

// zone is where the blocks of these tests lie.
var zone = func() *time.Location {
	z, err := time.LoadLocation("America/Los_Angeles")
	if err != nil {
		panic(err)
	}
	return z
}()

// on reads a time of the blocks' zone.
func on(day string) time.Time {
	t, err := time.ParseInLocation("2006-01-02 15:04", day, zone)
	if err != nil {
		panic(err)
	}
	return t
}

func newWorld(t *testing.T, now string) *world {
	t.Helper()
	w := &world{t: t, dir: t.TempDir()}
	w.env = []string{
		"PATH=" + os.Getenv("PATH"), "HOME=" + w.dir, "XDG_DATA_HOME=" + w.in("data"), "XDG_CONFIG_HOME=" + w.in("config"),
		"TERM=xterm-256color", "LANG=C.UTF-8", "TZ=UTC", "BARKSLIP_CLOCK=" + w.in("clock"),
	}
	w.clock(now)
	return w
}

func (w *world) in(name string) string { return filepath.Join(w.dir, name) }

func (w *world) book() string { return w.in("data/barkslip/book.bark") }

// clock sets the time, whole at once.
func (w *world) clock(now string) {
	w.t.Helper()
	temp := w.in("clock.new")
	if err := os.WriteFile(temp, []byte(on(now).Format(time.RFC3339)+"\n"), 0o600); err != nil {
		w.t.Fatal(err)
	}
	if err := os.Rename(temp, w.in("clock")); err != nil {
		w.t.Fatal(err)
	}
}

// knows writes what the laptop remembers of its user, so that it asks for no
// initials.
func (w *world) knows(hand string, coach bool) {
	w.t.Helper()
	if err := os.MkdirAll(w.in("config/barkslip"), 0o700); err != nil {
		w.t.Fatal(err)
	}
	prefs := fmt.Sprintf(`{"Hand":%q,"Theme":"dark","Coach":%v}`, hand, coach)
	if err := os.WriteFile(w.in("config/barkslip/prefs.json"), []byte(prefs), 0o600); err != nil {
		w.t.Fatal(err)
	}
}

// try runs a command to its end.
func (w *world) try(args ...string) (out, errs string, err error) {
	c := exec.Command(binary, args...)
	var o, e bytes.Buffer
	c.Env, c.Dir, c.Stdout, c.Stderr = w.env, w.dir, &o, &e
	err = c.Run()
	return o.String(), e.String(), err
}

// run is a command that must do what it is asked; it gives its output.
func (w *world) run(args ...string) string {
	w.t.Helper()
	out, errs, err := w.try(args...)
	if err != nil {
		w.t.Fatalf("barkslip %s: %v\n%s%s", strings.Join(args, " "), err, out, errs)
	}
	return out
}

// sound checks the book from end to end.
func (w *world) sound() {
	w.t.Helper()
	if out := w.run("check"); !strings.Contains(out, "sound") {
		w.t.Errorf("check says: %s", out)
	}
}

// journal is every event of the book as the command line exports it.
func (w *world) journal() []record.Event {
	w.t.Helper()
	var events []record.Event
	for line := range strings.Lines(w.run("journal", "export")) {
		e, err := record.ParseLine([]byte(strings.TrimSpace(line)))
		if err != nil {
			w.t.Fatalf("journal export: %v in %s", err, line)
		}
		events = append(events, e)
	}
	return events
}

// kinds counts the events of one stump by kind.
func (w *world) kinds(place string) map[string]int {
	w.t.Helper()
	n := map[string]int{}
	for _, e := range w.journal() {
		if e.Stump != record.NoStump && e.Stump.Place() == place {
			n[e.Body.Kind()]++
		}
	}
	return n
}
