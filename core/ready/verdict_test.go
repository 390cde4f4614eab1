package ready

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"barkslip/core/record"
	"barkslip/core/record/recordtest"
	"barkslip/core/unit"
)

// readyStump is a stump that the last row lets through, at 10:30 on 20 May.
func readyStump() Found {
	return Found{
		Across: 76.2, Bleeding: record.Dry, Slip: record.SlipsClean, Looked: recordtest.May(20, 10, 0), Slipped: recordtest.May(20, 10, 0),
		CutBack: recordtest.MayDay(12), Gashed: recordtest.May(20, 9, 0), Gashes: 4, FreshCut: recordtest.May(20, 9, 40), Limbs: 1,
	}
}

// Every row of the table of readiness, with its boundaries, each changed from
// a stump that is ready.
func TestJudgeByTheTable(t *testing.T) {
	now := recordtest.May(20, 10, 30)
	at := func(day, hour, minute int) *time.Time { u := recordtest.May(day, hour, minute); return &u }
	for _, c := range []struct {
		name   string
		change func(f *Found)
		want   record.Verdict
		until  *time.Time
	}{
		{"1: 24.9 mm is under an inch", func(f *Found) { f.Across = 24.9 }, OtherGraft, nil},
		{"1: 25.4 mm is an inch", func(f *Found) { f.Across = 25.4 }, Graft, nil},
		{"1: leads over never cut back", func(f *Found) { *f = Found{Across: 20, Bleeding: record.Running, Slip: record.Stuck} }, OtherGraft, nil},
		{"2: never cut back", func(f *Found) { f.CutBack = 0 }, CutBack, nil},
		{"2: leads over the limb", func(f *Found) { f.CutBack, f.HasLimb, f.Limb = 0, true, 10 }, CutBack, nil},
		{"3: a limb 457.1 mm below", func(f *Found) { f.HasLimb, f.Limb = true, 457.1 }, TakeLimbOff, nil},
		{"3: a limb 18 in below passes", func(f *Found) { f.HasLimb, f.Limb = true, 18*unit.Inch }, Graft, nil},
		{"3: leads over the bark", func(f *Found) { f.HasLimb, f.Limb, f.Slip = true, 0, record.Stuck }, TakeLimbOff, nil},
		{"4: stuck", func(f *Found) { f.Slip = record.Stuck }, Wait, at(27, 10, 0)},
		{"4: drags", func(f *Found) { f.Slip = record.Drags }, Wait, at(23, 10, 0)},
		{"4: six days since cut back", func(f *Found) { f.CutBack = recordtest.MayDay(14) }, Wait, at(21, 0, 0)},
		{"4: seven days are enough", func(f *Found) { f.CutBack = recordtest.MayDay(13) }, Graft, nil},
		{"4: cut back today", func(f *Found) { f.CutBack = recordtest.MayDay(20) }, Wait, at(27, 0, 0)},
		{"4: drags, the week is later", func(f *Found) { f.CutBack, f.Slip = recordtest.MayDay(19), record.Drags }, Wait, at(26, 0, 0)},
		{"4: drags, the look is later", func(f *Found) { f.CutBack, f.Slip = recordtest.MayDay(14), record.Drags }, Wait, at(23, 10, 0)},
		{"4: drags on an old look, the week is later", func(f *Found) {
			f.CutBack, f.Slip, f.Slipped, f.Looked = recordtest.MayDay(12), record.Drags, recordtest.May(11, 8, 0), recordtest.May(11, 8, 0)
		}, Wait, at(19, 0, 0)},
		{"4: leads over a new face", func(f *Found) { f.Slip, f.FreshCut = record.Drags, recordtest.May(20, 10, 20) }, Wait, at(23, 10, 0)},
		{"5: a face newer than the look", func(f *Found) { f.FreshCut = recordtest.May(20, 10, 20) }, Look, at(20, 10, 35)},
		{"5: a face as old as the look", func(f *Found) { f.FreshCut = recordtest.May(20, 10, 0) }, Graft, nil},
		{"5: damp and gashed since", func(f *Found) { f.Bleeding, f.Gashed = record.Damp, recordtest.May(20, 10, 5) }, Look, at(20, 10, 35)},
		{"5: running and drilled since", func(f *Found) { f.Bleeding, f.Drilled, f.Holes = record.Running, recordtest.May(20, 10, 10), 1 }, Look, at(20, 10, 40)},
		{"5: dry and gashed since", func(f *Found) { f.Gashed = recordtest.May(20, 10, 5) }, Graft, nil},
		{"5: cut and drilled since, the later holds", func(f *Found) {
			f.Bleeding, f.FreshCut, f.Drilled, f.Holes = record.Running, recordtest.May(20, 10, 20), recordtest.May(20, 10, 2), 1
		}, Look, at(20, 10, 35)},
		{"5: gashed and drilled since, the later holds", func(f *Found) {
			f.Bleeding, f.Gashed, f.Drilled, f.Holes = record.Weeping, recordtest.May(20, 10, 4), recordtest.May(20, 10, 12), 1
		}, Look, at(20, 10, 42)},
		{"6: never gashed", func(f *Found) { f.Gashes, f.Gashed = 0, time.Time{} }, Gash, nil},
		{"6: never gashed leads over running", func(f *Found) { f.Gashes, f.Gashed, f.Bleeding = 0, time.Time{}, record.Running }, Gash, nil},
		{"7: running, no hole", func(f *Found) { f.Bleeding = record.Running }, Drill, nil},
		{"7: running, no hole, old gashes", func(f *Found) { f.Bleeding, f.Gashed = record.Running, recordtest.May(12, 9, 0) }, Drill, nil},
		{"7: running, hole, gashes of yesterday", func(f *Found) { f.Bleeding, f.Holes, f.Gashed = record.Running, 1, recordtest.May(19, 23, 59) }, Gash, nil},
		{"7: running, hole, gashes of today", func(f *Found) { f.Bleeding, f.Holes = record.Running, 1 }, Wait, at(23, 10, 0)},
		{"7: running, hole, one wait", func(f *Found) { f.Bleeding, f.Holes, f.Waits = record.Running, 1, 1 }, Wait, at(23, 10, 0)},
		{"7: running, hole, two waits", func(f *Found) { f.Bleeding, f.Holes, f.Waits = record.Running, 1, 2 }, Leave, nil},
		{"7: running, two waits, old gashes", func(f *Found) {
			f.Bleeding, f.Holes, f.Waits, f.Gashed = record.Running, 1, 2, recordtest.May(19, 9, 0)
		}, Gash, nil},
		{"8: damp", func(f *Found) { f.Bleeding = record.Damp }, Wipe, at(20, 10, 15)},
		{"8: damp after one wipe", func(f *Found) { f.Bleeding, f.Wipes = record.Damp, 1 }, Wipe, at(20, 10, 15)},
		{"9: damp after two wipes, gashes of today", func(f *Found) { f.Bleeding, f.Wipes = record.Damp, 2 }, Drill, nil},
		{"9: damp after two wipes, old gashes", func(f *Found) { f.Bleeding, f.Wipes, f.Gashed = record.Damp, 2, recordtest.May(12, 9, 0) }, Gash, nil},
		{"9: damp after two wipes, hole", func(f *Found) { f.Bleeding, f.Wipes, f.Holes = record.Damp, 2, 1 }, Wait, at(22, 10, 0)},
		{"9: weeping, old gashes", func(f *Found) { f.Bleeding, f.Gashed = record.Weeping, recordtest.May(12, 9, 0) }, Gash, nil},
		{"9: weeping, gashes of today", func(f *Found) { f.Bleeding = record.Weeping }, Drill, nil},
		{"9: weeping, hole", func(f *Found) { f.Bleeding, f.Holes = record.Weeping, 1 }, Wait, at(22, 10, 0)},
		{"10: dry, gashes of yesterday", func(f *Found) { f.Gashed = recordtest.May(19, 9, 0) }, Gash, nil},
		{"11: dry, no fresh cut", func(f *Found) { f.FreshCut = time.Time{} }, FreshCut, nil},
		{"11: dry, face of yesterday", func(f *Found) { f.FreshCut = recordtest.May(19, 17, 0) }, FreshCut, nil},
		{"12: ready", func(*Found) {}, Graft, nil},
	} {
		f := readyStump()
		c.change(&f)
		got := Judge(f, now, recordtest.EDT, unit.US)
		if got.Verdict != c.want || !sameInstant(got.Until, c.until) {
			t.Errorf("%s: %s until %v, want %s until %v", c.name, got.Verdict, got.Until, c.want, c.until)
		}
		if len(got.Reasons) == 0 || got.Meanwhile == nil || got.Cautions == nil || len(got.Work.Facts) == 0 {
			t.Errorf("%s: reasons, meanwhile, cautions or facts are missing: %+v", c.name, got)
		}
	}
}

