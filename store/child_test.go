package store

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"testing"
	"time"

	"barkslip/core/record"
)

// Some tests need another process: the test program started again, which does
// what these variables say and ends.
const (
	childDoes = "STORE_TEST_CHILD"
	childBook = "STORE_TEST_BOOK"
	childMany = "STORE_TEST_MANY"
)

func TestMain(m *testing.M) {
	if does := os.Getenv(childDoes); does != "" {
		os.Exit(child(does))
	}
	os.Exit(m.Run())
}

// child is what the other process does. It prints each answer's id once it was
// told that the answer is kept.
func child(does string) int {
	path := os.Getenv(childBook)
	b, err := OpenOrCreate(path, Options{Zones: time.LoadLocation, ReadOnly: does == "read"})
	if err != nil {
		fmt.Println("error", err)
		return 3
	}
	switch does {
	case "hold":
		fmt.Println("held")
		_, _ = io.Copy(io.Discard, os.Stdin) // until the test lets go
	case "read":
		fmt.Println("read")
	case "write":
		many, _ := strconv.Atoi(os.Getenv(childMany))
		for i := range many {
			out, err := b.Append(on(stumpAt(1, uint16(i%7+1), uint16(i%11+1)), day.Add(time.Duration(i)*time.Second), &record.Noted{Text: fmt.Sprint("note ", i)}))
			if err != nil {
				fmt.Println("error", err)
				_ = b.Close()
				return 4
			}
			fmt.Println(out.Events[0].ID)
		}
	}
	if err := b.Close(); err != nil {
		fmt.Println("error", err)
		return 5
	}
	return 0
}

// childProcess is the test program set to do something with a book.
func childProcess(t testing.TB, does, book string, many int) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), childDoes+"="+does, childBook+"="+book, childMany+"="+strconv.Itoa(many))
	cmd.Stderr = os.Stderr
	return cmd
}

// holdElsewhere has another process hold a book until the test is over.
func holdElsewhere(t *testing.T, book string) {
	t.Helper()
	cmd := childProcess(t, "hold", book, 0)
	in, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = in.Close()
		if err := cmd.Wait(); err != nil {
			t.Error("the other process:", err)
		}
	})
	said, err := bufio.NewReader(out).ReadString('\n')
	if err != nil || said != "held\n" {
		t.Fatalf("the other process said %q, %v", said, err)
	}
}
