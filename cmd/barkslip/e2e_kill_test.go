package main_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"regexp"
	"testing"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// testKill cuts the program off at a random moment while answers are given as
// fast as it takes them, again and again on one book. Every answer the screen
// had called taken must be in the book.
func testKill(t *testing.T) {
	rounds := 20
	if os.Getenv("BARKSLIP_E2E") == "1" {
		rounds = 200
	}
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	dice := rand.New(rand.NewPCG(seed, 1))
	w := newWorld(t, "2027-04-26 10:00")
	w.knows("RK", false)
	const trees = 20
	w.plant((rounds+trees-1)/trees, trees, nil)
	shown := map[string][]string{} // what was called taken, by stump
	total, cut := 0, 0
	for round := range rounds {
		place := fmt.Sprintf("%d/%d", round/trees+1, round%trees+1)
		taken, whole := killOnce(w, place, time.Duration(5+dice.IntN(250))*time.Millisecond)
		shown[place] = taken
		total += len(taken)
		if !whole {
			cut++
		}
		w.sound()
		keeps(w, shown)
		if t.Failed() {
			t.Fatalf("round %d", round)
		}
	}
	t.Logf("killed %d times, %d of them between answers; %d answers shown as taken, all kept", rounds, cut, total)
	if cut < rounds/4 || total < rounds {
		t.Errorf("the kills came at the wrong time to show anything")
	}
}

var takenLine = regexp.MustCompile(`Recorded: ([^\r\n]*?), 10:00\.`)

// killOnce gives answers on one stump until the program is killed after a
// while. It gives what was shown as taken, and whether all were given in time.
func killOnce(w *world, place string, after time.Duration) (taken []string, whole bool) {
	w.t.Helper()
	d := w.dial(true, binary)
	d.comes(0, blockName)
	mark := d.mark()
	d.write("/" + place + "\r")
	d.comes(mark, here+` +nurse limbs`)
	mark = d.mark()
	dead := make(chan struct{})
	time.AfterFunc(after, func() { _ = d.prog.Process.Kill(); close(dead) })
	whole = true
	for _, a := range quickAnswers() {
		d.write(a.keys)
		if !follows(d, mark, a.then, dead) {
			whole = false
			break
		}
	}
	<-dead
	d.gone()
	for _, m := range takenLine.FindAllStringSubmatch(text(d.raw()[mark:]), -1) {
		taken = append(taken, m[1])
	}
	return taken, whole
}

// quickAnswer is an answer, and what the screen shows once it was taken.
type quickAnswer struct{ keys, then string }

// quickAnswers are the whole cut-back of a stump and many notes.
func quickAnswers() []quickAnswer {
	out := []quickAnswer{
		{keys: "2", then: here + " +nearest limb"}, {keys: "24\r", then: here + " +leaf below"}, {keys: "3", then: here + " +height"},
		{keys: "42\r", then: "Recorded: cut back 42 in"}, {keys: "2", then: "Recorded: 2 gashes"},
	}
	for n := range 60 {
		out = append(out, quickAnswer{keys: fmt.Sprintf("nnote %d\r", n), then: fmt.Sprintf("Recorded: note: note %d,", n)})
	}
	return out
}

// follows waits until what follows an answer is shown, or the program is dead.
func follows(d *wire, mark int, then string, dead <-chan struct{}) bool {
	re := regexp.MustCompile(then)
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(200 * time.Microsecond) {
		select {
		case <-dead:
			return false
		default:
		}
		if re.MatchString(text(d.raw()[mark:])) {
			return true
		}
	}
	d.w.t.Errorf("%q never followed; what came: %s", then, d.latest(mark))
	return false
}

// keeps says whether all that was shown as taken stands in the journal.
func keeps(w *world, shown map[string][]string) {
	w.t.Helper()
	kept := map[string]map[string]bool{}
	for _, e := range w.journal() {
		if e.Stump == record.NoStump {
			continue
		}
		place := e.Stump.Place()
		if kept[place] == nil {
			kept[place] = map[string]bool{}
		}
		kept[place][record.Say(e.Body, unit.US)] = true
	}
	for place, answers := range shown {
		for _, a := range answers {
			if !kept[place][a] {
				w.t.Errorf("%s: %q was shown as taken, and is not in the book", place, a)
			}
		}
	}
}
