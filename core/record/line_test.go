package record

import (
	"bytes"
	"encoding/binary"
	"strings"
	"testing"
)

const (
	goodHead = `"v":1,"id":"0102030405060708090a0b0c0d0e0f10","at":"2027-05-04T14:30:00-04:00","hand":"AB",` +
		`"stump":"0102030405060708090a0b0c0d0e0f10/4/17","clock":9`
	goodLine = `{` + goodHead + `,"kind":"cut-back","height":{"mm":1800,"typed":"1.8m"}}`
)

func TestParseLineRefuses(t *testing.T) {
	kind := func(rest string) string { return `{` + goodHead + `,` + rest + `}` }
	swap := func(old, new string) string { return strings.Replace(goodLine, old, new, 1) }
	for _, c := range []struct{ line, says string }{
		{"", "not a JSON object"},
		{"[]", "not a JSON object"},
		{`"text"`, "not a JSON object"},
		{"null", "not a JSON object"},
		{goodLine[:40], "not a whole JSON object"},
		{goodLine[:len(goodLine)-1], "not a whole JSON object"},
		{goodLine + goodLine, "stands behind"},
		{goodLine + "]", "stands behind"},
		{goodLine + "}", "stands behind"},
		{goodLine + "x", "stands behind"},
		{"{\"v\":1,\"hand\":\"\xff\"}", "UTF-8"},
		{swap(`"v":1`, `"v":0`), "v is missing"},
		{swap(`"v":1,`, ``), "v is missing"},
		{swap(`"v":1`, `"v":"1"`), "v is not a whole number"},
		{swap(`"v":1`, `"v":1.5`), "v is not a whole number"},
		{swap(`"id":"0102`, `"id":"01`), "32 hexadecimal digits"},
		{swap(`"id":"0102`, `"id":"zz02`), "32 hexadecimal digits"},
		{swap(`"0102030405060708090a0b0c0d0e0f10","at"`, `"00000000000000000000000000000000","at"`), "id is missing"},
		{swap(`2027-05-04T14:30:00-04:00`, `2027-05-04`), "at is not an instant"},
		{swap(`2027-05-04T14:30:00-04:00`, `0001-01-01T00:00:00Z`), "at is not an instant"},
		{swap(`"at":"2027-05-04T14:30:00-04:00",`, ``), "at is missing"},
		{swap(`"hand":"AB"`, `"hand":7`), "hand is not text"},
		{swap(`"hand":"AB"`, `"hand":null`), "hand is not text"},
		{swap(`/4/17`, `/4`), "not a place"},
		{swap(`/4/17`, `/0/17`), "not a place"},
		{swap(`/4/17`, `/4/10000`), "not a place"},
		{swap(`/4/17`, ``), "not a stump"},
		{swap(`"stump":"0102030405060708090a0b0c0d0e0f10/4/17"`, `"stump":""`), "needs a stump"},
		{swap(`"clock":9`, `"clock":0`), "clock is 0"},
		{swap(`"clock":9`, `"clock":-1`), "clock is -1"},
		{swap(`"clock":9`, `"clock":1e3`), "clock is 1e3"},
		{swap(`"clock":9`, `"clock":"9"`), "clock is"},
		{swap(`"clock":9`, `"clock":9223372036854775808`), "clock is"},
		{swap(`,"clock":9`, ``), "clock is missing"},
		{swap(`"clock":9`, `"clock":9,"clock":10`), `"clock" stands twice`},
		{swap(`"clock":9`, `"clock":9,"replaces":"x"`), "replaces is not a list"},
		{swap(`"clock":9`, `"clock":9,"replaces":["x"]`), "replaces is not a list"},
		{swap(`"kind":"cut-back"`, `"kind":""`), "kind is missing"},
		{swap(`"height"`, `"hight"`), `cut-back has no field "hight"`},
		{swap(`{"mm":1800,"typed":"1.8m"}`, `1800`), "height is not a length"},
		{swap(`"mm":1800`, `"mm":-1`), "out of range"},
		{swap(`"mm":1800`, `"mm":1e9`), "out of range"},
		{swap(`"mm":1800`, `"in":71`), "height is not a length"},
		{swap(`"mm":1800`, `"mm":1e999`), "height is not a length"},
		{swap(`{"mm":1800,"typed":"1.8m"}`, `null`), "height is not a length"},
		{kind(`"kind":"gashed","number":"two"`), "number is not a whole number"},
		{kind(`"kind":"gashed","number":-2`), "number is -2"},
		{kind(`"kind":"looked"`), "needs bleeding or slip"},
		{kind(`"kind":"looked","bleeding":"wet"`), `bleeding is "wet", not one of dry, damp, weeping, running`},
		{kind(`"kind":"looked","bleeding":"dry","wiped":1`), "wiped is not true or false"},
		{kind(`"kind":"sealed"`), "cover"},
		{kind(`"kind":"failed","cause":"bad luck"`), "cause"},
		{kind(`"kind":"noted"`), "needs text"},
		{kind(`"kind":"noted","text":"x"` + strings.Repeat(`,"a":1`, MostMembers)), "more than 256 members"},
		{kind(`"kind":"noted","text":"` + strings.Repeat("é", LongestText+1) + `"`), "text has 10001 letters; 10000 are the most"},
		{kind(`"kind":"noted","text":"x"` + strings.Repeat(" ", LongestLine)), "longer than 65536 bytes"},
		{swap(`"stump":"`, `"stump":"`+strings.Repeat("é", 9000)), "letters; 100 are the most"},
		{swap(`2027-05-04T`, `2201-05-04T`), "of the years 1900 to 2200"},
		{swap(`2027-05-04T`, `1899-05-04T`), "of the years 1900 to 2200"},
		{kind(`"kind":"scion-set","slot":0`), "slot"},
		{kind(`"kind":"scion-set","slot":1,"nodes":[{"buds":"q"}]`), "buds"},
		{kind(`"kind":"scion-set","slot":1,"nodes":[{"buds":"p","more":1}]`), `nodes has no field "more"`},
		{kind(`"kind":"scion-set","slot":1,"nodes":{}`), "nodes is not a list"},
		{kind(`"kind":"slots-marked","asked":25`), "at most 24 slots"},
		{kind(`"kind":"slots-marked","slots":[{"bearing_deg":360}]`), "bearing_deg is 360"},
		{kind(`"kind":"measured"`), "across"},
		{kind(`"kind":"visited","found":[{"slot":1,"state":"fine"}]`), "state"},
		{kind(`"kind":"lot-received","lot":"0102030405060708090a0b0c0d0e0f10","name":"x"`), "no single stump"},
		{kind(`"kind":"withdrawn"`), "needs the event"},
	} {
		if e, err := ParseLine([]byte(c.line)); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s\ngave %v, %v; want words with %q", c.line, e.Body, err, c.says)
		}
	}
	if _, err := ParseLine([]byte(goodLine)); err != nil {
		t.Fatalf("the good line was refused: %v", err)
	}
}

