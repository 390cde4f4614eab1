package main

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"

	"barkslip/core/trade"
	"barkslip/core/unit"
	"barkslip/core/weather"
)

var placeOptions = []option{
	{name: "lat", value: "DEGREES", says: "latitude, north positive", need: true},
	{name: "lon", value: "DEGREES", says: "longitude, east positive", need: true},
	{name: "zone", value: "ZONE", says: "time zone such as America/Los_Angeles", need: true},
}

func readPlace(g *given) weather.Place {
	return weather.Place{Lat: g.decimal("lat", -90, 90), Lon: g.decimal("lon", -180, 180), Zone: g.zone("zone")}
}

var heatSum = sum{
	name: "heat", short: "How hot a sealed graft gets, and by when it must be white",
	example: "barkslip reckon heat --lat 38.5 --lon -121.8 --zone America/Los_Angeles --date 2027-05-05 \\\n" +
		"    --low 52F --high 91F --wind 3mph --sealed 10:30",
	options: append(placeOptions[:3:3],
		option{name: "date", value: "DATE", says: "the day of grafting", need: true},
		option{name: "low", value: "TEMPERATURE", says: "the day's lowest", need: true},
		option{name: "high", value: "TEMPERATURE", says: "the day's highest", need: true},
		option{name: "wind", value: "SPEED", says: "wind at the graft", need: true},
		option{name: "altitude", value: "LENGTH", says: "height above the sea", usual: unit.Length(0)},
		option{name: "cloud", value: "OKTAS", says: "eighths of the sky covered", usual: 0.0},
		option{name: "across", value: "LENGTH", says: "diameter of the stump", usual: unit.Length(weather.UsualAcross)},
		option{name: "thick", value: "LENGTH", says: "thickness of the scion", usual: unit.Length(weather.UsualThick)},
		option{name: "sealed", value: "TIME", says: "when it was sealed; without it at sunrise"}),
	work: func(g *given, _ unit.System) (any, trade.Worked, error) {
		day := weather.HeatDay{
			Place: readPlace(g), Date: g.date("date"), Low: g.temperature("low"), High: g.temperature("high"), Wind: g.speed("wind"),
			Cloud: g.decimal("cloud", 0, 8), Across: g.size("across"), Thick: g.size("thick"),
		}
		day.Place.Altitude = read(g, "altitude", parseAltitude)
		if sealed := g.clock("sealed"); g.has("sealed") {
			day.Sealed = &sealed
		}
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		answer, err := weather.Heat(day)
		work := answer.Work
		work.Answer = append(work.Answer, trade.Input{Name: "advice", Value: answer.Advice})
		return answer, work, err
	},
}

// parseAltitude reads a height above the sea, which may lie below it.
func parseAltitude(s string) (unit.Length, error) {
	text, below := strings.CutPrefix(strings.TrimSpace(s), "-")
	l, err := within(parseLength, weather.AltitudeLimits)(text)
	var fault *unit.Error
	if errors.As(err, &fault) {
		return 0, &unit.Error{Given: s, Accepted: fault.Accepted}
	}
	if below {
		l = -l
	}
	return l, nil
}

var callusSum = sum{
	name: "callus", short: "How well callus grows over a list of days",
	long: "Reads a list of days as comma-separated text: a first line with the columns\n" +
		"date,low_c,high_c or date,low_f,high_f, then a line a day.",
	example: "barkslip reckon callus --temps may.csv --lat 38.5 --lon -121.8 --zone America/Los_Angeles --from 2027-05-01",
	options: append([]option{{name: "temps", value: "FILE.csv", says: "the days with their lowest and highest temperature", need: true}},
		append(placeOptions[:3:3],
			option{name: "from", value: "DATE", says: "the first day that counts; without it all do"},
			option{name: "species", value: "NAME", says: "the kind of tree: " + strings.Join(weather.Species(), ", "), usual: weather.Walnut})...),
	work: func(g *given, _ unit.System) (any, trade.Worked, error) {
		file, place := g.text("temps", "a file of days: date,low_c,high_c or date,low_f,high_f"), readPlace(g)
		from, species := g.date("from"), g.text("species", "one of "+strings.Join(weather.Species(), ", "))
		if g.err != nil {
			return nil, trade.Worked{}, g.err
		}
		days, err := readTemps(file)
		if err != nil {
			return nil, trade.Worked{}, err
		}
		answer, err := weather.Callus(place, days, from, species)
		work := answer.Work
		for _, d := range answer.Days {
			work.Answer = append(work.Answer, trade.Input{Name: d.Date.Long(), Value: fmt.Sprintf("%.2f days", d.Callus)})
		}
		return answer, work, err
	},
}

func readTemps(name string) ([]weather.Extremes, error) {
	file, err := openFile("--temps", name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	days, err := weather.ReadTemps(file)
	var fault *trade.Impossible
	if errors.As(err, &fault) {
		return nil, &badInput{option: "--temps", given: &name, at: fault.Given, accepted: fault.Accepted}
	}
	if err != nil {
		return nil, mistaken("--temps", name, "a file that can be read ("+cause(err)+")")
	}
	return days, nil
}

// cause is the plain reason behind an error of the file system.
func cause(err error) string {
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is none"
	case errors.Is(err, fs.ErrPermission):
		return "no permission"
	case errors.Is(err, syscall.ELOOP):
		return "it is a link that leads back to itself"
	case errors.As(err, &path):
		return path.Err.Error()
	}
	return err.Error()
}
