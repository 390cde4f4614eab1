package record

import (
	"strings"
	"time"

	"barkslip/core/unit"
)

// A season is named by the year in which it ends in the north: that of 2027 runs
// from 1 October 2026 to 30 September 2027. In the south every date lies six
// months later, and the season of 2027 ends with March 2028.

// South says whether the seasons run half a year apart.
func (b *Block) South() bool {
	return b.Lat < 0 || !b.Placed && southernZone(b.ZoneName)
}

// southernZones are the beginnings of the names of time zones that lie in the
// south, for a block whose place was not given.
var southernZones = []string{
	"Australia/", "Antarctica/", "Pacific/Auckland", "Pacific/Chatham", "America/Argentina/", "America/Buenos_Aires", "America/Santiago",
	"America/Punta_Arenas", "Chile/", "America/Montevideo", "America/Asuncion", "America/Sao_Paulo", "Brazil/East", "America/La_Paz", "America/Lima",
	"Africa/Johannesburg", "Africa/Maseru", "Africa/Mbabane", "Africa/Windhoek", "Africa/Gaborone", "Africa/Harare", "Africa/Maputo", "Africa/Lusaka",
	"NZ",
}

func southernZone(zone string) bool {
	for _, begin := range southernZones {
		if strings.HasPrefix(zone, begin) {
			return true
		}
	}
	return false
}

// SeasonOf is the season a day belongs to.
func (b *Block) SeasonOf(d unit.Date) int {
	year, month, _ := d.Parts()
	switch {
	case b.South() && month <= time.March:
		return year - 1
	case !b.South() && month >= time.October:
		return year + 1
	}
	return year
}

// InSeason is the block's day for a date of the north in the year of the season
// given: the same, or six months later. The last of a month stays the last.
func (b *Block) InSeason(season int, month time.Month, day int) unit.Date {
	if !b.South() {
		return unit.MakeDate(season, month, day)
	}
	there := unit.MakeDate(season, month+6, day)
	last := unit.MakeDate(season, month+7, 0)
	if unit.MakeDate(season, month, day) == unit.MakeDate(season, month+1, 0) {
		return last
	}
	return min(there, last)
}

// LeafOut is when a later season's sprouts and shoots start: 1 May.
func (b *Block) LeafOut(season int) unit.Date { return b.InSeason(season, time.May, 1) }

// SeasonEnds is the last day of a season: 30 September.
func (b *Block) SeasonEnds(season int) unit.Date { return b.InSeason(season, time.September, 30) }

// usualPinchUntil is the last day for pinching where the block sets none.
var usualPinchUntil = MonthDay{time.August, 15}

// pinchUntil is the last day of a season for pinching. A block's own date is
// taken as it stands; the usual one is moved half a year in the south.
func (b *Block) LastPinch(season int) unit.Date {
	own := b.PinchUntil
	if own == (MonthDay{}) || own == usualPinchUntil {
		return b.InSeason(season, usualPinchUntil.Month, usualPinchUntil.Day)
	}
	for _, year := range []int{season - 1, season, season + 1} {
		if d := own.In(year); b.SeasonOf(d) == season {
			return d
		}
	}
	return b.SeasonEnds(season)
}
