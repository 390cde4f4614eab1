package block

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// setting is one row of the block's settings.
type setting struct {
	name, word, asks string
	show             func(b *record.Block) string
}

// settingRows lists the settings as they are shown and asked.
var settingRows = []setting{
	{"name", "name", "the block's name", func(b *record.Block) string { return b.Name }},
	{"units", "units", "us or metric", func(b *record.Block) string { return b.Units.String() }},
	{"zone", "time zone", "or a place in it: New York, California", func(b *record.Block) string { return b.ZoneName }},
	{"latitude", "latitude", "degrees, north above 0", func(b *record.Block) string { return degrees(b, b.Lat) }},
	{"longitude", "longitude", "degrees, east above 0", func(b *record.Block) string { return degrees(b, b.Lon) }},
	{"altitude", "altitude", "such as 700ft or 210m", func(b *record.Block) string { return shown(b, b.Altitude) }},
	{"species", "stock", "species of the stumps", func(b *record.Block) string { return b.Species }},
	{"variety", "variety planned", "unless a stump says otherwise", func(b *record.Block) string { return b.Variety }},
	{"graft-height", "graft height", "wanted, such as 36in", func(b *record.Block) string { return shown(b, b.GraftHeight) }},
	{"browse", "browse height", "to which animals eat, such as 6ft", func(b *record.Block) string { return shown(b, b.Browse) }},
	{"frosty", "frosty", "yes or no: late frosts", func(b *record.Block) string { return yesNo(b.Frosty) }},
	{"earwigs", "earwigs", "yes or no: a problem here", func(b *record.Block) string { return yesNo(b.Earwigs) }},
	{"row-spacing", "between rows", "such as 30ft", func(b *record.Block) string { return shown(b, b.RowSpacing) }},
	{"tree-spacing", "between trees", "such as 25ft", func(b *record.Block) string { return shown(b, b.TreeSpacing) }},
	{"slip-from", "bark slips from", "day and month, 10 May", func(b *record.Block) string { return monthDay(b.SlipFrom) }},
	{"slip-to", "bark slips until", "day and month, 10 Jun", func(b *record.Block) string { return monthDay(b.SlipTo) }},
	{"wait-days", "days to graft", "after cutting back, 3 to 21; 7 unless set", func(b *record.Block) string { return number(b.Wait) }},
	{"a-day", "grafted a day", "stumps the crew grafts a day", func(b *record.Block) string { return number(b.PerDay) }},
	{"days-off", "days off", "such as sat sun, 9 May; none clears", func(b *record.Block) string { return b.Off.Words() }},
	{"hands", "the crew", "initials, such as MK RK; none clears", func(b *record.Block) string { return strings.Join(b.Hands, " ") }},
	{"pinch-until", "pinch until", "day and month, 15 Aug", func(b *record.Block) string { return monthDay(b.PinchUntil) }},
	{"corner", "corner", "where row 1 tree 1 stands, 42.70012 -77.20034", func(b *record.Block) string { return b.Lay.CornerWords() }},
	{"row-bearing", "rows run to", "from tree 1 to tree 2, true north 0: 20 or ne", func(b *record.Block) string { return b.Lay.BearingWords() }},
	{"next-row", "row 2 lies", "right or left of row 1, as you look along it", func(b *record.Block) string { return b.Lay.SideWords() }},
}

func degrees(b *record.Block, v float64) string {
	if !b.Placed {
		return ""
	}
	return fmt.Sprintf("%g", v)
}

func shown(b *record.Block, m record.Measure) string {
	if !m.Given() {
		return ""
	}
	return b.Units.Length(m.Length)
}

func yesNo(v bool) string {
	if v {
		return "yes"
	}
	return "no"
}

