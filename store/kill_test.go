package store

import (
	"bufio"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"barkslip/core/record"
)

// A writer killed at any moment leaves every answer it had acknowledged.
func TestKilledWriterLosesNothing(t *testing.T) {
	rounds := 30
	if os.Getenv("BARKSLIP_SLOW") == "1" {
		rounds = 300 // and the terminal's 200
	}
	seed := rand.Uint64()
	t.Log("seed", seed)
	moments := rand.New(rand.NewPCG(seed, 1))
	path := filepath.Join(t.TempDir(), "book")
	b, err := Create(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	checkAndClose(t, b)
	kept, killed := map[record.ID]bool{}, 0
	for range rounds {
		ids, wasKilled := killWriter(t, path, time.Duration(moments.IntN(25_000))*time.Microsecond)
		if wasKilled {
			killed++
		}
		for _, id := range ids {
			kept[id] = true
		}
		allThere(t, path, kept)
	}
	if len(kept) == 0 || killed == 0 {
		t.Errorf("%d answers kept, %d writers killed: nothing was tried", len(kept), killed)
	}
	t.Log(len(kept), "answers acknowledged,", killed, "of", rounds, "writers killed")
}

// killWriter lets a writer write, kills it some time after its first answer,
// and gives the ids of the answers that it said were kept.
func killWriter(t *testing.T, path string, after time.Duration) (ids []record.ID, killed bool) {
	t.Helper()
	cmd := childProcess(t, "write", path, 1_000_000)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	scan := bufio.NewScanner(out)
	for first := true; scan.Scan(); first = false {
		if first {
			time.AfterFunc(after, func() { _ = cmd.Process.Kill() })
		}
		id, err := record.ParseID(scan.Text())
		if err != nil {
			break // cut off in the middle, or an error
		}
		ids = append(ids, id)
	}
	_ = cmd.Wait()
	return ids, cmd.ProcessState.ExitCode() == -1
}

func allThere(t *testing.T, path string, kept map[record.ID]bool) {
	t.Helper()
	b, err := Open(path, options(1))
	if err != nil {
		t.Fatal(err)
	}
	defer checkAndClose(t, b)
	there := map[record.ID]bool{}
	if err := b.Journal(func(e record.Event) error { there[e.ID] = true; return nil }); err != nil {
		t.Fatal(err)
	}
	for id := range kept {
		if !there[id] {
			t.Fatalf("the answer %s was acknowledged and is gone", id)
		}
	}
}
