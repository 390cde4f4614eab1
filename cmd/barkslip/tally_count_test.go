package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// Here the grafts are counted from the journal as it is exported, line by line and
// without the program's fold, and held against what the command says.

// said is a line of the journal, as far as grafts are concerned.
type said struct {
	ID, Hand, Stump, Kind               string
	At                                  time.Time
	Replaces                            []string
	Of                                  string
	Slot                                int
	Lot, Name, Variety, Bleeding, Cover string
	Word, Cause                         string
	Thickness                           struct{ MM float64 }
	Found                               []struct {
		Slot         int
		State, Cause string
	}
	line int
}

// oneGraft is one graft: the group it is in by each key, and how it fared.
type oneGraft struct {
	stump                     string
	season                    int
	by                        map[string]string
	known, took, stands, dead bool
	cause                     string
}

// grafting is what was said between one cutting back and the next.
type grafting struct {
	says []said
}

func readJournal(t *testing.T, text string) (all []said) {
	t.Helper()
	for i, line := range strings.Split(strings.TrimSpace(text), "\n") {
		var s said
		if err := json.Unmarshal([]byte(line), &s); err != nil {
			t.Fatal(err)
		}
		s.line = i
		all = append(all, s)
	}
	// What was taken back, from the last to the first; then what was said anew.
	void, place := map[int]bool{}, map[string]int{}
	for i, s := range all {
		place[s.ID] = i
	}
	for i := len(all) - 1; i >= 0; i-- {
		if at, ok := place[all[i].Of]; ok && all[i].Kind == "withdrawn" && !void[i] && at < i {
			void[at] = true
		}
	}
	gone := map[string]bool{}
	for i, s := range all {
		if !void[i] {
			for _, id := range s.Replaces {
				gone[id] = true
			}
		}
	}
	var live []said
	for i, s := range all {
		if !void[i] && !gone[s.ID] && s.Kind != "withdrawn" {
			live = append(live, s)
		}
	}
	slices.SortStableFunc(live, func(a, b said) int { return a.At.Compare(b.At) })
	return live
}

// graftings parts what was said of a stump, which is in order of time.
func graftings(says []said) (out []grafting) {
	out = []grafting{{}}
	over, cut := false, time.Time{}
	state := map[int]string{}
	for _, s := range says {
		ended := over
		if len(state) > 0 && !over {
			ended = true
			for _, st := range state {
				ended = ended && st == "dead"
			}
		}
		stale := !cut.IsZero() && len(state) == 0 && s.At.Sub(cut) > 100*24*time.Hour
		again := false
		switch s.Kind {
		case "cut-back":
			again = ended || stale || len(state) > 0
		case "nurse-limbs":
			again = ended || stale
		case "gashed", "scion-set", "scion-seen":
			again = ended
		}
		if again {
			out, over, cut, state = append(out, grafting{}), false, time.Time{}, map[int]string{}
		}
		switch s.Kind {
		case "cut-back":
			cut = s.At
		case "scion-set":
			state[s.Slot] = ""
		case "scion-broke":
			delete(state, s.Slot)
		case "failed", "given-up", "untied":
			over = true
		case "visited":
			for _, f := range s.Found {
				if _, set := state[f.Slot]; set {
					state[f.Slot] = f.State
				}
			}
		case "seasons-end":
			for slot := range state {
				if s.Word == "dead" {
					state[slot] = "dead"
				}
			}
		}
		last := &out[len(out)-1]
		last.says = append(last.says, s)
	}
	return out
}

func after(a, b said) bool { return a.At.After(b.At) || a.At.Equal(b.At) && a.line > b.line }

func moves(state string) bool { return state == "pushing" || state == "growing" }

