package main_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/nats-io/nats-server/v2/server"
)

// bareScreen is the least program of Bubble Tea that shows a line.
const bareScreen = `package main

import tea "github.com/charmbracelet/bubbletea"

type bare struct{}

func (bare) Init() tea.Cmd                       { return nil }
func (bare) Update(tea.Msg) (tea.Model, tea.Cmd) { return bare{}, nil }
func (bare) View() string                        { return "Hollow Lane" }

func main() { _, _ = tea.NewProgram(bare{}, tea.WithAltScreen(), tea.WithFPS(120)).Run() }
`

// importLines has SQLite take in a journal: one transaction, the id as key, an index by
// stump.
const importLines = `
import sys, json, sqlite3
db = sqlite3.connect(sys.argv[2])
db.execute("create table events (id text primary key, clock integer, stump text, line text)")
def rows():
    for line in open(sys.argv[1], encoding="utf-8"):
        e = json.loads(line)
        yield e["id"], e["clock"], e.get("stump"), line
with db:
    db.executemany("insert or ignore into events values (?,?,?,?)", rows())
    db.execute("create index by_stump on events (stump, clock)")
db.close()
`

const importDues = `
import sys, json, sqlite3
db = sqlite3.connect(sys.argv[2])
db.execute("create table due (at integer primary key, stump text, kind text, opens text, by text, late integer, why text)")
with db:
    db.executemany("insert into due (stump,kind,opens,by,late,why) values (?,?,?,?,?,?)",
        ((d["stump"], d["kind"], d["opens"], d["by"], d["late"], d["why"]) for d in json.load(open(sys.argv[1]))["due"]))
db.close()
`

