package walk

import (
	"fmt"
	"math/rand/v2"
	"os"
	"runtime/debug"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"barkslip/core/due"
	"barkslip/core/record"
	"barkslip/core/record/recordtest"
)

// strollBlock is a block on which stumps are walked.
type strollBlock struct {
	name string
	*record.Block
}

func strollBlocks() []strollBlock {
	placed := func(b *record.Block, lat float64) *record.Block {
		b.Placed, b.Lat, b.Lon = true, lat, -77.2
		return b
	}
	slipping := func(b *record.Block, from, to record.MonthDay) *record.Block {
		b.SlipFrom, b.SlipTo = from, to
		return b
	}
	waiting := recordtest.Northern()
	waiting.Wait = 14
	return []strollBlock{
		{"north", recordtest.Northern()}, {"north, placed", placed(recordtest.Northern(), 42.7)}, {"south", recordtest.Southern()}, {"south, placed", placed(recordtest.Southern(), -43.5)},
		{"frosty", recordtest.Frosty(recordtest.Northern())}, {"earwigs", recordtest.WithEarwigs(placed(recordtest.Northern(), 38))},
		{"south, frosty, earwigs", recordtest.Frosty(recordtest.WithEarwigs(recordtest.Southern()))},
		{"own slip", slipping(recordtest.Northern(), record.MonthDay{Month: 5, Day: 20}, record.MonthDay{Month: 5, Day: 25})},
		{"slip over a new year", slipping(placed(recordtest.Northern(), 10), record.MonthDay{Month: 12, Day: 20}, record.MonthDay{Month: 1, Day: 10})},
		{"far north", placed(recordtest.Northern(), 70)}, {"waits 14 days", waiting}, {"metric", metric(recordtest.Northern())},
	}
}

const (
	strollsABlock = 45 // stumps walked on each block
	stepsAStroll  = 300
	strollSeasons = 4
)

// TestAlwaysSomethingDue walks stumps at random over four seasons: whatever is
// answered and in whatever order, a stump has work open or to come until it is
// untied or given up for good, the walk asks for what is open, and the rounds
// list it then and only then. BARKSLIP_SLOW walks three times as many;
// BARKSLIP_SEED begins with another stump, "random" with any.
func TestAlwaysSomethingDue(t *testing.T) {
	strolls, seed := strollsABlock, uint64(1)
	if os.Getenv("BARKSLIP_SLOW") != "" {
		strolls = 3 * strolls
	}
	if os.Getenv("BARKSLIP_RACE") != "" { // each step takes ten times as long then
		strolls = 2
	}
	if os.Getenv("BARKSLIP_SEED") == "random" {
		seed = rand.Uint64()
	}
	if n, err := strconv.ParseUint(os.Getenv("BARKSLIP_SEED"), 10, 64); err == nil {
		seed = n
	}
	all := gone{open: map[due.Kind]int{}, asked: map[StepID]int{}}
	t.Run("on", func(t *testing.T) {
		for i, b := range strollBlocks() {
			t.Run(b.name, func(t *testing.T) {
				t.Parallel()
				for j := range strolls {
					stump := seed + uint64(i*strolls+j)
					w := newStroll(stump, b.Block)
					err := w.walkOut()
					all.add(w)
					if err != nil {
						t.Fatalf("stump %d: %v", stump, err)
					}
				}
			})
		}
	})
	t.Logf("%d steps from seed %d", all.steps, seed)
	if t.Failed() || strolls < strollsABlock {
		return
	}
	for _, kind := range due.Kinds() {
		if all.open[kind] == 0 {
			t.Errorf("%s was never open first", kind)
		}
	}
	for _, s := range steps {
		if all.asked[s.ID] == 0 {
			t.Errorf("%s was never asked", s.ID)
		}
	}
}

// gone is what the strolls came by.
type gone struct {
	sync.Mutex
	steps int
	open  map[due.Kind]int // as the first that is open
	asked map[StepID]int
}

func (g *gone) add(w *stroll) {
	g.Lock()
	defer g.Unlock()
	g.steps += w.steps
	for kind, n := range w.open {
		g.open[kind] += n
	}
	for step, n := range w.asked {
		g.asked[step] += n
	}
}

// walkOut walks the stump and checks it at every step.
func (w *stroll) walkOut() (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("panic: %v\n%s", r, debug.Stack())
		}
		if err != nil {
			err = fmt.Errorf("%w, after\n%s", err, w.story(40))
		}
	}()
	until := w.now.AddDate(strollSeasons, 6, 0)
	for ; w.steps < stepsAStroll && w.now.Before(until) && !(w.over() && w.one(8)); w.steps++ {
		w.pass()
		c := w.sees()
		if err := w.check(c); err != nil {
			return err
		}
		if w.one(40) {
			if err := w.settles(); err != nil {
				return err
			}
		}
		w.goOn(c)
	}
	return nil
}