func sameInstant(a, b *time.Time) bool {
	return a == nil && b == nil || a != nil && b != nil && a.Equal(*b)
}

// byTheTable reads the table of readiness row by row, apart from Judge's code.
func byTheTable(f Found, now time.Time) (record.Verdict, time.Time) {
	hours := func(t time.Time, h float64) time.Time { return t.Add(time.Duration(h * float64(time.Hour))) }
	latest := func(ts ...time.Time) (out time.Time) {
		for _, t := range ts {
			if t.After(out) {
				out = t
			}
		}
		return out
	}
	today := func(t time.Time) bool { return t.Format(time.DateOnly) == now.Format(time.DateOnly) }
	newer := func(t time.Time) bool { return !t.IsZero() && t.After(f.Looked) }
	never := time.Time{}
	week := recordtest.May(1, 0, 0).AddDate(0, 0, int(f.CutBack-recordtest.MayDay(1))+7)
	bleeds := f.Bleeding != record.Dry
	switch {
	case f.Across < 25.4:
		return "other-graft", never
	case f.CutBack == 0:
		return "cut-back", never
	case f.HasLimb && f.Limb < 457.2:
		return "take-limb-off", never
	case f.Slip == "stuck":
		return "wait", latest(hours(f.Slipped, 7*24), week)
	case f.Slip == "drags":
		return "wait", latest(hours(f.Slipped, 3*24), week)
	case now.Before(week):
		return "wait", week
	case newer(f.FreshCut) || bleeds && (newer(f.Gashed) || newer(f.Drilled)):
		var until time.Time
		if newer(f.FreshCut) {
			until = hours(f.FreshCut, 0.25)
		}
		if bleeds && newer(f.Gashed) {
			until = latest(until, hours(f.Gashed, 0.5))
		}
		if bleeds && newer(f.Drilled) {
			until = latest(until, hours(f.Drilled, 0.5))
		}
		return "look", until
	case f.Gashes == 0:
		return "gash", never
	case f.Bleeding == "running" && f.Holes == 0:
		return "drill", never
	case f.Bleeding == "running" && !today(f.Gashed):
		return "gash", never
	case f.Bleeding == "running" && f.Waits < 2:
		return "wait", hours(f.Looked, 3*24)
	case f.Bleeding == "running":
		return "leave", never
	case f.Bleeding == "damp" && f.Wipes < 2:
		return "wipe", hours(f.Looked, 0.25)
	case bleeds && !today(f.Gashed):
		return "gash", never
	case bleeds && f.Holes == 0:
		return "drill", never
	case bleeds:
		return "wait", hours(f.Looked, 2*24)
	case !today(f.Gashed):
		return "gash", never
	case !today(f.FreshCut):
		return "fresh-cut", never
	}
	return "graft", never
}

