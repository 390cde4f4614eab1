package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/nats-io/nats-server/v2/server"
	"github.com/rogpeppe/go-internal/testscript"

	"barkslip/store"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"barkslip": main})
}

// TestScripts runs every script of testdata/script; adding a case is adding a
// file. Besides the usual commands of such scripts there are
//
//	exits CODE COMMAND…   the command ends with the code
//	bad COMMAND…          it refuses its input: exit 2, one line on standard
//	                      error, and with --json an error object
//	field PATH [WANT [WITHIN]]   a field of the JSON object on standard output,
//	                      as slots.0.bearing_deg; slots.len a length; without
//	                      WANT the field must only be there
//	fields NAME…          the object has these fields and no others
//	list FILE N           writes a list of N stumps
//	spoil FILE TEXT       changes a byte of a file where it holds the text
//	cut FILE N            cuts a file short by N bytes
//	zero FILE PAGE        clears a page of 4096 bytes of a file
//	hold FILE             keeps a book open in another process to the end
//	journals NAME         starts a server that keeps crews' journals; its address
//	                      stands in the environment under the name
func TestScripts(t *testing.T) {
	lists, err := filepath.Abs("../../testdata/lists")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/script",
		Setup: func(env *testscript.Env) error {
			env.Setenv("XDG_DATA_HOME", filepath.Join(env.WorkDir, "data"))
			env.Setenv("XDG_CONFIG_HOME", filepath.Join(env.WorkDir, "config"))
			env.Setenv("TZ", "America/Los_Angeles")
			env.Setenv("LISTS", lists)
			return nil
		},
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"exits": exits, "bad": bad, "field": field, "fields": fields, "list": writeList, "spoil": spoil, "cut": cut, "zero": zeroPage, "hold": hold, "journals": journals,
		},
	})
}

func exitCode(ts *testscript.TestScript, args []string) int {
	err := ts.Exec(args[0], args[1:]...)
	var exit *exec.ExitError
	switch {
	case err == nil:
		return 0
	case errors.As(err, &exit):
		return exit.ExitCode()
	}
	ts.Fatalf("%v", err)
	return -1
}

func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND…")
	}
	if got := exitCode(ts, args[1:]); strconv.Itoa(got) != args[0] {
		ts.Fatalf("exit code %d, want %s; standard error:\n%s", got, args[0], ts.ReadFile("stderr"))
	}
	noTrace(ts)
}

// noTrace refuses what no user should see, whatever happened.
func noTrace(ts *testscript.TestScript) {
	for _, stream := range []string{"stdout", "stderr"} {
		for _, word := range []string{"goroutine ", "panic:", "a fault in the program"} {
			if strings.Contains(ts.ReadFile(stream), word) {
				ts.Fatalf("%s holds %q", stream, word)
			}
		}
	}
}

func bad(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: bad COMMAND…")
	}
	exits(ts, false, append([]string{"2"}, args...))
	if line := ts.ReadFile("stderr"); strings.Count(line, "\n") != 1 || !strings.HasSuffix(line, "\n") || !strings.Contains(line, "accepted: ") {
		ts.Fatalf("standard error is not one line that says what is accepted:\n%s", line)
	}
	if !wantsJSON(args) {
		if ts.ReadFile("stdout") != "" {
			ts.Fatalf("something on standard output")
		}
		return
	}
	for _, name := range []string{"error.option", "error.given", "error.accepted"} {
		if _, err := lookUp(ts.ReadFile("stdout"), name); err != nil {
			ts.Fatalf("%v", err)
		}
	}
}

// lookUp finds a field of the one JSON object in text.
func lookUp(text, path string) (any, error) {
	var object map[string]any
	dec := json.NewDecoder(strings.NewReader(text))
	if err := dec.Decode(&object); err != nil {
		return nil, fmt.Errorf("standard output is no JSON object: %v", err)
	}
	if dec.More() {
		return nil, errors.New("more than one value on standard output")
	}
	var at any = object
	for _, name := range strings.Split(path, ".") {
		switch v := at.(type) {
		case map[string]any:
			next, ok := v[name]
			if !ok {
				return nil, fmt.Errorf("no field %s (at %s)", path, name)
			}
			at = next
		case []any:
			if name == "len" {
				at = float64(len(v))
				continue
			}
			i, err := strconv.Atoi(name)
			if err != nil || i < 0 || i >= len(v) {
				return nil, fmt.Errorf("no element %s in %s", name, path)
			}
			at = v[i]
		default:
			return nil, fmt.Errorf("no field %s: %v is no object", path, v)
		}
	}
	return at, nil
}

