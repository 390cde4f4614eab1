package main_test

import (
	"bytes"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"sync"
	"time"
)

// wire is the program at the end of a bare line: what is written arrives in one
// piece, and all that comes back is kept as it came.
type wire struct {
	w      *world
	prog   *exec.Cmd
	line   *os.File
	begun  time.Time
	polite bool // answers what a terminal is asked about itself
	ended  chan struct{}

	mu  sync.Mutex
	out []byte
}

// dial starts a program in a terminal that stays silent when it is asked about
// itself, or answers if polite.
func (w *world) dial(polite bool, program string, args ...string) *wire {
	w.t.Helper()
	ours, theirs, err := openPty(80, 24)
	if err != nil {
		w.t.Fatal(err)
	}
	d := &wire{w: w, line: ours, polite: polite, ended: make(chan struct{}), prog: exec.Command(program, args...)}
	d.prog.Env, d.prog.Dir = w.env, w.dir
	d.prog.Stdin, d.prog.Stdout, d.prog.Stderr = theirs, theirs, theirs
	ownTerminal(d.prog)
	d.begun = time.Now()
	if err := d.prog.Start(); err != nil {
		w.t.Fatal(err)
	}
	_ = theirs.Close()
	go d.listen()
	w.t.Cleanup(d.kill)
	return d
}

// listen keeps what comes until the program is gone.
func (d *wire) listen() {
	defer close(d.ended)
	buf := make([]byte, 1<<16)
	for {
		n, err := d.line.Read(buf)
		d.mu.Lock()
		d.out = append(d.out, buf[:n]...)
		d.mu.Unlock()
		if d.polite {
			d.reply(buf[:n])
		}
		if err != nil {
			return
		}
	}
}

// reply tells a black background and where the cursor is.
func (d *wire) reply(asked []byte) {
	for question, answer := range map[string]string{"\x1b]11;?": "\x1b]11;rgb:0000/0000/0000\x1b\\", "\x1b[6n": "\x1b[1;1R", "\x1b[c": "\x1b[?62c"} {
		if bytes.Contains(asked, []byte(question)) {
			d.write(answer)
		}
	}
}

// write sends keys in one piece. A program that is gone hears nothing.
func (d *wire) write(keys string) { _, _ = d.line.WriteString(keys) }

// raw is all that came.
func (d *wire) raw() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return string(d.out)
}

// mark is how much came so far, to look only at what comes after.
func (d *wire) mark() int { return len(d.raw()) }

// comes waits for a pattern in what came after a mark.
func (d *wire) comes(mark int, pattern string) {
	d.w.t.Helper()
	re := regexp.MustCompile(pattern)
	if !until(func() bool { return re.MatchString(text(d.raw()[mark:])) }) {
		d.w.t.Fatalf("%q never came; what came: %s", pattern, d.latest(mark))
	}
}

// latest is the end of what came after a mark, without its spaces.
func (d *wire) latest(mark int) string {
	came := flat(text(d.raw()[mark:]))
	return came[max(0, len(came)-1000):]
}

// first is how long after the start a word first came.
func (d *wire) first(word string) time.Duration {
	d.w.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(500 * time.Microsecond) {
		if strings.Contains(d.raw(), word) {
			return time.Since(d.begun)
		}
	}
	d.w.t.Fatalf("%q never came; what came: %s", word, d.latest(0))
	return 0
}

// kill cuts the program off and takes in what it had still sent.
func (d *wire) kill() {
	if d.prog.ProcessState != nil {
		return
	}
	_ = d.prog.Process.Kill()
	d.gone()
}

// gone waits for the program's end and gives its exit code, -1 if it was cut
// off.
func (d *wire) gone() int {
	_ = d.prog.Wait()
	<-d.ended
	_ = d.line.Close()
	return d.prog.ProcessState.ExitCode()
}
