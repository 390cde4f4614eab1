package weather

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/iotest"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

func TestReadTemps(t *testing.T) {
	for name, text := range map[string]string{
		"celsius":       "date,low_c,high_c\n2027-05-01,10,25\n2027-05-02,11.5,30\n",
		"fahrenheit":    "date,low_f,high_f\n2027-05-01,50,77\n2027-05-02,52.7,86\n",
		"mark and CRLF": "\ufeffdate,low_c,high_c\r\n2027-05-01,10,25\r\n2027-05-02,11.5,30\r\n",
		"any order":     "high_c,station,date,low_c\n30,x,2027-05-02,11.5\n25,\"a,b\",2027-05-01,10\n",
		"loose":         "Date, Low_C , High_C\n\n2027-05-01, 10 , 25\n\n2027-05-02,+11.5,30",
		"both units":    "date,low_f,high_f,low_c,high_c\n2027-05-01,0,0,10,25\n2027-05-02,0,0,11.5,30\n",
		"own units":     "date,low_c,high_c\n2027-05-01,50F,25C\n2027-05-02,11.5,86F\n",
	} {
		list, err := ReadTemps(strings.NewReader(text))
		if err != nil || len(list) != 2 {
			t.Errorf("%s: %v, %v", name, list, err)
			continue
		}
		for i, want := range []Extremes{{unit.MakeDate(2027, 5, 1), 10, 25}, {unit.MakeDate(2027, 5, 2), 11.5, 30}} {
			got := list[i]
			if got.Date != want.Date || math.Abs((got.Low-want.Low).C()) > 1e-9 || math.Abs((got.High-want.High).C()) > 1e-9 {
				t.Errorf("%s: %v, want %v", name, got, want)
			}
		}
	}
}

func TestBadTemps(t *testing.T) {
	const heading = "date,low_c,high_c\n"
	for text, names := range map[string][]string{
		"":                                                 {"empty"},
		heading:                                            {"without days"},
		"low_c,high_c\n10,25\n":                            {"line 1", "date"},
		"date,low_c,high_f\n2027-05-01,1,2\n":              {"line 1", "low and high"},
		"date,date,low_c,high_c\n":                         {"line 1", "date twice"},
		heading + "2027-05-01,10,25\nx,10,25\n":            {"line 3", "date", `"x"`},
		heading + "2027-02-30,10,25\n":                     {"line 2", "date", "2027-02-30"},
		heading + "2027-05-01,cool,25\n":                   {"line 2", "low_c", "cool"},
		heading + "2027-05-01,10,NaN\n":                    {"line 2", "high_c", "NaN"},
		heading + "2027-05-01,10,99\n":                     {"line 2", "high_c", "99"},
		heading + "2027-05-01,10\n":                        {"line 2", "high_c"},
		heading + "2027-05-01,25,10\n":                     {"line 2", "low_c", "above"},
		heading + "\n\n2027-05-01,10,\n":                   {"line 4", "high_c"},
		heading + "2027-05-01,1,2\n2027-05-01,1,2\n":       {"line 3", "again after line 2"},
		heading + "2027-05-01,\"1,2\n":                     {"line 2"},
		heading + "2027-05-01," + strings.Repeat("9", 999): {"line 2", "low_c", "…"},
		"date,low_f,high_f\n2027-05-01,50,212\n":           {"line 2", "high_f", "212"},
		"date,low_f,high_f\n2027-05-01,\x1b[2J,60\n":       {"line 2", "low_f", `\x1b`},
	} {
		_, err := ReadTemps(strings.NewReader(text))
		var impossible *trade.Impossible
		if !errors.As(err, &impossible) || impossible.Option != "temps" || impossible.Accepted == "" {
			t.Errorf("%q: %v", text, err)
			continue
		}
		for _, name := range names {
			if !strings.Contains(impossible.Given, name) {
				t.Errorf("%q: %q does not name %q", text, impossible.Given, name)
			}
		}
	}
	broken := errors.New("the disk is gone")
	if _, err := ReadTemps(iotest.ErrReader(broken)); !errors.Is(err, broken) {
		t.Errorf("%v", err)
	}
}

func FuzzReadTemps(f *testing.F) {
	f.Add("date,low_c,high_c\n2027-05-01,10,25\n")
	f.Add("\ufeffhigh_f,date,low_f\r\n90,2027-05-01,60\r\n")
	f.Add("date,low_c,high_c\n\"2027-05-01,10,25\n")
	f.Fuzz(func(t *testing.T, text string) {
		list, err := ReadTemps(strings.NewReader(text))
		if err != nil {
			return
		}
		again := strings.Builder{}
		again.WriteString("date,low_c,high_c\n")
		for i, e := range list {
			if !(e.Low <= e.High) || e.Low < coldestAir || e.High > hottestAir || i > 0 && list[i-1].Date >= e.Date {
				t.Fatalf("%q gave %v", text, list)
			}
			fmt.Fprintf(&again, "%v,%.6f,%.6f\n", e.Date, e.Low.C(), e.High.C())
		}
		back, err := ReadTemps(strings.NewReader(again.String()))
		if err != nil || len(back) != len(list) {
			t.Fatalf("%q is read back as %v, %v", again.String(), back, err)
		}
	})
}