func drawFound(t *rapid.T) (Found, time.Time) {
	when := func(name string) time.Time {
		at := recordtest.May(rapid.SampledFrom([]int{11, 13, 19, 20, 20, 20, 20}).Draw(t, name+" day"), 8, 0).Add(time.Duration(rapid.IntRange(0, 150).Draw(t, name)) * time.Minute)
		return at
	}
	often := func(name string) bool { return rapid.IntRange(0, 3).Draw(t, name) > 0 }
	f := Found{
		Across:   unit.Length(rapid.SampledFrom([]float64{20, 25.4, 60, 60, 60, 60, 120}).Draw(t, "across")),
		Bleeding: rapid.SampledFrom(record.Bleedings).Draw(t, "bleeding"),
		Slip:     rapid.SampledFrom([]record.Slip{record.SlipsClean, record.SlipsClean, record.SlipsClean, record.SlipsClean, record.Drags, record.Stuck}).Draw(t, "slip"),
		Looked:   when("looked"), Wipes: rapid.IntRange(0, 3).Draw(t, "wipes"), Waits: rapid.IntRange(0, 3).Draw(t, "waits"),
		Low: rapid.Bool().Draw(t, "low"), NoLimbs: rapid.Bool().Draw(t, "no limbs"),
	}
	f.Slipped = f.Looked
	if often("cut back") {
		f.CutBack = recordtest.MayDay(rapid.SampledFrom([]int{4, 10, 12, 13, 13, 14, 20}).Draw(t, "cut back day"))
	}
	if often("gashed") {
		f.Gashed, f.Gashes = when("gash"), rapid.IntRange(1, 8).Draw(t, "gashes")
	}
	if rapid.Bool().Draw(t, "drilled") {
		f.Drilled, f.Holes = when("hole"), rapid.IntRange(1, 3).Draw(t, "holes")
	}
	if often("cut") {
		f.FreshCut = when("face")
	}
	if !often("no limb") {
		f.HasLimb, f.Limb = true, unit.Length(rapid.SampledFrom([]float64{100, 457, 457.2, 600}).Draw(t, "limb"))
	}
	return f, recordtest.May(20, 10, 30)
}

