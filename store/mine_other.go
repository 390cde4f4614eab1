//go:build !unix

package store

import "io/fs"

// mine says whether a file belongs to this user: here files tell no owner.
func mine(fs.FileInfo) bool { return true }