// count counts the grafts of a stump.
func count1(stump string, says []said, lots map[string]string, zone *time.Location, south bool) (out []oneGraft) {
	parts := graftings(says)
	for n, g := range parts {
		scions := map[int]said{}
		var sealed, cut said
		against, push := false, time.Time{}
		var failed *said
		for _, s := range g.says {
			switch s.Kind {
			case "scion-set":
				if have, ok := scions[s.Slot]; !ok || s.line > have.line {
					scions[s.Slot] = s
				}
			case "sealed":
				sealed = s
			case "cut-back":
				cut = s
			case "against-advice":
				against = true
			case "failed":
				failed = &s
			case "visited":
				for _, f := range s.Found {
					if moves(f.State) && push.IsZero() {
						push = s.At
					}
				}
			}
		}
		for _, s := range g.says {
			if set, ok := scions[s.Slot]; ok && s.Kind == "scion-broke" && after(s, set) && (sealed.At.IsZero() || s.At.Before(sealed.At)) {
				delete(scions, s.Slot)
			}
		}
		first := said{}
		for _, s := range scions {
			if first.At.IsZero() || after(first, s) {
				first = s
			}
		}
		bleeding := "unknown"
		for _, s := range g.says {
			if s.Kind == "looked" && s.Bleeding != "" && after(first, s) {
				bleeding = s.Bleeding
			}
		}
		cutLater := false
		for _, later := range parts[n+1:] {
			for _, s := range later.says {
				cutLater = cutLater || s.Kind == "cut-back" || s.Kind == "fresh-cut"
			}
		}
		for slot, set := range scions {
			c := oneGraft{stump: stump, by: map[string]string{}}
			alive := true
			was := ""
			for _, s := range g.says {
				state, cause, ends := "", "", false
				switch {
				case !after(s, set):
					continue
				case s.Kind == "visited":
					for _, f := range s.Found {
						if f.Slot == slot {
							state, cause = f.State, f.Cause
						}
					}
					if state == "" {
						continue
					}
				case s.Kind == "seasons-end":
					if state, ends = was, true; s.Word == "dead" {
						state = "dead"
					}
				default:
					continue
				}
				if was = state; state == "dead" && alive {
					alive, c.cause = false, cause
				} else if state != "dead" {
					alive, c.cause = true, ""
				}
				thirty := !push.IsZero() && dayOf(s.At, zone) >= dayOf(push, zone)+30
				if !c.known && (state == "dead" || ends || moves(state) && thirty) {
					c.known, c.took = true, moves(state)
				}
			}
			if failed != nil {
				if alive, c.known = false, true; c.cause == "" {
					c.cause = failed.Cause
				}
			}
			c.dead, c.stands = !alive, c.took && alive && !cutLater
			if c.cause == "" {
				c.cause = "unknown"
			}
			local := set.At.In(zone)
			c.season = local.Year()
			if !south && local.Month() >= time.October {
				c.season++
			} else if south && local.Month() <= time.March {
				c.season--
			}
			year, week := local.ISOWeek()
			c.by["lot"], c.by["variety"], c.by["row"], c.by["hand"] = lots[set.Lot], set.Variety, strings.Split(stump, "/")[1], set.Hand
			c.by["week"], c.by["bleeding"], c.by["cover"], c.by["advice"] = fmt.Sprintf("%d-W%02d", year, week), bleeding, "none", "with"
			if sealed.Cover != "" {
				c.by["cover"] = sealed.Cover
			}
			if against {
				c.by["advice"] = "against"
			}
			c.by["waited"], c.by["thickness"] = "unknown", "unknown"
			if !cut.At.IsZero() {
				switch d := dayOf(first.At, zone) - dayOf(cut.At, zone); {
				case d < 7:
					c.by["waited"] = "under 7"
				case d > 14:
					c.by["waited"] = "15 and more"
				case d > 10:
					c.by["waited"] = "11 to 14"
				default:
					c.by["waited"] = strconv.Itoa(d)
				}
			}
			if mm := set.Thickness.MM; mm > 0 {
				c.by["thickness"] = strconv.FormatFloat(math.Round(math.Floor(mm/1.5875+1e-6)*1.5875*1e4)/1e4, 'f', -1, 64)
			}
			out = append(out, c)
		}
	}
	return out
}

