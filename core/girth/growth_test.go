package girth

import (
	"testing"

	"barkslip/core/unit"
)

func TestShootReachesALength(t *testing.T) {
	june := unit.MakeDate(2027, 6, 1)
	for _, c := range []struct {
		name   string
		shoots []Shoot
		long   unit.Length
		days   int // after 1 June; -1 for no forecast
	}{
		{"two measures, 10 mm a day", []Shoot{{june, 100}, {june.Add(10), 200}}, 300, 20},
		{"on from the newest", []Shoot{{june, 100}, {june.Add(10), 190}, {june.Add(20), 300}}, 400, 30},
		{"only the last three tell", []Shoot{{june, 50}, {june.Add(40), 100}, {june.Add(50), 200}, {june.Add(60), 300}}, 400, 70},
		{"a part of a day is a day", []Shoot{{june, 100}, {june.Add(10), 200}}, 301, 21},
		{"long enough already", []Shoot{{june, 100}, {june.Add(10), 310}, {june.Add(20), 400}}, 300, 10},
		{"out of order", []Shoot{{june.Add(10), 200}, {june, 100}}, 300, 20},
		{"one measure", []Shoot{{june, 100}}, 300, -1},
		{"none", nil, 300, -1},
		{"two on one day", []Shoot{{june, 100}, {june, 120}}, 300, -1},
		{"not growing", []Shoot{{june, 100}, {june.Add(10), 100}}, 300, -1},
		{"broken", []Shoot{{june, 200}, {june.Add(10), 100}}, 300, -1},
		{"over a year off", []Shoot{{june, 100}, {june.Add(10), 101}}, 300, -1},
	} {
		got, ok := Reaches(c.shoots, c.long)
		if ok != (c.days >= 0) || ok && got != june.Add(c.days) {
			t.Errorf("%s: %v (%v), want %d days after %v", c.name, got, ok, c.days, june)
		}
	}
}

func TestNextFootIsAFootOn(t *testing.T) {
	june := unit.MakeDate(2027, 6, 1)
	shoots := []Shoot{{june, 200}, {june.Add(10), 200 + unit.Foot/2}}
	if got, ok := NextFoot(shoots, 200); !ok || got != june.Add(20) {
		t.Errorf("next tie on %v (%v), want %v", got, ok, june.Add(20))
	}
}
