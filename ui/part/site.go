package part

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/core/zone"
)

// SeveralZones is a text that may mean more zones than one, the likeliest first.
type SeveralZones struct {
	Given string
	Zones []string
}

func (e *SeveralZones) Error() string {
	return fmt.Sprintf("%s has %d time zones; pick one.", e.Given, len(e.Zones))
}

// ReadZone is the name of a time zone, as it is or by the name of a place that lies
// in it: America/New_York, New York, California, 42.7 -77.2. A name without a
// place, such as EST, is refused: most of those keep no summer time.
func ReadZone(zones record.Zones, text string) (string, error) {
	if text == "UTC" || strings.Contains(text, "/") {
		for _, name := range []string{text, properCase(text)} {
			if _, err := zones(name); err == nil {
				return name, nil
			}
		}
	}
	found := zone.Find(text)
	if lat, lon, ok := Position(text); ok {
		found = []string{zone.Near(lat, lon)}
	}
	switch len(found) {
	case 0:
		return "", &unit.Error{Given: text, Accepted: "a place, such as California or New York, or a time zone such as America/New_York"}
	case 1:
		return found[0], nil
	}
	return "", &SeveralZones{text, found}
}

// Position reads a latitude and a longitude as ReadPosition does; ok is false
// where the text is none.
func Position(text string) (lat, lon float64, ok bool) {
	north, east, err := ReadPosition(text)
	if err != nil || north == "" {
		return 0, 0, false
	}
	lat, errLat := strconv.ParseFloat(north, 64)
	lon, errLon := strconv.ParseFloat(east, 64)
	return lat, lon, errLat == nil && errLon == nil
}

// Disagree says in a plain sentence that a place and a time zone do not agree,
// both shown; "" where they do.
func Disagree(zones record.Zones, lat, lon float64, name string) string {
	z, err := zones(name)
	if err != nil {
		return ""
	}
	off := zone.Apart(lon, z)
	if off <= zone.MostApart {
		return ""
	}
	return fmt.Sprintf("%g %g and the time zone %s do not agree: its clock is %.0f hours off the sun there. The zone nearest to that place is %s.",
		lat, lon, name, off, zone.Near(lat, lon))
}

// properCase gives each part of a name a capital: america/new_york becomes
// America/New_York.
func properCase(text string) string {
	begins := true
	return strings.Map(func(r rune) rune {
		out := unicode.ToLower(r)
		if begins {
			out = unicode.ToUpper(r)
		}
		begins = r == '/' || r == '_' || r == '-'
		return out
	}, text)
}

// ReadPosition reads a latitude and a longitude, 42.7 -77.2 or 42.7N 77.2W; "-" or
// nothing for not known.
func ReadPosition(text string) (lat, lon string, err error) {
	text = strings.NewReplacer(",", " ", "°", "").Replace(strings.ToUpper(text))
	for _, side := range []string{"N", "S", "E", "W"} {
		text = strings.ReplaceAll(text, " "+side, side)
	}
	words := strings.Fields(text)
	if len(words) == 0 || text == "-" {
		return "", "", nil
	}
	bad := &unit.Error{Given: text, Accepted: "latitude and longitude in degrees, such as 42.7 -77.2 or 42.7N 77.2W"}
	if len(words) != 2 {
		return "", "", bad
	}
	for i, axis := range []struct {
		most        float64
		plus, minus string
	}{{90, "N", "S"}, {180, "E", "W"}} {
		word, negative := strings.CutSuffix(words[i], axis.minus)
		word = strings.TrimSuffix(word, axis.plus)
		v, err := strconv.ParseFloat(word, 64)
		if err != nil || !(v >= -axis.most && v <= axis.most) || negative && v < 0 {
			return "", "", bad
		}
		if negative {
			word = "-" + word
		}
		words[i] = word
	}
	return words[0], words[1], nil
}
