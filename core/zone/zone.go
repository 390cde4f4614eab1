// Package zone finds the time zone of a place: by a name people know it by, or as
// the nearest to a latitude and longitude. It knows where zones lie, not their
// clocks: those are handed in.
package zone

import (
	"cmp"
	_ "embed"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
)

// The tables of the tz database (IANA), which are in the public domain.
var (
	//go:embed zones.tab
	zonesTable string
	//go:embed countries.tab
	countriesTable string
)

// Zone is one time zone and the place it is named for.
type Zone struct {
	Name      string
	Lat, Lon  float64
	Countries []string // codes, the one of the place first
	Part      string   // of the country; "" where it has no other zone
}

var (
	zones     = readZones(zonesTable)
	countries = readCountries(countriesTable)
)

// City is the last part of the name in words: Los Angeles.
func (z Zone) City() string {
	return strings.ReplaceAll(z.Name[strings.LastIndex(z.Name, "/")+1:], "_", " ")
}

func lines(table string) (out [][]string) {
	for _, line := range strings.Split(table, "\n") {
		if fields := strings.Split(line, "\t"); !strings.HasPrefix(line, "#") && len(fields) >= 2 {
			out = append(out, fields)
		}
	}
	return out
}

func readZones(table string) (out []Zone) {
	for _, f := range lines(table) {
		z := Zone{Name: f[2], Countries: strings.Split(f[0], ",")}
		at := 1 + strings.IndexAny(f[1][1:], "+-")
		z.Lat, z.Lon = degrees(f[1][:at], 2), degrees(f[1][at:], 3)
		if len(f) > 3 {
			z.Part = f[3]
		}
		out = append(out, z)
	}
	return out
}

// degrees reads ±DDMM or ±DDMMSS, whose degrees have so many digits.
func degrees(text string, digits int) float64 {
	whole, _ := strconv.ParseFloat(text[1:1+digits], 64)
	minutes, _ := strconv.ParseFloat(text[1+digits:3+digits], 64)
	seconds, _ := strconv.ParseFloat("0"+text[3+digits:], 64)
	d := whole + minutes/60 + seconds/3600
	if text[0] == '-' {
		return -d
	}
	return d
}

func readCountries(table string) map[string]string {
	out := map[string]string{}
	for _, f := range lines(table) {
		out[f[0]] = f[1]
	}
	return out
}

// named is the zone of a name, in any case of letters.
func named(name string) (Zone, bool) {
	for _, z := range zones {
		if strings.EqualFold(z.Name, name) {
			return z, true
		}
	}
	return Zone{}, false
}

// Near is the name of the zone nearest to a place, of the zones' own places and
// of the regions that are known.
func Near(lat, lon float64) string {
	best, nearest := "", math.Inf(1)
	try := func(name string, atLat, atLon float64) {
		if d := distance(lat, lon, atLat, atLon); d < nearest {
			best, nearest = name, d
		}
	}
	for _, z := range zones {
		try(z.Name, z.Lat, z.Lon)
	}
	for _, r := range regions {
		if r.placed() {
			try(r.zone, r.lat, r.lon)
		}
	}
	return best
}

// distance is the angle between two places on the globe, in degrees.
func distance(lat, lon, toLat, toLon float64) float64 {
	const rad = math.Pi / 180
	c := math.Sin(lat*rad)*math.Sin(toLat*rad) + math.Cos(lat*rad)*math.Cos(toLat*rad)*math.Cos((lon-toLon)*rad)
	return math.Acos(max(-1, min(1, c))) / rad
}

// Beside is the zones of the country a zone lies in, itself first and then by how
// near they lie to it; those of a part of a state, such as
// America/Indiana/Knox, behind the others.
func Beside(name string) []string {
	home, ok := named(name)
	if !ok {
		return nil
	}
	var same []Zone
	for _, z := range zones {
		if slices.Contains(z.Countries, home.Countries[0]) {
			same = append(same, z)
		}
	}
	away := func(z Zone) float64 { return distance(home.Lat, home.Lon, z.Lat, z.Lon) }
	slices.SortStableFunc(same, func(a, b Zone) int { return cmp.Or(small(a, home)-small(b, home), cmp.Compare(away(a), away(b))) })
	var out []string
	for _, z := range same {
		out = append(out, z.Name)
	}
	return out
}

// small is 1 for a zone of a part of a state, but for the one at home.
func small(z, home Zone) int {
	if z.Name != home.Name && strings.Count(z.Name, "/") > 1 {
		return 1
	}
	return 0
}

// MostApart is by how many hours the clock of a zone may be off the sun at a place
// before the two are asked about.
const MostApart = 2

// Apart is by how many hours a zone's winter clock is off the sun's time at a
// longitude.
func Apart(lon float64, z *time.Location) float64 {
	winter := math.Inf(1)
	for _, m := range []time.Month{time.January, time.July} {
		_, offset := time.Date(2027, m, 1, 12, 0, 0, 0, z).Zone()
		winter = min(winter, float64(offset)/3600)
	}
	off := math.Abs(math.Mod(winter-lon/15, 24))
	return min(off, 24-off)
}
