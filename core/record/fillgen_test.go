package record

import (
	"fmt"
	"reflect"
	"strings"
	"time"

	"pgregory.net/rapid"

	"barkslip/core/trade"
	"barkslip/core/unit"
)

// picker chooses a number from 0 to under n; everything in a made-up event
// comes from it, so that events can be drawn at random or counted through.
type picker func(n int) int

func drawn(t *rapid.T) picker {
	return func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") }
}

func counted(from int) picker {
	n := from
	return func(most int) int { n += 7; return n % most }
}

// texts are of the kinds people type: plain, quoted, accented, with markup.
var texts = []string{"", "plain", "two words", `"quoted" \ back`, "Zürich – ½ in", "<b>&amp;</b>", "木 walnut", "a/b,c;d", "a{b}[c]"}

var vocabularies = map[reflect.Type][]string{
	reflect.TypeFor[Bleeding]():   texted(Bleedings),
	reflect.TypeFor[Slip]():       texted(Slips),
	reflect.TypeFor[Cover]():      texted(Covers),
	reflect.TypeFor[Rain]():       append(texted(Rains), ""),
	reflect.TypeFor[GraftState](): texted(GraftStates),
	reflect.TypeFor[Scratch]():    {"", "green", "brown"},
	reflect.TypeFor[Buds]():       {"ps", "p", "x"},
	reflect.TypeFor[Verdict]():    texted(Verdicts),
	reflect.TypeFor[FollowUp]():   texted(FollowUps),
}

// plainWords are the texts with a closed vocabulary, by kind and field.
var plainWords = map[string][]string{
	"failed.Cause": trade.Causes, "nurse-limbs.Leaf": Leaves, "sprouts-rubbed.Leaf": Leaves,
	"seasons-end.Word": SeasonWords, "twined.Material": {"natural", "synthetic"}, "another-year.Work": PutOff, "work-given.To": {"MK", "RK"},
}

func texted[T ~string](words []T) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = string(w)
	}
	return out
}

func (p picker) id() (id ID) {
	for i := range id {
		id[i] = byte(p(256))
	}
	id[0] |= 1
	return id
}

func (p picker) at() time.Time {
	minutes := []int{0, -240, -420, 60, 345, 570, -208}[p(7)]
	return time.Unix(1_600_000_000+int64(p(300_000_000)), 0).In(offsetZone(minutes))
}

func (p picker) measure() Measure {
	mm := float64(p(4_000_000)) / 64
	return []Measure{{}, {unit.Length(mm), ""}, {unit.Length(mm), fmt.Sprint(mm, "mm")}, {0, "0in"}}[p(4)]
}

// fill puts made-up content that holds into every field of a body.
func (p picker) fill(kind string, v reflect.Value) {
	for i := range v.NumField() {
		p.fillField(kind+"."+v.Type().Field(i).Name, v.Field(i))
	}
}

func (p picker) fillField(name string, f reflect.Value) {
	switch f.Interface().(type) {
	case ID:
		f.Set(reflect.ValueOf(p.id()))
		return
	case Measure:
		f.Set(reflect.ValueOf(p.measure()))
		return
	case Degrees:
		f.Set(reflect.ValueOf(Degrees{unit.Temperature(p(30)), fmt.Sprint(p(90), "F")}))
		return
	case unit.Bearing:
		f.SetFloat(float64(p(36000)) / 100)
		return
	case unit.Date:
		f.SetInt(int64(1 + p(30_000)))
		return
	}
	switch f.Kind() {
	case reflect.String:
		words := texts
		if w, ok := vocabularies[f.Type()]; ok {
			words = w
		} else if w, ok := plainWords[name]; ok {
			words = w
		}
		f.SetString(words[p(len(words))])
	case reflect.Int:
		f.SetInt(int64(p(25)))
	case reflect.Float64:
		f.SetFloat(float64(p(2000)) / 32)
	case reflect.Bool:
		f.SetBool(p(2) == 1)
	case reflect.Struct:
		p.fill(name, f)
	case reflect.Slice:
		if n := p(4); n > 0 {
			f.Set(reflect.MakeSlice(f.Type(), n, n))
		}
		for i := range f.Len() {
			p.fill(name, f.Index(i))
		}
	default:
		panic("no made-up content for " + name)
	}
}

