package main_test

import (
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// screens is the program in a terminal of its own, which keeps what it shows.
type screens struct {
	w       *world
	socket  string
	log     string               // all that was sent to the terminal
	presses int                  // keys pressed so far
	key     string               // the last of them
	last    map[string]time.Time // when each key was pressed, or seen to have done its work
}

const terminalSettings = `set -g status off
set -g remain-on-exit on
set -s escape-time 0
set -g default-terminal xterm-256color
`

// open starts the screens in a window of so many columns and lines.
func (w *world) open(width, height int, args ...string) *screens {
	w.t.Helper()
	x := &screens{w: w, last: map[string]time.Time{}, log: w.in("terminal.log")}
	x.socket = fmt.Sprint("s", time.Now().UnixNano())
	if err := os.WriteFile(w.in("terminal.conf"), []byte(terminalSettings), 0o600); err != nil {
		w.t.Fatal(err)
	}
	words := append([]string{"exec", quoted(binary)}, args...)
	x.tell("-f", w.in("terminal.conf"), "new-session", "-d", "-s", "x", "-x", strconv.Itoa(width), "-y", strconv.Itoa(height), strings.Join(words, " "),
		";", "pipe-pane", "-O", "-t", "x", "exec cat > "+quoted(x.log))
	w.t.Cleanup(func() { _ = x.command("kill-server").Run() })
	return x
}

func quoted(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

func (x *screens) command(args ...string) *exec.Cmd {
	c := exec.Command("tmux", append([]string{"-u", "-L", x.socket}, args...)...)
	c.Env = append(append([]string{}, x.w.env...), "TMUX_TMPDIR="+x.w.dir)
	return c
}

func (x *screens) tell(args ...string) string {
	x.w.t.Helper()
	out, err := x.command(args...).CombinedOutput()
	if err != nil {
		x.w.t.Fatalf("tmux %s: %v\n%s", strings.Join(args, " "), err, out)
	}
	return string(out)
}

// unhurried is how long a person takes before giving the same answer again; a
// key that comes sooner is taken for one held down.
const unhurried = 800 * time.Millisecond

// press presses keys one after another: a letter or digit, or the name of a
// key such as Enter. Digits and Enter are answers.
func (x *screens) press(keys ...string) {
	x.w.t.Helper()
	for _, key := range keys {
		if wait := unhurried - time.Since(x.last[key]); wait > 0 && (key == "Enter" || key[0] >= '0' && key[0] <= '9') {
			time.Sleep(wait)
		}
		if wait := apart - time.Since(x.last[x.key]); wait > 0 && digit(key) && digit(x.key) {
			time.Sleep(wait) // quicker is a number, of which one digit answers
		}
		if len(key) == 1 {
			x.tell("send-keys", "-t", "x", "-l", "--", key)
		} else {
			x.tell("send-keys", "-t", "x", key)
		}
		x.key, x.last[key] = key, time.Now()
		x.presses++
	}
}

// types types a text letter by letter.
func (x *screens) types(text string) {
	x.w.t.Helper()
	for _, c := range text {
		x.tell("send-keys", "-t", "x", "-l", "--", string(c))
		x.presses++
	}
}

// screen is what stands on the terminal, a line a row.
func (x *screens) screen() string {
	x.w.t.Helper()
	return x.tell("capture-pane", "-p", "-t", "x")
}

// sees waits until the screen matches a pattern.
func (x *screens) sees(pattern string) {
	x.w.t.Helper()
	re, shown := regexp.MustCompile(pattern), ""
	if !until(func() bool { shown = x.screen(); return re.MatchString(shown) || re.MatchString(flat(shown)) }) {
		x.w.t.Fatalf("the screen never showed %q:\n%s", pattern, shown)
	}
	x.last[x.key] = time.Now()
}

// lacks waits until the screen no longer matches a pattern.
func (x *screens) lacks(pattern string) {
	x.w.t.Helper()
	re, shown := regexp.MustCompile(pattern), ""
	if !until(func() bool { shown = x.screen(); return !re.MatchString(shown) }) {
		x.w.t.Fatalf("the screen goes on showing %q:\n%s", pattern, shown)
	}
}

// here is the mark of the present step on the stem, before its name in capitals.
const here = `(?i)██`

// asks waits until the step of a name is the one in hand.
func (x *screens) asks(step string) {
	x.w.t.Helper()
	x.sees(here + ` +` + regexp.QuoteMeta(step) + `\b`)
}

// answers presses keys and waits for the step that follows.
func (x *screens) answers(key, next string) {
	x.w.t.Helper()
	x.press(key)
	x.asks(next)
}

// at moves the clock and waits until the screens have seen it.
func (x *screens) at(now string) {
	x.w.t.Helper()
	x.w.clock(now)
	x.sees(on(now).Format("(?m)15:04 *$")) // a narrow window has no room for the day
}

// goes finds a stump by its place from the block or another stump.
func (x *screens) goes(place string) {
	x.w.t.Helper()
	x.press("/")
	x.sees("row/tree:")
	x.types(place)
	x.sees(regexp.QuoteMeta("> " + place))
	x.press("Enter")
	row, tree, _ := strings.Cut(place, "/")
	x.sees("row " + row + " tree " + tree + `\b`)
}

func (x *screens) resize(width, height int) {
	x.w.t.Helper()
	x.tell("resize-window", "-t", "x", "-x", strconv.Itoa(width), "-y", strconv.Itoa(height))
}

// kill cuts the program off at once, as a flat battery does.
func (x *screens) kill() {
	x.w.t.Helper()
	pid, err := strconv.Atoi(strings.TrimSpace(x.tell("display-message", "-p", "-t", "x", "#{pane_pid}")))
	if err != nil {
		x.w.t.Fatal(err)
	}
	program, err := os.FindProcess(pid)
	if err != nil {
		x.w.t.Fatal(err)
	}
	if err := program.Kill(); err != nil {
		x.w.t.Fatal(err)
	}
	x.ended()
}

// ended waits until the program is gone.
func (x *screens) ended() {
	x.w.t.Helper()
	if !until(func() bool {
		return strings.TrimSpace(x.tell("display-message", "-p", "-t", "x", "#{pane_dead}")) == "1"
	}) {
		x.w.t.Fatalf("the program goes on:\n%s", x.screen())
	}
}

// bells is how often the bell has rung.
func (x *screens) bells() int {
	x.w.t.Helper()
	raw, err := os.ReadFile(x.log)
	if err != nil {
		x.w.t.Fatal(err)
	}
	return strings.Count(text(string(raw)), "\a")
}

// apart is how far apart two digits are pressed that answer two questions.
const apart = 350 * time.Millisecond

func digit(key string) bool { return len(key) == 1 && key[0] >= '0' && key[0] <= '9' }
