package figure

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the goldens anew")

var modes = map[Mode]string{Braille: "braille", ASCII: "ascii"}

func TestGoldens(t *testing.T) {
	for name, s := range samples {
		t.Run(name, func(t *testing.T) {
			var got strings.Builder
			for _, size := range [][2]int{{34, 12}, {60, 20}} {
				for _, mode := range []Mode{Braille, ASCII} {
					fmt.Fprintf(&got, "%d by %d, %s\n", size[0], size[1], modes[mode])
					write(&got, s.Draw(size[0], size[1], mode))
				}
			}
			golden(t, name, got.String())
		})
	}
}

func TestGoldenIntervals(t *testing.T) {
	var got strings.Builder
	for _, mode := range []Mode{Braille, ASCII} {
		for _, w := range []int{24, 50} {
			fmt.Fprintf(&got, "%d wide, %s\n", w, modes[mode])
			for _, i := range []Interval{{0.0361, 0.0833, 0.1807}, {0.7207, 0.75, 0.7772}, {0, 0, 0.1611}, {0.7225, 1, 1}} {
				write(&got, i.Draw(w, mode))
			}
			write(&got, Percents(w))
		}
	}
	golden(t, "interval", got.String())
}

// write puts a figure's lines between bars, so that their ends are seen.
func write(b *strings.Builder, f Figure) {
	for _, line := range f.Lines() {
		fmt.Fprintf(b, "|%s|\n", line)
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name+".txt")
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s has changed; look at it, then write it with -update. Now:\n%s", path, got)
	}
}
