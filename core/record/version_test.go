package record

import (
	"bytes"
	"encoding/hex"
	"os"
	"strings"
	"testing"
)

// Lines and packed records of version 1 are read for ever, each as an event
// without an act; it is packed as it was, and written as a line of this version.
func TestVersionOneIsRead(t *testing.T) {
	golden, err := os.ReadFile("testdata/version1.golden")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(golden)), "\n")
	n := 0
	for i := 2; i < len(lines); i += 2 { // behind the event of a version not known then
		e, err := ParseLine([]byte(lines[i]))
		if err != nil || e.Act != None {
			t.Fatalf("%s\nis read as %v: %v", lines[i], e, err)
		}
		if got, want := string(Line(e)), strings.Replace(lines[i], `{"v":1,`, `{"v":2,`, 1); got != want {
			t.Errorf("%s\nis written as\n%s", lines[i], got)
		}
		packed, err := hex.DecodeString(strings.TrimPrefix(lines[i+1], "packed "))
		if err != nil {
			t.Fatal(err)
		}
		unpacked, err := Unpack(packed, e.Stump, e.Clock, e.ID)
		if err != nil {
			t.Fatalf("%s: %v", lines[i], err)
		}
		if d := alike(e, unpacked); d != "" {
			t.Errorf("%s\nand its packed form differ:\n%s", lines[i], d)
		}
		if !bytes.Equal(Pack(nil, e), packed) {
			t.Errorf("%s is packed another way", lines[i])
		}
		n++
	}
	if n < 49 {
		t.Errorf("%d kinds read", n)
	}
}

func TestTheActOfALine(t *testing.T) {
	const act = `"act":"c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0"`
	v := func(n, more string) string {
		return strings.Replace(goodLine, `"v":1`, `"v":`+n, 1)[:len(goodLine)-1] + "," + more + "}"
	}
	for _, c := range []struct {
		name, line string
		known      bool
		act        ID
		says       string
	}{
		{"of this version", v("2", act), true, ID(bytes.Repeat([]byte{0xc0}, 16)), ""},
		{"none", strings.Replace(goodLine, `"v":1`, `"v":2`, 1), true, None, ""},
		{"in version 1", v("1", act), false, None, `cut-back has no field "act"`},
		{"no id", v("2", `"act":"x"`), false, None, "32 hexadecimal digits"},
		{"of version 3", v("3", act), false, ID(bytes.Repeat([]byte{0xc0}, 16)), ""},
		{"of version 3, of another kind", v("3", `"act":{"of":7}`), false, None, ""},
	} {
		e, err := ParseLine([]byte(c.line))
		if c.says != "" {
			if err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%s: %v, want words with %q", c.name, err, c.says)
			}
			continue
		}
		_, foreign := e.Body.(*Foreign)
		if err != nil || foreign == c.known || e.Act != c.act {
			t.Errorf("%s: act %s, %T, %v", c.name, e.Act, e.Body, err)
		}
		again, err := ParseLine(Line(e))
		if err != nil || !bytes.Equal(Line(again), Line(e)) || foreign && !strings.Contains(string(Line(e)), `"v":3`) {
			t.Errorf("%s becomes\n%s\n%v", c.line, Line(e), err)
		}
	}
}

// A kind not known is passed on as it is, of whatever version.
func TestForeignLinesOfEachVersion(t *testing.T) {
	for _, line := range []string{
		`{"v":1,"id":"0102030405060708090a0b0c0d0e0f10","at":"2027-05-04T14:30:00-04:00","hand":"AB","stump":"","kind":"bark-mended","clock":9,"act":"by hand"}`,
		`{"v":2,"id":"0102030405060708090a0b0c0d0e0f10","at":"2027-05-04T14:30:00-04:00","hand":"AB","stump":"",` +
			`"kind":"bark-mended","clock":9,"act":"c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0","x":1}`,
		`{"v":3,"id":"0102030405060708090a0b0c0d0e0f10","at":"2027-05-04T14:30:00-04:00","hand":"AB","stump":"",` +
			`"kind":"cut-back","clock":9,"act":"c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0","how":{"deep":1.50}}`,
	} {
		e, err := ParseLine([]byte(line))
		if err != nil {
			t.Fatal(err)
		}
		if e, err = Unpack(Pack(nil, e), e.Stump, e.Clock, e.ID); err != nil || string(Line(e)) != line {
			t.Errorf("%s\nbecame\n%s\n%v", line, Line(e), err)
		}
	}
}

// A day's weather of before rain was asked reads as one of which none was said, and
// is packed and written as it was; what a day says of rain comes back whole.
func TestWeatherWithoutRainIsRead(t *testing.T) {
	const line = `{"v":2,"id":"393f464d545b626970777e858c939aa1","at":"2020-09-13T18:48:50+05:45","hand":"ÉX","stump":"","kind":"weather","clock":2217,` +
		`"act":"d3d9e0e7eef5fc030a11181f262d343b","block":"7b828990979ea5acb3bac1c8cfd6dde4","day":"1975-07-22","low":{"c":0,"typed":"61F"},` +
		`"high":{"c":27,"typed":"75F"},"wind_ms":1.9375,"cloud":4}`
	const packed = "30ece2f0f50bb20503c3895800017b828990979ea5acb3bac1c8cfd6dde402d81f0300000000000000000336314604403b00000000000003373546053fff" +
		"000000000000060800d3d9e0e7eef5fc030a11181f262d343b19a867f9"
	e, err := ParseLine([]byte(line))
	if err != nil {
		t.Fatal(err)
	}
	if got := hex.EncodeToString(Pack(nil, e)); got != packed || string(Line(e)) != line {
		t.Errorf("it became\n%s\n%s", Line(e), got)
	}
	w := e.Body.(*DayWeather)
	if w.Rain != "" || w.RainDepth.Given() || w.Wet() {
		t.Errorf("%+v", w)
	}
	for _, rain := range []DayWeather{{Rain: NoRain}, {Rain: Showers}, {RainDepth: Measure{5, "5 mm"}}} {
		w.Rain, w.RainDepth = rain.Rain, rain.RainDepth
		again, err := ParseLine(Line(e))
		if err != nil || alike(e, again) != "" {
			t.Errorf("%s: %v", Line(e), err)
		}
		unpacked, err := Unpack(Pack(nil, e), e.Stump, e.Clock, e.ID)
		if err != nil || alike(e, unpacked) != "" {
			t.Errorf("%s packed: %v", Line(e), err)
		}
	}
}
