package store

import (
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"barkslip/core/practice"
)

// learnt answers some cases of a skill.
func learnt(of *practice.Learner, s practice.Skill, from, n int) {
	for i := range n {
		c := practice.Make(uint64(from+i), s)
		of.Take(c, c.Best(), time.Date(2027, 5, 1, 9, from+i, 0, 0, time.UTC))
	}
}

func kept(t *testing.T, l Learners, initials string) (cases int, said string) {
	t.Helper()
	of, said, err := l.Learner(initials)
	if err != nil {
		t.Fatal(err)
	}
	return len(of.All()), said
}

func TestLearnerIsKept(t *testing.T) {
	l := Learners{Folder: filepath.Join(t.TempDir(), "new")}
	for _, who := range []string{"MK", "RK"} {
		of, _, err := l.Learner(who)
		if err != nil {
			t.Fatal(err)
		}
		learnt(of, practice.Wood, 0, 3+len(who)*2)
		if err := l.Keep(of); err != nil {
			t.Fatal(err)
		}
	}
	if n, said := kept(t, l, "MK"); n != 7 || said != "" {
		t.Errorf("MK: %d cases, %q", n, said)
	}
	if all, said, err := l.All(); len(all) != 2 || len(said) != 0 || err != nil {
		t.Errorf("all: %v, %v, %v", all, said, err)
	}
}

// A file that cannot be read, or is of a later version, is set aside whole and said, time
// and again; nobody else's practice suffers.
func TestLearnerSetAside(t *testing.T) {
	l := Learners{Folder: t.TempDir()}
	of, _, _ := l.Learner("RK")
	learnt(of, practice.Slip, 0, 2)
	if err := l.Keep(of); err != nil {
		t.Fatal(err)
	}
	good, err := of.Write()
	if err != nil {
		t.Fatal(err)
	}
	later := strings.Replace(string(good), `"version": 1`, `"version": 9`, 1)
	if later == string(good) {
		later = strings.Replace(string(good), `"version":1`, `"version":9`, 1)
	}
	if later == string(good) {
		t.Fatalf("no version in %s", good)
	}
	for i, text := range []string{"", "{", string(good[:len(good)/2]), strings.Repeat("[", 100_000), "\x00\xff", later} {
		path := l.path("MK")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, said, err := l.All(); len(said) != 1 || err != nil {
			t.Errorf("%d: all says %v, %v", i, said, err)
		}
		n, said := kept(t, l, "MK")
		aside := path + ".set-aside-" + string(rune('1'+i))
		if n != 0 || !strings.Contains(said, aside) {
			t.Errorf("%d: %d cases, %q", i, n, said)
		}
		if there, err := os.ReadFile(aside); err != nil || string(there) != text {
			t.Errorf("%d: set aside is %q, %v", i, there, err)
		}
		begun, _, _ := l.Learner("MK")
		learnt(begun, practice.Cuts, 0, 1)
		if err := l.Keep(begun); err != nil {
			t.Errorf("%d: %v", i, err)
		}
	}
	if n, said := kept(t, l, "RK"); n != 2 || said != "" {
		t.Errorf("RK: %d cases, %q", n, said)
	}
}

// Two programs that keep the practice of one person lose nothing of each other's.
func TestLearnerKeptByTwo(t *testing.T) {
	l := Learners{Folder: t.TempDir()}
	one, _, _ := l.Learner("MK")
	two, _, _ := l.Learner("MK")
	for i := range 5 {
		learnt(one, practice.Wood, 10*i, 1)
		learnt(two, practice.Slip, 10*i, 1)
		for _, of := range []*practice.Learner{one, two} {
			if err := l.Keep(of); err != nil {
				t.Fatal(err)
			}
		}
	}
	if n, _ := kept(t, l, "MK"); n != 10 {
		t.Errorf("%d of 10 cases are kept", n)
	}
	var all sync.WaitGroup
	for i := range 4 { // whoever reads meanwhile sees one whole file or another
		all.Add(1)
		go func() {
			defer all.Done()
			of, said, err := l.Learner("MK")
			if err != nil || said != "" || len(of.All()) < 10 {
				t.Errorf("reader %d: %v, %q", i, err, said)
			}
		}()
	}
	if err := l.Keep(one); err != nil {
		t.Error(err)
	}
	all.Wait()
	if left, _ := filepath.Glob(filepath.Join(l.Folder, "*.new")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// A folder in which nothing can be made is said, with nothing lost of what is there.
func TestLearnerNowhere(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, []byte("x"), 0o600); err != nil {
		t.Fatal(err)
	}
	l := Learners{Folder: filepath.Join(file, "in")}
	if err := l.Keep(&practice.Learner{Initials: "MK"}); err == nil || !strings.Contains(err.Error(), "the practice of MK cannot be kept") {
		t.Errorf("kept: %v", err)
	}
}