func TestJudgeIsTheTable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, now := drawFound(t)
		got := Judge(f, now, recordtest.EDT, unit.US)
		want, until := byTheTable(f, now)
		if got.Verdict != want || (got.Until == nil) != until.IsZero() || got.Until != nil && !got.Until.Equal(until) {
			t.Fatalf("%+v\n%s until %v, the table says %s until %v", f, got.Verdict, got.Until, want, until)
		}
	})
}

// What does not block changes no verdict, and a graft is told only on a dry
// face over clean bark, a week or more after cutting back.
func TestJudgeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, now := drawFound(t)
		got := Judge(f, now, recordtest.EDT, unit.US)
		bare := f
		bare.Low, bare.NoLimbs, bare.Limbs = false, false, 1
		if v := Judge(bare, now, recordtest.EDT, unit.US); v.Verdict != got.Verdict || !sameInstant(v.Until, got.Until) {
			t.Fatalf("a caution changed %s to %s", v.Verdict, got.Verdict)
		}
		if got.Verdict == Graft && (f.Bleeding != record.Dry || f.Slip != record.SlipsClean || now.Before(f.CutBack.Add(7).In(recordtest.EDT)) || f.FreshCut.After(f.Looked)) {
			t.Fatalf("told to graft: %+v", f)
		}
		if timed := got.Verdict == Wait || got.Verdict == Look || got.Verdict == Wipe; timed != (got.Until != nil) {
			t.Fatalf("%s until %v", got.Verdict, got.Until)
		}
		if !timed(got.Verdict) && len(got.Meanwhile) > 0 && got.Verdict != Leave {
			t.Fatalf("%s meanwhile %q", got.Verdict, got.Meanwhile)
		}
	})
}

func timed(v record.Verdict) bool { return v == Wait || v == Look || v == Wipe }

