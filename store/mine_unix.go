//go:build unix

package store

import (
	"io/fs"
	"os"
	"syscall"
)

// mine says whether a file belongs to this user.
func mine(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && int(stat.Uid) == os.Getuid()
}
