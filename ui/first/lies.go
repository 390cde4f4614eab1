package first

import (
	"errors"
	"slices"
	"strconv"

	"barkslip/core/unit"
	"barkslip/core/zone"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// mostZones is how many zones are offered by number.
const mostZones = 9

// likelyZone is the zone of the place, or else the laptop's.
func (f *Screen) likelyZone() string {
	if zones := f.zones(); len(zones) > 0 {
		return zones[0]
	}
	return f.x.LocalZone
}

// zones is those to pick from: what was typed may mean them, or they are the zone
// of the place and its neighbours in the country.
func (f *Screen) zones() []string {
	found := f.several
	if found == nil {
		home, err := part.ReadZone(f.x.Zones, f.given["place"])
		var several *part.SeveralZones
		switch {
		case errors.As(err, &several):
			found = several.Zones
		case err == nil:
			if found = zone.Beside(home); found == nil {
				found = []string{home}
			}
		}
	}
	return found[:min(len(found), mostZones)]
}

// zoneTyped is the zone that a text names, or the number of one offered.
func (f *Screen) zoneTyped(text string) (string, error) {
	if n, err := strconv.Atoi(text); err == nil && n >= 1 && n <= len(f.zones()) {
		return f.zones()[n-1], nil
	}
	return part.ReadZone(f.x.Zones, text)
}

func checkZone(f *Screen, text string) error {
	_, err := f.zoneTyped(text)
	var several *part.SeveralZones
	if errors.As(err, &several) {
		f.several = several.Zones
	}
	return err
}

// checkPlace takes a latitude and a longitude, or a place that has a zone.
func checkPlace(f *Screen, text string) error {
	f.several = nil
	_, _, err := part.ReadPosition(text)
	if err != nil && len(zone.Find(text)) > 0 {
		return nil
	}
	return err
}

// disagree says that place and zone do not agree, "" where they do.
func (f *Screen) disagree() string {
	lat, lon, ok := part.Position(f.given["place"])
	if !ok {
		return ""
	}
	return part.Disagree(f.x.Zones, lat, lon, f.given["zone"])
}

func oneToThree(_ *Screen, text string) error {
	if !slices.Contains([]string{"1", "2", "3"}, text) {
		return &unit.Error{Given: text, Accepted: "1, 2 or 3"}
	}
	return nil
}

// goBackTo has a question asked again.
func (f *Screen) goBackTo(name string) {
	f.at = slices.IndexFunc(questions, func(q question) bool { return q.name == name }) - 1
}

// takes keeps an answer; one that says another was wrong has that asked again.
func (f *Screen) takes(name, text string) {
	switch {
	case name == "zone":
		text, _ = f.zoneTyped(text)
	case name == "agree" && text == "1":
		f.several = nil
		delete(f.given, "zone")
		f.goBackTo("zone")
		return
	case name == "agree" && text == "2":
		f.goBackTo("place")
		return
	case name == "place":
		delete(f.given, "zone") // it is offered anew by the place
	}
	f.given[name] = text
}

// zoneLines is the zones offered, by number, as many in a line as there is room.
func (f *Screen) zoneLines() (lines []paper.Line) {
	zones := f.zones()
	if len(zones) == 0 {
		return nil
	}
	const column = 36
	lines = append(lines, nil)
	var l paper.Line
	for i, name := range zones {
		if i > 0 && l.Width()+column > f.x.Width-4 {
			lines, l = append(lines, l), nil
		}
		l = l.Add(paper.Accent, strconv.Itoa(i+1)+"  ").Add(paper.Plain, name).Pad((l.Width()/column + 1) * column)
	}
	return append(lines, l)
}