// While the bark or the days make it wait, a stump that bleeds is drained.
func TestMeanwhile(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(f *Found)
		says   string
	}{
		{"dry", func(f *Found) { f.Bleeding = record.Dry }, ""},
		{"never gashed", func(f *Found) { f.Gashes, f.Gashed = 0, time.Time{} }, "gash"},
		{"gashes of yesterday", func(f *Found) { f.Gashed = recordtest.May(19, 9, 0) }, "gash"},
		{"gashes of today", func(*Found) {}, "drill"},
		{"one hole", func(f *Found) { f.Holes, f.Drilled = 1, recordtest.May(20, 9, 0) }, "drill"},
	} {
		f := readyStump()
		f.Slip, f.Bleeding = record.Drags, record.Weeping
		c.change(&f)
		got := strings.Join(Judge(f, recordtest.May(20, 10, 30), recordtest.EDT, unit.US).Meanwhile, " ")
		if !strings.Contains(got, c.says) || (c.says == "") != (got == "") {
			t.Errorf("%s: meanwhile %q, want %q", c.name, got, c.says)
		}
	}
}

// Each caution at its boundary: over 14 days, over 4 in, over 6 gashes, no
// limb, below browse height.
func TestCautions(t *testing.T) {
	now := recordtest.May(20, 10, 30)
	for _, c := range []struct {
		name   string
		change func(f *Found)
		says   string // "" for none
	}{
		{"14 days", func(f *Found) { f.CutBack = recordtest.MayDay(6) }, ""},
		{"15 days", func(f *Found) { f.CutBack = recordtest.MayDay(5) }, "15 days ago"},
		{"4 in", func(f *Found) { f.Across = 101.6 }, ""},
		{"over 4 in", func(f *Found) { f.Across = 101.7 }, "across"},
		{"6 gashes", func(f *Found) { f.Gashes = 6 }, ""},
		{"7 gashes", func(f *Found) { f.Gashes = 7 }, "7 gashes"},
		{"no limb", func(f *Found) { f.NoLimbs = true }, "nurse limb"},
		{"low", func(f *Found) { f.Low = true }, "browse height"},
	} {
		f := readyStump()
		c.change(&f)
		got := Judge(f, now, recordtest.EDT, unit.US)
		text := strings.Join(got.Cautions, " ")
		if got.Verdict != Graft || (c.says == "") != (text == "") || !strings.Contains(text, c.says) {
			t.Errorf("%s: %s, cautions %q, want %q", c.name, got.Verdict, text, c.says)
		}
	}
}

// Days turn over at midnight on the block's own clock.
func TestJudgeDaysAreTheZones(t *testing.T) {
	f := readyStump()
	f.Gashed, f.FreshCut, f.Looked = recordtest.May(20, 0, 5), recordtest.May(20, 0, 10), recordtest.May(20, 0, 30)
	now := recordtest.May(20, 0, 40)
	if v := Judge(f, now, recordtest.EDT, unit.US).Verdict; v != Graft {
		t.Errorf("on the block's clock: %s", v)
	}
	if v := Judge(f, now.Add(24*time.Hour), recordtest.EDT, unit.US).Verdict; v != Gash {
		t.Errorf("a day on: %s", v)
	}
	if v := Judge(f, now, time.FixedZone("", -300*60), unit.US).Verdict; v != Graft {
		t.Errorf("an hour west, all on 19 May: %s", v)
	}
	f.Gashed = recordtest.May(20, 0, 50).Add(-time.Hour)
	if v := Judge(f, now, recordtest.EDT, unit.US).Verdict; v != Gash {
		t.Errorf("gashed ten to midnight: %s", v)
	}
}

func TestRecordWithoutALook(t *testing.T) {
	f := readyStump()
	f.Bleeding, f.Slip, f.Looked, f.Slipped = "", "", time.Time{}, time.Time{}
	got := Judge(f, recordtest.May(20, 10, 30), recordtest.EDT, unit.US)
	if got.Verdict != Look || !got.Until.Equal(recordtest.May(20, 9, 55)) {
		t.Errorf("a face cut at 9:40 and not looked at: %s until %v", got.Verdict, got.Until)
	}
	f.FreshCut = time.Time{}
	if got = Judge(f, recordtest.May(20, 10, 30), recordtest.EDT, unit.US); got.Verdict != Look || !got.Until.Equal(recordtest.May(20, 10, 30)) {
		t.Errorf("never looked at: %s until %v", got.Verdict, got.Until)
	}
	f.Bleeding, f.Looked = record.Dry, recordtest.May(20, 10, 0)
	if got = Judge(f, recordtest.May(20, 10, 30), recordtest.EDT, unit.US); got.Verdict != Look {
		t.Errorf("the bark not tried: %s", got.Verdict)
	}
}