// TestRatios holds whole commands against the same work by SQLite and by the least program
// there can be, each in turn in one run. With BARKSLIP_BENCH=1; it takes some minutes.
func TestRatios(t *testing.T) {
	if os.Getenv("BARKSLIP_BENCH") == "" {
		t.Skip("a measurement; BARKSLIP_BENCH=1")
	}
	built := filepath.Join(t.TempDir(), "barkslip")
	mustRun(t, "go", "build", "-o", built, ".")
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	t.Setenv("XDG_CONFIG_HOME", in("config"))
	t.Setenv("XDG_DATA_HOME", in("data"))
	mustRun(t, built, "sample", "--stumps", "9450", "--book", in("large.bark"))
	lines := mustRun(t, built, "journal", "export", "--book", in("large.bark"))
	t.Logf("%d events, %d MB as lines", bytes.Count(lines, []byte("\n")), len(lines)>>20)
	for name, text := range map[string][]byte{"large.jsonl": lines, "import.py": []byte(importLines), "dues.py": []byte(importDues)} {
		if err := os.WriteFile(in(name), text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	fresh := func(name string) string { _ = os.RemoveAll(in(name)); return in(name) }
	python := func(script, from, to string) func() {
		return func() { mustRun(t, "python3", in(script), in(from), fresh(to)) }
	}
	join := func() { mustRun(t, built, "journal", "join", in("large.jsonl"), "--book", fresh("joined.bark")) }
	ratio(t, "join of lines against SQLite's import", 0.5, 3, join, python("import.py", "large.jsonl", "lines.sqlite"))
	ratio(t, "join of a book against that of lines", 0.5, 3, func() { mustRun(t, built, "journal", "join", in("large.bark"), "--book", fresh("joined.bark")) }, join)

	due := mustRun(t, built, "due", "--days", "400", "--json", "--book", in("large.bark"))
	if err := os.WriteFile(in("due.json"), due, 0o600); err != nil {
		t.Fatal(err)
	}
	python("dues.py", "due.json", "due.sqlite")()
	t.Logf("%d dues", bytes.Count(due, []byte(`"kind"`)))
	ratio(t, "due against SQLite's list of the same rows", 2, 9, func() { mustRun(t, built, "due", "--days", "400", "--json", "--book", in("large.bark")) },
		func() {
			mustRun(t, "sqlite3", "-json", in("due.sqlite"), "select stump,kind,opens,by,late,why from due order by at")
		})
	ratio(t, "export against SQLite's", 0, 3, func() { mustRun(t, built, "journal", "export", "--book", in("large.bark")) },
		func() { mustRun(t, "sqlite3", in("lines.sqlite"), "select line from events order by clock, id") })
	ratio(t, "check against SQLite's integrity_check", 0, 3, func() { mustRun(t, built, "check", "--book", in("large.bark")) },
		func() { mustRun(t, "sqlite3", in("lines.sqlite"), "pragma integrity_check") })
	ratioOfMeeting(t, built, in, fresh)
	ratioOfFrames(t, built, in)
}

// ratioOfMeeting holds the first meeting of a new laptop against the join of the same lines.
func ratioOfMeeting(t *testing.T, built string, in, fresh func(string) string) {
	s, err := server.NewServer(&server.Options{ServerName: "truck", Host: "127.0.0.1", Port: -1, JetStream: true, StoreDir: in("server"), NoLog: true, NoSigs: true})
	if err != nil {
		t.Fatal(err)
	}
	s.Start()
	defer s.Shutdown()
	if !s.ReadyForConnections(10 * time.Second) {
		t.Fatal("the server does not start")
	}
	mustRun(t, built, "meet", "--new-key", in("key"))
	real := strings.ReplaceAll(string(mustRead(t, in("large.jsonl"))), `"setting":"made-up"`, `"setting":"frosty"`)
	if err := os.WriteFile(in("real.jsonl"), []byte(real), 0o600); err != nil {
		t.Fatal(err)
	}
	mustRun(t, built, "journal", "join", in("real.jsonl"), "--book", in("real.bark"))
	meet := func(book string) func() {
		return func() {
			mustRun(t, built, "meet", s.ClientURL(), "--crew", "hollow-lane", "--key-file", in("key"), "--book", book)
		}
	}
	t.Logf("sending it all: %v", timedOnce(meet(in("real.bark"))))
	ratio(t, "first meeting against the join of the same lines", 1.5, 3, func() { meet(fresh("new.bark"))() },
		func() { mustRun(t, built, "journal", "join", in("real.jsonl"), "--book", fresh("joined.bark")) })
	ratio(t, "meeting again with nothing new against barkslip --version", 0, 5, meet(in("real.bark")), func() { mustRun(t, built, "--version") })
}

// ratioOfFrames holds the first frame of a large block, which says what is read, and the one
// with all its stumps against that of a bare program.
func ratioOfFrames(t *testing.T, built string, in func(string) string) {
	if err := os.WriteFile(in("main.go"), []byte(bareScreen), 0o600); err != nil {
		t.Fatal(err)
	}
	mustRun(t, "go", "build", "-o", in("bare"), in("main.go"))
	binary = built
	w := newWorld(t, "2027-06-10 09:00")
	w.knows("RK", true)
	w.run("sample", "--stumps", "10000", "--book", w.in("five.bark"))
	name := sampleName(t, w)
	var first, whole, theirs []time.Duration
	for range 15 {
		for _, of := range []struct {
			took *[]time.Duration
			prog string
			with string
		}{{&first, built, name}, {&whole, built, "rising to untied"}, {&theirs, in("bare"), "Hollow Lane"}} {
			d := w.dial(true, of.prog, "--book", w.in("five.bark"))
			*of.took = append(*of.took, d.first(of.with))
			d.kill()
		}
	}
	say(t, "first frame of 10,000 stumps, which says that they are read, against a bare program", 1.5, first, theirs)
	say(t, "the frame with all 10,000 against a bare program", 0, whole, theirs)
}

// ratio runs two things in turn and says how many times as long the first takes.
func ratio(t *testing.T, what string, most float64, times int, ours, theirs func()) {
	t.Helper()
	var a, b []time.Duration
	for range times {
		a, b = append(a, timedOnce(ours)), append(b, timedOnce(theirs))
	}
	say(t, what, most, a, b)
}

func say(t *testing.T, what string, most float64, ours, theirs []time.Duration) {
	t.Helper()
	slices.Sort(ours)
	slices.Sort(theirs)
	a, b := ours[len(ours)/2], theirs[len(theirs)/2]
	wanted := ""
	if most > 0 {
		wanted = fmt.Sprintf(" (at most %g wanted)", most)
	}
	t.Logf("%s: %.3f s and %.3f s, %.2f times%s", what, a.Seconds(), b.Seconds(), a.Seconds()/b.Seconds(), wanted)
}

func timedOnce(do func()) time.Duration {
	began := time.Now()
	do()
	return time.Since(began)
}

func mustRun(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	cmd := exec.Command(name, args...)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s %s: %v\n%s", filepath.Base(name), strings.Join(args, " "), err, errs.String())
	}
	return out.Bytes()
}

func mustRead(t *testing.T, path string) []byte {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text
}