func dayOf(t time.Time, zone *time.Location) int {
	y, m, d := t.In(zone).Date()
	return int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// group sums grafts, and reckons rate and interval by the formulas of the texts.
func group(grafts []oneGraft) (g groupRow) {
	m, y, on := map[string]float64{}, map[string]float64{}, map[string]bool{}
	for _, c := range grafts {
		g.Grafts++
		on[c.stump] = true
		if c.known {
			g.Known++
			m[c.stump]++
		}
		if c.took {
			g.Took++
			y[c.stump]++
		}
		if c.stands {
			g.Standing++
		}
	}
	g.Stumps, g.Deff, g.High = len(on), 1, 1
	if g.Known == 0 {
		return g
	}
	n, p := float64(g.Known), float64(g.Took)/float64(g.Known)
	g.Rate = &p
	if k := float64(len(m)); k > 1 && p > 0 && p < 1 {
		sum := 0.0
		for stump, of := range m {
			sum += (y[stump] - p*of) * (y[stump] - p*of)
		}
		v := k / (k - 1) * sum / (n * n)
		g.Deff = max(1, n*v/(p*(1-p)))
	}
	const z = 1.959963984540054
	e := n / g.Deff
	centre, half := (p+z*z/(2*e))/(1+z*z/e), z*math.Sqrt(p*(1-p)/e+z*z/(4*e*e))/(1+z*z/e)
	g.Low, g.High = max(0, centre-half), min(1, centre+half)
	return g
}

// southern moves a journal to the other half of the year and of the earth.
func southern(text string) string {
	var out strings.Builder
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		line = strings.ReplaceAll(line, `"value":"42.7"`, `"value":"-37.7"`)
		line = strings.ReplaceAll(line, "America/New_York", "Australia/Melbourne")
		head, rest, _ := strings.Cut(line, `"at":"`)
		at, err := time.Parse(time.RFC3339, rest[:25])
		if err != nil {
			panic(err)
		}
		fmt.Fprintf(&out, "%s\"at\":\"%s%s\n", head, at.AddDate(0, 0, 183).UTC().Format("2006-01-02T15:04:05+00:00"), rest[25:])
	}
	return out.String()
}

func TestTallyEqualsACountOfTheJournal(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	do := func(args ...string) string {
		t.Helper()
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 0 {
			t.Fatalf("%v: %d %s", args, code, errs.String())
		}
		return out.String()
	}
	compared, lost := 0, 0
	for seed := 1; seed <= 4; seed++ {
		dir := t.TempDir()
		north := filepath.Join(dir, "north")
		do("sample", "--stumps", "70", "--seasons", "3", "--seed", strconv.Itoa(seed), "--book", north)
		text := do("journal", "export", "--book", north)
		other := filepath.Join(dir, "south.jsonl")
		if err := os.WriteFile(other, []byte(southern(text)), 0o600); err != nil {
			t.Fatal(err)
		}
		south := filepath.Join(dir, "south")
		do("journal", "join", other, "--book", south)
		for book, zoneName := range map[string]string{north: "America/New_York", south: "Australia/Melbourne"} {
			zone, err := time.LoadLocation(zoneName)
			if err != nil {
				t.Fatal(err)
			}
			grafts := countJournal(t, do("journal", "export", "--book", book), zone, book == south)
			seasons := map[int]bool{0: true}
			for _, g := range grafts {
				seasons[g.season] = true
			}
			if len(seasons) < 4 {
				t.Fatalf("only %d seasons", len(seasons)-1)
			}
			for season := range seasons {
				here := slices.DeleteFunc(slices.Clone(grafts), func(c oneGraft) bool { return season != 0 && c.season != season })
				args := []string{"tally", "--json", "--book", book}
				if season != 0 {
					args = append(args, "--season", strconv.Itoa(season))
				}
				for _, key := range []string{"lot", "variety", "row", "hand", "week", "bleeding", "waited", "cover", "advice", "thickness"} {
					var got tallyRow
					if err := json.Unmarshal([]byte(do(append(args, "--by", key)...)), &got); err != nil {
						t.Fatal(err)
					}
					compared += compare(t, fmt.Sprintf("seed %d %s %d by %s", seed, zoneName, season, key), got, here, key)
				}
				var causes causesRow
				if err := json.Unmarshal([]byte(do(append(args, "--by", "cause")...)), &causes); err != nil {
					t.Fatal(err)
				}
				lost += compareCauses(t, causes, here)
			}
		}
	}
	t.Logf("%d groups and %d causes are the same", compared, lost)
	if compared < 1000 || lost < 100 {
		t.Errorf("only %d groups and %d causes compared", compared, lost)
	}
}