// A reason never contradicts itself: where size and limit would be printed
// alike it says on which side of the limit the size is.
func TestReasonsBesideALimit(t *testing.T) {
	now := recordtest.May(20, 10, 30)
	for _, c := range []struct {
		name   string
		sys    unit.System
		change func(f *Found)
		says   string
	}{
		{"7/8 in", unit.US, func(f *Found) { f.Across = unit.Inch * 7 / 8 }, "It is 7/8 in across, under 1 in."},
		{"0.999 in", unit.US, func(f *Found) { f.Across = 0.999 * unit.Inch }, "It is just under 1 in across."},
		{"25.1 mm", unit.Metric, func(f *Found) { f.Across = 25.1 }, "It is just under 25 mm across."},
		{"440 mm", unit.Metric, func(f *Found) { f.HasLimb, f.Limb = true, 440 }, "A limb stands 440 mm below the planned graft height; 45 cm must be clear."},
		{"120 mm", unit.Metric, func(f *Found) { f.Across = 120 }, "It is 120 mm across, over 10 cm: wounds this wide close slowly; seal well against decay."},
		{"17 in", unit.US, func(f *Found) { f.HasLimb, f.Limb = true, 17*unit.Inch }, "A limb stands 17 in below the planned graft height; 18 in must be clear."},
		{"17.99 in", unit.US, func(f *Found) { f.HasLimb, f.Limb = true, 17.99*unit.Inch }, "A limb stands just under 18 in below the planned graft " +
			"height; 18 in must be clear."},
		{"4.001 in", unit.US, func(f *Found) { f.Across = 4.001 * unit.Inch }, "It is just over 4 in across: wounds this wide close slowly; seal well against decay."},
		{"5 in", unit.US, func(f *Found) { f.Across = 5 * unit.Inch }, "It is 5 in across, over 4 in: wounds this wide close slowly; seal well against decay."},
	} {
		f := readyStump()
		c.change(&f)
		got := Judge(f, now, recordtest.EDT, c.sys)
		if says := append(got.Reasons, got.Cautions...); !slices.Contains(says, c.says) {
			t.Errorf("%s: %q, want %q", c.name, says, c.says)
		}
	}
}

// The working names what went in and nothing that is not known.
func TestWorkingLeavesOutTheUnknown(t *testing.T) {
	names := func(f Found) (out []string) {
		for _, in := range Judge(f, recordtest.May(20, 10, 30), recordtest.EDT, unit.US).Work.Inputs {
			out = append(out, in.Name)
		}
		return out
	}
	if got, want := names(Found{}), []string{"bleeding", "bark"}; !slices.Equal(got, want) {
		t.Errorf("of a stump not seen: %q, want %q", got, want)
	}
	f := readyStump()
	f.Drilled, f.Holes, f.Wipes, f.Waits, f.HasLimb, f.Limb = recordtest.May(20, 9, 0), 1, 1, 1, true, 500
	want := []string{"across", "bleeding", "bark", "cut back", "looked", "newest gash", "newest hole", "fresh cut",
		"gashes so far", "drain holes", "wipes", "waits while running", "limbs left", "clear stem to the nearest limb"}
	if got := names(f); !slices.Equal(got, want) {
		t.Errorf("of one well known: %q, want %q", got, want)
	}
	if got, want := names(Found{NoLimbs: true}), []string{"bleeding", "bark", "limbs left"}; !slices.Equal(got, want) {
		t.Errorf("of one without limbs: %q, want %q", got, want)
	}
}
