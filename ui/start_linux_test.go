package ui

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"syscall"
	"testing"
	"time"
	"unsafe"
)

// silentTerminal is a terminal of 80 by 24 that never says anything: what the
// program writes can be read from near, far is for the program.
func silentTerminal(t *testing.T) (near, far *os.File) {
	t.Helper()
	near, err := os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skip("no terminals to be had:", err)
	}
	t.Cleanup(func() { near.Close() })
	var number, unlock uint32
	ask(t, near, syscall.TIOCSPTLCK, unsafe.Pointer(&unlock))
	ask(t, near, syscall.TIOCGPTN, unsafe.Pointer(&number))
	size := [4]uint16{24, 80}
	ask(t, near, syscall.TIOCSWINSZ, unsafe.Pointer(&size))
	far, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skip("no terminals to be had:", err)
	}
	t.Cleanup(func() { far.Close() })
	return near, far
}

func ask(t *testing.T, f *os.File, request uintptr, into unsafe.Pointer) {
	t.Helper()
	raw, err := f.SyscallConn()
	if err != nil {
		t.Fatal(err)
	}
	if err := raw.Control(func(fd uintptr) {
		if _, _, e := syscall.Syscall(syscall.SYS_IOCTL, fd, request, uintptr(into)); e != 0 {
			t.Error(e)
		}
	}); err != nil {
		t.Fatal(err)
	}
}

// TestFirstFrameOnASilentTerminal starts the program on a terminal that answers
// no question about its colours or its cursor: the first screen is there at
// once all the same.
func TestFirstFrameOnASilentTerminal(t *testing.T) {
	if raceDetector || testing.Short() {
		t.Skip("not timed")
	}
	fastest := time.Hour
	for range 3 { // a busy machine may be slow once
		fastest = min(fastest, firstFrame(t))
	}
	t.Logf("first frame after %s", fastest)
	if fastest > mostStart {
		t.Errorf("first frame after %s, at most %s", fastest, mostStart)
	}
}

// firstFrame is how long the program takes to its first screen; q leaves it.
func firstFrame(t *testing.T) time.Duration {
	t.Helper()
	near, far := silentTerminal(t)
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childVariable+"="+emptyBook(t), "TERM=xterm-256color")
	cmd.Stdin, cmd.Stdout, cmd.Stderr = far, far, far
	cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	start := time.Now()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	defer cmd.Process.Kill()
	shown := make(chan time.Duration, 1)
	go func() {
		var all []byte
		part := make([]byte, 4096)
		for {
			n, err := near.Read(part)
			all = append(all, part[:n]...)
			if bytes.Contains(all, []byte("How do you want to begin?")) {
				shown <- time.Since(start)
				return
			}
			if err != nil {
				return
			}
		}
	}()
	select {
	case d := <-shown:
		go func() { // the rest, so that the program is not held up
			part := make([]byte, 4096)
			for {
				if _, err := near.Read(part); err != nil {
					return
				}
			}
		}()
		if _, err := near.WriteString("q"); err != nil {
			t.Fatal(err)
		}
		left := make(chan error, 1)
		go func() { left <- cmd.Wait() }()
		select {
		case err := <-left:
			if err != nil {
				t.Error(err)
			}
		case <-time.After(10 * time.Second):
			t.Error("q does not leave")
		}
		return d
	case <-time.After(10 * time.Second):
		t.Fatal("no screen within ten seconds")
		return 0
	}
}