func countJournal(t *testing.T, text string, zone *time.Location, south bool) (grafts []oneGraft) {
	t.Helper()
	lots, stumps := map[string]string{}, map[string][]said{}
	for _, s := range readJournal(t, text) {
		if s.Kind == "lot-received" {
			lots[s.Lot] = s.Name
		}
		if s.Stump != "" {
			stumps[s.Stump] = append(stumps[s.Stump], s)
		}
	}
	for stump, says := range stumps {
		grafts = append(grafts, count1(stump, says, lots, zone, south)...)
	}
	return grafts
}

func compare(t *testing.T, what string, got tallyRow, grafts []oneGraft, key string) int {
	t.Helper()
	by := map[string][]oneGraft{}
	for _, g := range grafts {
		by[g.by[key]] = append(by[g.by[key]], g)
	}
	if len(by) != len(got.Groups) {
		t.Fatalf("%s: %d groups, counted %d", what, len(got.Groups), len(by))
	}
	same := func(name string, got, want groupRow) {
		t.Helper()
		near := func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
		if (got.Rate == nil) != (want.Rate == nil) || got.Rate != nil && !near(*got.Rate, *want.Rate) ||
			!near(got.Low, want.Low) || !near(got.High, want.High) || !near(got.Deff, want.Deff) {
			t.Fatalf("%s, %s: %+v, counted %+v", what, name, got, want)
		}
		got.Rate, got.Low, got.High, got.Deff, got.Key = want.Rate, want.Low, want.High, want.Deff, nil
		if got != want {
			t.Fatalf("%s, %s: %+v, counted %+v", what, name, got, want)
		}
	}
	var chi, alive, of float64
	for _, g := range got.Groups {
		want := group(by[*g.Key])
		same(*g.Key, g, want)
		alive, of = alive+float64(want.Took)/want.Deff, of+float64(want.Known)/want.Deff
	}
	same("total", got.Total, group(grafts))
	told := 0
	for _, g := range got.Groups {
		if p := alive / of; g.Rate != nil {
			told++
			chi += float64(g.Known) / g.Deff * (*g.Rate - p) * (*g.Rate - p) / (p * (1 - p))
		}
	}
	switch {
	case told < 2 && got.Differ != nil || told >= 2 && got.Differ == nil:
		t.Fatalf("%s: %d groups told, differ %v", what, told, got.Differ)
	case told >= 2 && alive > 0 && alive < of && (math.Abs(got.Differ.Chi2-chi) > 1e-8 || got.Differ.Freedom != told-1):
		t.Fatalf("%s: differ %+v, want chi-square %v", what, *got.Differ, chi)
	}
	return len(got.Groups)
}

func compareCauses(t *testing.T, got causesRow, grafts []oneGraft) int {
	t.Helper()
	counts, on := map[string]int{}, map[string]map[string]bool{}
	for _, g := range grafts {
		if g.dead {
			counts[g.cause]++
			if on[g.cause] == nil {
				on[g.cause] = map[string]bool{}
			}
			on[g.cause][g.stump] = true
		}
	}
	if len(counts) != len(got.Causes) {
		t.Fatalf("causes %+v, counted %v", got, counts)
	}
	for _, c := range got.Causes {
		if c.Grafts != counts[c.Cause] || c.Stumps != len(on[c.Cause]) {
			t.Fatalf("%+v, counted %d on %d", c, counts[c.Cause], len(on[c.Cause]))
		}
	}
	return len(got.Causes)
}