// check is what always holds.
func (w *stroll) check(c *Case) error {
	sum := due.Summarize(w.s, w.b, len(w.l.Events))
	w.dues = sum.Dues
	dues := due.At(w.dues, w.now)
	if len(dues) == 0 && !w.over() {
		return fmt.Errorf("%s, nothing is due or to come", w.s.Stage())
	}
	for _, d := range dues {
		if d.By.Before(d.Opens) || d.Ended(w.now) || !d.Ends.IsZero() && !d.Ends.After(d.Opens) {
			return fmt.Errorf("%s opens %s by %s until %s", d.Kind, d.Opens, d.By, d.Ends)
		}
		if !w.one(4) {
			continue
		}
		if why := d.Sentence(w.b, w.now); why == "" || strings.ContainsAny(why, "{}") {
			return fmt.Errorf("%s says %q", d.Kind, why)
		}
	}
	if err := w.asks(c, dues); err != nil {
		return err
	}
	return w.listed(sum, dues)
}

// mostAnswers is how many answers in a row may leave a due open: a graft against
// advice from its measure to its last scion, with much said twice or refused.
const mostAnswers = 200

// settles checks that the due that is open first is met, or another comes first,
// when what is asked is answered.
func (w *stroll) settles() error {
	first, open := due.First(w.dues, w.now)
	if !open || w.s.Newest.After(w.now) { // what another laptop dated ahead is judged when that time has come
		return nil
	}
	v := *w
	v.l, v.gone, v.care = w.l.Apart("EF"), "", false
	for range mostAnswers {
		v.now = v.now.Add(30 * time.Second)
		v.answer(v.sees(), v.now)
		v.dues = due.Of(v.s, v.b)
		if d, still := due.First(v.dues, v.now); !still || d.Kind != first.Kind || !d.Opens.Equal(first.Opens) {
			return nil
		}
	}
	return fmt.Errorf("%s is still open after %d answers:\n%s", first.Kind, mostAnswers, v.story(40))
}

// over says whether the stump is done with for good.
func (w *stroll) over() bool {
	a := w.s.Now()
	return a.Untied != nil || a.GivenUp != nil && !a.GivenUp.What.Season
}

// asks checks the step that is asked: it meets the first due that is open or
// ends what was begun today, and has a way on.
func (w *stroll) asks(c *Case, dues []due.Due) error {
	step := c.Present()
	first, open := due.First(dues, w.now)
	begun := c.begun()
	if open {
		w.open[first.Kind]++
	}
	switch {
	case stepByID(step) == nil:
		return fmt.Errorf("asked %q", step)
	case open && step != begun && step != c.Meets(first.Kind):
		return fmt.Errorf("%s is open, asked %s", first.Kind, step)
	case open && (step == StepRest || step == StepWait):
		return fmt.Errorf("%s is open since %s, asked %s", first.Kind, first.Opens, step)
	}
	a := c.Ask(step, false)
	if a.Question == "" || a.Because == "" {
		return fmt.Errorf("%s asks %q because %q", step, a.Question, a.Because)
	}
	if open && !leadsOn(a) {
		return fmt.Errorf("%s is open, and %s has no answer to it: %q", first.Kind, step, a.Question)
	}
	if !w.one(8) {
		return nil
	}
	present := 0
	for _, k := range c.Knots() {
		if k.Present {
			present++
		}
	}
	if present != 1 {
		return fmt.Errorf("%s is asked, %d knots are", step, present)
	}
	return nil
}

// leadsOn says whether a question can be answered other than by leaving.
func leadsOn(a Ask) bool {
	if a.Entry != nil || a.Checks != nil {
		return true
	}
	for _, ch := range a.Choices {
		if !ch.Leave {
			return true
		}
	}
	return false
}

// listed checks that a round lists the stump exactly when something is open on
// it, and that its summary keeps every due.
func (w *stroll) listed(sum due.Summary, dues []due.Due) error {
	kept, ok := new(due.Unpacker).Unpack(due.PackSummary(nil, sum), sum.ID, w.b.Zone)
	if !ok {
		return fmt.Errorf("its summary cannot be read")
	}
	if got := due.At(kept.Dues, w.now); !sameDues(got, dues) {
		return fmt.Errorf("the summary has %v, due are %v", got, dues)
	}
	_, open := due.First(dues, w.now)
	if calls := due.Round([]due.Summary{kept}, due.Now(w.now)); (len(calls) == 1) != open {
		return fmt.Errorf("open is %v, and the round has %v", open, calls)
	}
	return nil
}

func sameDues(a, b []due.Due) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		x, y := a[i], b[i]
		same := x.Kind == y.Kind && x.Hint == y.Hint && x.Yearly == y.Yearly && x.Opens.Equal(y.Opens) && x.By.Equal(y.By) && x.Ends.Equal(y.Ends) && x.Since.Equal(y.Since)
		if !same {
			return false
		}
	}
	return true
}
