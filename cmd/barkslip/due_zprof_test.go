package main

import (
	"io"
	"os"
	"testing"
)

func BenchmarkDueZ(b *testing.B) {
	for b.Loop() {
		if code := run([]string{"due", os.Getenv("DUEFORM"), "--book", "/tmp/duebench/big.bark"}, io.Discard, os.Stderr); code != 0 {
			b.Fatal(code)
		}
	}
}
