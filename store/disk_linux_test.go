package store

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"barkslip/core/record"
)

// smallDisk mounts a disk of so many bytes, where this user may.
func smallDisk(t *testing.T, size string) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("small", dir, "tmpfs", 0, "size="+size); err != nil {
		t.Skip("this user may not mount a disk: ", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, syscall.MNT_DETACH); err != nil {
			t.Error(err)
		}
	})
	return dir
}

func TestFullDisk(t *testing.T) {
	dir := smallDisk(t, "256k")
	b, err := Create(filepath.Join(dir, "book"), options(1))
	if err != nil {
		t.Fatal(err)
	}
	kept := 0
	for ; kept < 10_000; kept++ {
		_, err = b.Append(on(stumpAt(1, 1, uint16(kept%50+1)), day, &record.Noted{Text: strings.Repeat("long ", 100)}))
		if err != nil {
			break
		}
	}
	wantProblem(t, "a full disk", err, ErrFull)
	if !strings.Contains(err.Error(), "not kept") || !strings.Contains(err.Error(), "full") {
		t.Error("said:", err)
	}
	if n, _ := b.Count(); n != kept {
		t.Errorf("%d events of %d", n, kept)
	}
	checkSound(t, b)
	if err := CopyFile(b.Path(), filepath.Join(dir, "copy"), options(1)); err == nil {
		t.Error("a copy fitted on the full disk")
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) > 0 {
		t.Error("left behind:", left)
	}
	_, err = Create(filepath.Join(dir, "second"), options(1))
	wantProblem(t, "creating on a full disk", err, ErrFull)

	// With room again the same book goes on.
	if err := syscall.Mount("small", dir, "tmpfs", syscall.MS_REMOUNT, "size=4m"); err != nil {
		t.Fatal(err)
	}
	mustAppend(t, b, on(stumpAt(1, 1, 1), day, &record.Noted{Text: "room again"}))
	if n, _ := b.Count(); n != kept+1 {
		t.Errorf("%d events of %d", n, kept+1)
	}
	checkAndClose(t, b)
}

func TestReadOnlyDisk(t *testing.T) {
	dir := smallDisk(t, "1m")
	path := filepath.Join(dir, "book")
	b, err := Create(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	mustAppend(t, b, life(stumpAt(1, 1, 1), 3)...)
	checkAndClose(t, b)
	if err := syscall.Mount("small", dir, "tmpfs", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""); err != nil {
		t.Skip("this user may not mount a disk for reading only: ", err)
	}
	_, err = Open(path, options(1))
	wantProblem(t, "opening", err, ErrReadOnly)
	_, err = Create(filepath.Join(dir, "other"), options(1))
	wantProblem(t, "creating", err, ErrReadOnly)
	o := options(1)
	o.ReadOnly = true
	b, err = Open(path, o)
	if err != nil {
		t.Fatal(err)
	}
	if n, _ := b.Count(); n != 3 {
		t.Errorf("%d events", n)
	}
	checkAndClose(t, b)
}

func TestOpeningWhatIsNoFile(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{pipe, os.DevNull} {
		_, err := Open(path, options(1))
		wantProblem(t, path, err, ErrNotABook)
	}
}

// Without permission a book is refused in plain words. The other process runs
// as nobody, since the owner of the machine may read everything.
func TestNoPermission(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root can become nobody")
	}
	dir, err := os.MkdirTemp("", "store-test-*") // the folders of t.TempDir are closed to others
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "book")
	b, err := Create(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	checkAndClose(t, b)
	self, err := os.ReadFile("/proc/self/exe")
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, "self"), self, 0o755)
	}
	if err == nil {
		err = os.Chmod(dir, 0o755)
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		mode       os.FileMode
		does, want string
	}{
		{0o600, "write", "may not be read"}, {0o600, "read", "may not be read"},
		{0o644, "write", "no permission"}, {0o644, "read", "read"},
	} {
		if err := os.Chmod(path, c.mode); err != nil {
			t.Fatal(err)
		}
		cmd := childProcess(t, c.does, path, 1)
		cmd.Path, cmd.Dir = filepath.Join(dir, "self"), dir
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
		said, _ := cmd.Output()
		if !strings.Contains(string(said), c.want) || bytes.Count(said, []byte("\n")) != 1 {
			t.Errorf("%s with mode %o: said %q", c.does, c.mode, said)
		}
	}
}

func tracer(t *testing.T) string {
	t.Helper()
	path, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("strace is not installed")
	}
	return path
}

// Killing a writer does not show a missing sync, since what it wrote lives on
// in the system's memory: so the syncs are counted. Each answer is synced
// twice, its pages and then the first page, before it is acknowledged.
func TestEachAnswerIsSynced(t *testing.T) {
	strace := tracer(t)
	const answers = 25
	path, _ := filledFile(t, 1)
	trace := filepath.Join(t.TempDir(), "trace")
	cmd := childProcess(t, "write", path, answers)
	cmd.Args = append([]string{strace, "-f", "-e", "trace=fdatasync,write", "-o", trace}, cmd.Path)
	cmd.Path = strace
	if out, err := cmd.Output(); err != nil {
		t.Fatal(err, string(out))
	}
	text, err := os.ReadFile(trace)
	if err != nil {
		t.Fatal(err)
	}
	synced, acknowledged := 0, 0
	for line := range strings.Lines(string(text)) {
		switch {
		case strings.Contains(line, "fdatasync") && strings.HasSuffix(strings.TrimSpace(line), "= 0"):
			synced++
		case strings.Contains(line, "write(1, "):
			acknowledged++
			if synced < 2 {
				t.Errorf("answer %d was acknowledged after %d syncs", acknowledged, synced)
			}
			synced = 0
		}
	}
	if acknowledged != answers {
		t.Errorf("%d of %d answers seen", acknowledged, answers)
	}
}

// A disk that fails while syncing never leaves an acknowledged answer out, nor
// a broken book; the message says that the answer was not kept, or that it is
// not sure.
func TestFailingSync(t *testing.T) {
	strace := tracer(t)
	said := map[string]int{}
	for _, when := range []string{"2", "3", "4", "5"} {
		path, _ := filledFile(t, 1)
		cmd := childProcess(t, "write", path, 40)
		cmd.Args = append([]string{strace, "-f", "-o", os.DevNull, "-e", "trace=fdatasync", "-e", "inject=fdatasync:error=EIO:when=" + when}, cmd.Path)
		cmd.Path = strace
		out, _ := cmd.Output()
		kept := map[record.ID]bool{}
		for line := range strings.Lines(string(out)) {
			line = strings.TrimSpace(line)
			if id, err := record.ParseID(line); err == nil {
				kept[id] = true
				continue
			}
			switch {
			case strings.Contains(line, "not kept"):
				said["not kept"]++
			case strings.Contains(line, "not sure"):
				said["not sure"]++
			default:
				t.Errorf("said %q", line)
			}
		}
		allThere(t, path, kept)
	}
	if said["not kept"] == 0 || said["not sure"] == 0 {
		t.Errorf("only %v was said", said)
	}
}
