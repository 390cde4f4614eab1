package main_test

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// testLookOn has one program look on at the book that another writes to. It sees
// every answer within two seconds and changes nothing, whichever of the two is cut
// off.
func testLookOn(t *testing.T) {
	w := newWorld(t, "2027-05-04 10:00")
	w.knows("RK", false)
	temp := w.in("temp")
	if err := os.Mkdir(temp, 0o700); err != nil {
		t.Fatal(err)
	}
	w.env = append(w.env, "TMPDIR="+temp)
	w.plant(1, 3, func(p *planting) { p.cutBack(1, 1, "2027-04-26 10:00") })
	writer := w.dial(true, binary)
	writer.comes(0, blockName)
	before := w.files()
	looker := w.dial(true, binary, "--look")
	looker.comes(0, "looking on:")
	looker.comes(0, "nothing is written")

	looker.write("\r")
	looker.comes(0, here+` +bleeding`)
	mark := looker.mark()
	looker.write("1")
	looker.comes(mark, "nothing is written here")
	looker.write("*") // the theme is kept of a user elsewhere
	looker.comes(mark, "Theme")
	if after := w.files(); after != before {
		t.Errorf("looking on changed\n%sto\n%s", before, after)
	}

	mark = writer.mark()
	writer.write("\r")
	writer.comes(mark, here+` +bleeding`)
	mark = looker.mark()
	writer.write("1")
	pressed := time.Now()
	looker.comes(mark, here+` +slip`)
	if late := time.Since(pressed); late > 2*time.Second && os.Getenv("BARKSLIP_RACE") != "1" {
		t.Errorf("an answer is seen after %v", late)
	}

	writer.kill()
	mark = looker.mark()
	looker.write("\x1b")
	looker.comes(mark, "looking on:")
	before = w.files()
	again := w.dial(true, binary) // a look keeps nobody out
	again.comes(0, blockName)
	looker.kill()
	time.Sleep(100 * time.Millisecond)
	again.write("q")
	if code := again.gone(); code != 0 {
		t.Errorf("exit code %d", code)
	}
	if after := w.files(); after != before {
		t.Errorf("a look that was cut off left\n%swhere there was\n%s", after, before)
	}
	if left, _ := os.ReadDir(temp); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	w.sound()
}

// files is what stands in the folders of the book and of what is remembered of the
// user: name, time and sum of each.
func (w *world) files() string {
	w.t.Helper()
	var out strings.Builder
	for _, dir := range []string{filepath.Dir(w.book()), w.in("config/barkslip")} {
		names, err := os.ReadDir(dir)
		if err != nil {
			w.t.Fatal(err)
		}
		for _, n := range names {
			text, err := os.ReadFile(filepath.Join(dir, n.Name()))
			info, err2 := n.Info()
			if err != nil || err2 != nil {
				w.t.Fatal(err, err2)
			}
			fmt.Fprintf(&out, "%s %d %x\n", n.Name(), info.ModTime().UnixNano(), sha256.Sum256(text))
		}
	}
	return out.String()
}
