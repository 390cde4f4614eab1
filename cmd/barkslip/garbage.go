package main

import (
	"os"
	"runtime"
	"runtime/debug"
)

// firstGarbage is at how many times 4 MB garbage is collected first.
const firstGarbage = 10

// collectLater has garbage collected first at 40 MB in use instead of 4, and as usual from
// then on: the first frame and most commands are done before that. Whoever sets GOGC has
// it from the start.
func collectLater() {
	if os.Getenv("GOGC") != "" {
		return
	}
	usual := debug.SetGCPercent(100 * firstGarbage)
	runtime.AddCleanup(new([64]byte), func(usual int) { debug.SetGCPercent(usual) }, usual)
}
