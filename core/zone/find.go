package zone

import (
	"slices"
	"strings"
)

// leastBegun is how many letters a name that is only begun must have.
const leastBegun = 4

// Find is the names of the zones that a text may mean, the likeliest first: a
// zone's own name or its city, a common name of a zone, a state or region, a
// country, or four letters or more that one of these begins with. In "Yolo,
// California" the first part that is known counts. None if nothing is known by it.
func Find(text string) []string {
	if found := find(plain(text)); len(found) > 0 {
		return found
	}
	for _, part := range strings.Split(text, ",") {
		if found := find(plain(part)); len(found) > 0 {
			return found
		}
	}
	return nil
}

// plain is a name in small letters, without what is only in its spelling.
func plain(text string) string {
	text = strings.NewReplacer("_", " ", "-", " ", ".", "", "é", "e", "è", "e").Replace(strings.ToLower(text))
	words := strings.Fields(text)
	for len(words) > 1 && slices.Contains([]string{"county", "time", "zone", "state", "valley", "standard"}, words[len(words)-1]) {
		if whole := strings.Join(words, " "); known(whole) {
			break
		}
		words = words[:len(words)-1]
	}
	return strings.Join(words, " ")
}

func known(name string) bool {
	return slices.ContainsFunc(regions, func(r region) bool { return r.name == name })
}

func find(name string) []string {
	if name == "" {
		return nil
	}
	for _, same := range []func(have string) bool{
		func(have string) bool { return have == name },
		func(have string) bool { return len(name) >= leastBegun && strings.HasPrefix(have, name) },
	} {
		if found := matching(same); len(found) > 0 {
			return found
		}
	}
	return nil
}

// matching is the zones one of whose names fits, each once: zones and regions
// before countries.
func matching(fits func(have string) bool) (out []string) {
	add := func(name string) {
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	for _, r := range regions {
		if fits(r.name) {
			add(r.zone)
		}
	}
	for _, z := range zones {
		if fits(plainZone(z.Name)) || fits(strings.ToLower(z.City())) {
			add(z.Name)
		}
	}
	if len(out) > 0 {
		return out
	}
	for _, z := range zones {
		for _, code := range z.Countries {
			if fits(strings.ToLower(countries[code])) {
				add(z.Name)
			}
		}
	}
	for short, code := range shortNames {
		if !fits(short) {
			continue
		}
		for _, z := range zones {
			if slices.Contains(z.Countries, code) {
				add(z.Name)
			}
		}
	}
	return out
}

func plainZone(name string) string {
	return strings.NewReplacer("_", " ", "-", " ").Replace(strings.ToLower(name))
}
