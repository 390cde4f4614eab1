package main_test

import (
	"fmt"
	"os"
	"os/exec"
	"syscall"

	"golang.org/x/sys/unix"
)

const havePty = true

// openPty makes a pseudo terminal: our end, and the program's.
func openPty(width, height int) (ours, theirs *os.File, err error) {
	ours, err = os.OpenFile("/dev/ptmx", os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		return nil, nil, err
	}
	fd := int(ours.Fd())
	if err := unix.IoctlSetPointerInt(fd, unix.TIOCSPTLCK, 0); err != nil {
		return nil, nil, err
	}
	number, err := unix.IoctlGetUint32(fd, unix.TIOCGPTN)
	if err != nil {
		return nil, nil, err
	}
	theirs, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		return nil, nil, err
	}
	size := &unix.Winsize{Col: uint16(width), Row: uint16(height)}
	return ours, theirs, unix.IoctlSetWinsize(fd, unix.TIOCSWINSZ, size)
}

// ownTerminal gives a program the terminal on its standard input as its own.
func ownTerminal(c *exec.Cmd) {
	c.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
}