func field(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) < 1 || len(args) > 3 {
		ts.Fatalf("usage: field PATH [WANT [WITHIN]]")
	}
	got, err := lookUp(ts.ReadFile("stdout"), args[0])
	if err != nil {
		ts.Fatalf("%v", err)
	}
	if len(args) > 1 && matches(got, args[1:]) == neg {
		ts.Fatalf("%s is %v, want %v", args[0], shown(got), args[1:])
	}
}

func shown(v any) string {
	if v == nil {
		return "null"
	}
	if n, ok := v.(float64); ok {
		return strconv.FormatFloat(n, 'f', -1, 64)
	}
	return fmt.Sprint(v)
}

func matches(got any, want []string) bool {
	if n, ok := got.(float64); ok && len(want) == 2 {
		w, err1 := strconv.ParseFloat(want[0], 64)
		within, err2 := strconv.ParseFloat(want[1], 64)
		return err1 == nil && err2 == nil && math.Abs(n-w) <= within
	}
	return len(want) == 1 && shown(got) == want[0]
}

func fields(ts *testscript.TestScript, neg bool, args []string) {
	var object map[string]any
	if err := json.Unmarshal([]byte(ts.ReadFile("stdout")), &object); err != nil {
		ts.Fatalf("standard output is no JSON object: %v", err)
	}
	for _, name := range args {
		if _, ok := object[name]; !ok {
			ts.Fatalf("no field %s", name)
		}
		delete(object, name)
	}
	for name := range object {
		ts.Fatalf("a field %s besides", name)
	}
}

func writeList(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: list FILE N")
	}
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	var b strings.Builder
	b.WriteString("row,tree,across,variety\n")
	for i := range n {
		fmt.Fprintf(&b, "%d,%d,3 1/2,Lantern\n", i/100+1, i%100+1)
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(b.String()), 0o644))
}

func spoil(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: spoil FILE TEXT")
	}
	data, err := os.ReadFile(ts.MkAbs(args[0]))
	ts.Check(err)
	at := bytes.LastIndex(data, []byte(args[1]))
	if at < 0 {
		ts.Fatalf("%s does not hold %q", args[0], args[1])
	}
	data[at] ^= 0x20
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), data, 0o600))
}

func cut(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: cut FILE N")
	}
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	info, err := os.Stat(ts.MkAbs(args[0]))
	ts.Check(err)
	ts.Check(os.Truncate(ts.MkAbs(args[0]), info.Size()-int64(n)))
}

func zeroPage(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: zero FILE PAGE")
	}
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	f, err := os.OpenFile(ts.MkAbs(args[0]), os.O_RDWR, 0)
	ts.Check(err)
	defer f.Close()
	_, err = f.WriteAt(make([]byte, 4096), int64(n)*4096)
	ts.Check(err)
}

func journals(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: journals NAME")
	}
	s, err := server.NewServer(&server.Options{ServerName: "truck", Host: "127.0.0.1", Port: -1, JetStream: true, StoreDir: ts.MkAbs("server-" + args[0]), NoLog: true, NoSigs: true})
	ts.Check(err)
	s.Start()
	ts.Defer(func() { s.Shutdown(); s.WaitForShutdown() })
	if !s.ReadyForConnections(10 * time.Second) {
		ts.Fatalf("the server does not start")
	}
	ts.Setenv(args[0], s.ClientURL())
}

func hold(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: hold FILE")
	}
	book, err := store.Open(ts.MkAbs(args[0]), store.Options{})
	ts.Check(err)
	ts.Defer(func() { _ = book.Close() })
}