func number(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

func monthDay(m record.MonthDay) string {
	if m.Day == 0 {
		return ""
	}
	return m.In(2028).Short()
}

// settings lists the block's settings; picking one asks for its value.
func (b *Screen) settings() part.Msgs {
	site := b.x.Site()
	var items []part.Item
	for _, s := range settingRows {
		value := s.show(site)
		if value == "" {
			value = "not set"
		}
		items = append(items, part.Item{Word: s.word, Meaning: value, Take: func() part.Msgs { return b.askSetting(s) }})
	}
	if b.x.Copies != nil {
		items = append(items, part.Item{Word: "copies", Meaning: copyWords(b.x.Copies()), Take: func() part.Msgs {
			if _, err := b.x.Copies(); err != nil {
				return part.Fails(err)
			}
			return part.Says("A copy a day is kept beside the book. barkslip restore --list lists them, barkslip restore --newest brings one back.")
		}})
	}
	if b.x.Meeting != nil && !b.x.MadeUp() {
		items = append(items, part.Item{Word: "the crew's books", Meaning: b.x.CrewWords(), Take: func() part.Msgs { return b.x.PickCrew("") }})
	}
	return b.x.Picks("Settings of "+site.Name, "Pick one to change it; the old value stays in the journal.", items)
}

// copyWords are the days of the copies kept beside the book.
func copyWords(days []time.Time, err error) string {
	if err != nil {
		return "today's was NOT made; Enter says why"
	}
	if len(days) == 0 {
		return "none beside the book yet; one a day is kept"
	}
	var words []string
	for _, d := range days {
		words = append(words, d.Format("2 Jan"))
	}
	return "beside the book: " + strings.Join(words, ", ")
}

func (b *Screen) askSetting(s setting) part.Msgs {
	title := strings.ToUpper(s.word[:1]) + s.word[1:]
	return b.x.Asks(title+" ("+s.asks+"):", "", true, func(text string) (part.Msgs, error) {
		value := part.Typed(text)
		if s.name == "zone" {
			zone, err := part.ReadZone(b.x.Zones, value)
			var several *part.SeveralZones
			if errors.As(err, &several) {
				return b.pickZone(s, several), nil
			}
			if err != nil {
				return nil, err
			}
			value = zone
		}
		return b.agreed(s, value)
	})
}

// pickZone picks one of the zones that a text may mean.
func (b *Screen) pickZone(s setting, of *part.SeveralZones) part.Msgs {
	var items []part.Item
	for _, name := range of.Zones {
		items = append(items, part.Item{Word: name, Take: func() part.Msgs {
			msgs, err := b.agreed(s, name)
			return msgs.And(part.Fails(err)...)
		}})
	}
	return b.x.Picks("Which time zone?", of.Error(), items)
}

// agreed writes a setting, once place and time zone agree or it was asked whether
// both are right.
func (b *Screen) agreed(s setting, value string) (part.Msgs, error) {
	keep := func() (part.Msgs, error) {
		return b.set(s.name, value, func() part.Msgs { return part.Msgs{part.Reload{}}.And(b.settings()...) })
	}
	says := b.disagree(s.name, value)
	if says == "" {
		return keep()
	}
	return b.x.Picks("The place and the time zone do not agree.", says, []part.Item{
		{Word: "type it again", Meaning: s.word, Take: func() part.Msgs { return b.askSetting(s) }},
		{Word: "leave it", Meaning: "as it was set before", Take: b.settings},
		{Word: "both are right", Meaning: "keep " + value, Take: func() part.Msgs {
			msgs, err := keep()
			return msgs.And(part.Fails(err)...)
		}},
	}), nil
}

// disagree says that a zone or a longitude would not agree with the other.
func (b *Screen) disagree(name, value string) string {
	site := b.x.Site()
	lon, zone := site.Lon, site.ZoneName
	switch name {
	case "zone":
		zone = value
	case "longitude":
		typed, err := strconv.ParseFloat(value, 64)
		if err != nil {
			return ""
		}
		lon = typed
	default:
		return ""
	}
	if !site.Placed || zone == "" {
		return ""
	}
	return part.Disagree(b.x.Zones, site.Lat, lon, zone)
}

// set writes one setting, replacing the one that stands; then is done once it is on disk.
func (b *Screen) set(name, value string, then func() part.Msgs) (part.Msgs, error) {
	var body record.Body = &record.BlockSet{Block: b.x.Block, Setting: name, Value: value}
	switch name {
	case "corner":
		lat, lon, err := part.ReadPosition(value)
		if err != nil {
			return nil, err
		}
		body = &record.BlockSet{Block: b.x.Block, Setting: name, Value: strings.TrimSpace(lat + " " + lon)}
	case "name":
		if value == "" {
			return nil, &unit.Error{Given: value, Accepted: "a name"}
		}
		body = &record.BlockMade{Block: b.x.Block, Name: value}
	case "days-off":
		off, err := part.DaysOff(value, b.x.Site().Day(b.x.Now()), b.x.Site().Units)
		if err != nil {
			return nil, err
		}
		body = &record.BlockSet{Block: b.x.Block, Setting: name, Value: off}
	case "slip-from", "slip-to", "pinch-until":
		day, err := unit.ReadDate(value, b.x.Site().Day(b.x.Now()), b.x.Site().Units)
		if err != nil {
			return nil, err
		}
		body = &record.BlockSet{Block: b.x.Block, Setting: name, Value: day.String()[len("2027-"):]}
	}
	if err := record.Check(record.Event{Body: body}); err != nil {
		return nil, err
	}
	return b.x.AnswerLater(body, b.x.Now(), then)
}
