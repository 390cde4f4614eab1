package part

import (
	"strconv"
	"strings"
	"unicode"

	"barkslip/core/record"
	"barkslip/core/unit"
)

// ReadZone is the name of a time zone, in any case of letters. A name without
// its place, such as EST, is refused: most of those keep no summer time.
func ReadZone(zones record.Zones, text string) (string, error) {
	bad := &unit.Error{Given: text, Accepted: "a time zone by its place, such as America/New_York"}
	if text != "UTC" && !strings.Contains(text, "/") {
		return "", bad
	}
	for _, name := range []string{text, properCase(text)} {
		if _, err := zones(name); err == nil {
			return name, nil
		}
	}
	return "", bad
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