// body is a made-up body of a kind that Check passes.
func (p picker) body(code int) Body {
	b := kinds[code]()
	p.fill(b.Kind(), reflect.ValueOf(b).Elem())
	switch b := b.(type) {
	case *BlockMade:
		b.Name += "block"
	case *BlockSet:
		set := [][2]string{{"units", "metric"}, {"frosty", "yes"}, {"latitude", "42.7"}, {"slip-from", "05-10"}, {"not yet known", "x"}}[p(5)]
		b.Setting, b.Value = set[0], set[1]
	case *Same:
		b.What, b.A, b.B = []string{"block", "lot"}[p(2)], p.id().String(), p.id().String()
		if p(3) == 0 {
			b.What, b.A, b.B = "hand", "AB", "CD"
		}
	case *StumpMeasured:
		b.Across = Measure{90, "90mm"}
	case *SlotsMarked:
		b.Slots = append(b.Slots, Slot{40})
	case *ScionSet:
		b.Slot++
		b.Slot = min(b.Slot, 24)
	case *ScionSeen:
		b.Slot, b.Item = min(b.Slot+1, 24), 1+p(SlitItem)
	case *SlotEmpty:
		b.Slot = min(b.Slot+1, 24)
	case *ScionBroke:
		b.Slot = min(b.Slot+1, 24)
	case *Looked:
		b.Slip = []Slip{"", SlipsClean, Drags}[p(3)]
	case *LotReceived:
		b.Name += "lot"
		b.Buds = []Buds{"", Paired, First}[p(3)]
	case *DayWeather:
		b.Cloud = p(9)
		b.RainDepth.Length = min(b.RainDepth.Length, MostRain)
		b.Low.Temperature, b.High.Temperature = unit.Temperature(p(10)), unit.Temperature(10+p(20))
	case *WorkGiven:
		for i := range b.Rows {
			b.Rows[i].Row = 1 + i + b.Rows[i].Row*100
		}
		for i := range b.Stumps {
			b.Stumps[i] = GivenStump{1 + b.Stumps[i].Row, 1 + i + 10*b.Stumps[i].Tree, b.Stumps[i].Limb}
		}
		if len(b.Rows) > 0 {
			b.Stumps = nil
		}
	case *Noted:
		b.Text += "note"
	}
	return b
}

// event is a made-up event around a body.
func (p picker) event(body Body) Event {
	e := Event{ID: p.id(), Clock: 1 + uint64(p(1_000_000)), At: p.at(), Hand: []string{"", "AB", "ÉX"}[p(3)], Body: body}
	if _, ok := body.(onBook); !ok {
		e.Stump = StumpID{p.id(), uint16(1 + p(MaxRow)), uint16(1 + p(MaxTree)), uint8(p(3))}
	}
	for range p(3) {
		e.Replaces = append(e.Replaces, p.id())
	}
	if p(3) > 0 {
		e.Act = p.id()
	}
	return e
}

// foreign is an event of a kind this program does not know, or of a newer
// version of one it does.
func (p picker) foreign() Event {
	name := []string{"bark-mended", "looked", "cut-back", strings.Repeat("long-", 20) + "name"}[p(4)]
	raw := []string{`{}`, `{"a":1}`, `{"depth":{"mm":1.50e1,"typed":"½"},"z":[{"b":null},true],"a":"<&>"}`, `{"x":"\u00e9\ud83c\udf33"}`}[p(4)]
	return p.event(&Foreign{Name: name, V: Version + 1 + p(3), Raw: []byte(raw)})
}

func (p picker) any() Event {
	code := p(len(kinds))
	if code == 0 {
		return p.foreign()
	}
	return p.event(p.body(code))
}