// Bodies of the book with content that cannot be.
func TestParseLineRefusesBookEvents(t *testing.T) {
	head := strings.Replace(goodHead, "0102030405060708090a0b0c0d0e0f10/4/17", "", 1)
	const block = `"block":"0102030405060708090a0b0c0d0e0f10"`
	for _, c := range []struct{ rest, says string }{
		{`"kind":"block-made"`, "needs a block and a name"},
		{`"kind":"block-set",` + block, "needs a block and a setting"},
		{`"kind":"block-set",` + block + `,"setting":"frosty","value":"very"`, "yes or no"},
		{`"kind":"same","what":"tree","a":"x","b":"y"`, "what"},
		{`"kind":"same","what":"hand","a":"AB","b":"AB"`, "two different names"},
		{`"kind":"same","what":"lot","a":"AB","b":"CD"`, "32 hexadecimal digits"},
		{`"kind":"weather",` + block + `,"day":"2027-05-04","low":{"c":20},"high":{"c":10}`, "the low is above the high"},
		{`"kind":"weather",` + block + `,"day":"2027-05-04","low":{"c":2},"high":{"c":1e30}`, "out of range"},
		{`"kind":"weather",` + block + `,"day":"4 May","low":{"c":2},"high":{"c":10}`, "day is not a date"},
		{`"kind":"weather",` + block + `,"day":"2027-05-04","low":{"c":2},"high":{"c":10},"cloud":9`, "0 to 8"},
		{`"kind":"weather",` + block + `,"day":"2027-05-04","low":{"c":2},"high":{"c":10},"wind_ms":-1`, "wind"},
		{`"kind":"store-read","temp":{"c":2}`, "needs a lot"},
	} {
		line := `{` + head + `,` + c.rest + `}`
		if e, err := ParseLine([]byte(line)); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s\ngave %v, %v; want words with %q", line, e.Body, err, c.says)
		}
	}
}

// Text from outside loses what could upset a screen, and nothing else.
func TestParseLineCleansText(t *testing.T) {
	line := strings.Replace(goodLine, `"kind":"cut-back","height":{"mm":1800,"typed":"1.8m"}`, `"kind":"noted","text":"a\u001b[31mb\u202e½\n"`, 1)
	line = strings.Replace(line, `"hand":"AB"`, `"hand":"A\u0007B"`, 1)
	e, err := ParseLine([]byte(line))
	if err != nil {
		t.Fatal(err)
	}
	if got := e.Body.(*Noted).Text; got != "a[31mb½" || e.Hand != "AB" {
		t.Errorf("text %q, hand %q", got, e.Hand)
	}
}

func FuzzParseLine(f *testing.F) {
	p := counted(0)
	for code := range kinds {
		if code > 0 {
			f.Add(Line(p.event(p.body(code))))
		}
		f.Add(Line(p.foreign()))
	}
	f.Fuzz(func(t *testing.T, line []byte) {
		e, err := ParseLine(line)
		if err != nil {
			return
		}
		written := Line(e)
		again, err := ParseLine(written)
		if err != nil {
			t.Fatalf("%s\nwas read, but what was written of it is not: %v\n%s", line, err, written)
		}
		if !bytes.Equal(Line(again), written) {
			t.Fatalf("%s\nbecame\n%s", written, Line(again))
		}
		if _, err := Unpack(Pack(nil, e), e.Stump, e.Clock, e.ID); err != nil {
			t.Fatalf("%s\nread and packed, does not unpack: %v", line, err)
		}
	})
}

// The checksum is made to hold, so that the reader behind it is what is tried.
func FuzzUnpack(f *testing.F) {
	p := counted(0)
	for range 200 {
		packed := Pack(nil, p.any())
		f.Add(packed[:len(packed)-4])
	}
	f.Fuzz(func(t *testing.T, body []byte) {
		key := Event{ID: ID{1}, Clock: 1, Stump: StumpID{ID{2}, 1, 1, 0}}
		_, _ = Unpack(body, key.Stump, key.Clock, key.ID)
		packed := binary.BigEndian.AppendUint32(bytes.Clone(body), new(eventKey).sum(key, body))
		e, err := Unpack(packed, key.Stump, key.Clock, key.ID)
		if err != nil {
			return
		}
		again := Pack(nil, e)
		if e, err = Unpack(again, key.Stump, key.Clock, key.ID); err != nil || !bytes.Equal(Pack(nil, e), again) {
			t.Fatalf("%x does not stay as it is: %v", body, err)
		}
	})
}
