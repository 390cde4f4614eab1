package first

import (
	"errors"
	"fmt"
	"strconv"

	"barkslip/core/list"
	"barkslip/core/record"
	"barkslip/core/unit"
	"barkslip/ui/paper"
	"barkslip/ui/part"
)

// question is one question of the form.
type question struct {
	name, words, because, asks string
	likely                     func(f *Screen) string
	check                      func(f *Screen, text string) error
	skip                       func(f *Screen) bool
}

func always(s string) func(*Screen) string { return func(*Screen) string { return s } }

var questions = []question{
	{"hand", "Whose hand is it?", "Your initials go with every answer.", "initials, such as RK",
		func(f *Screen) string { return f.x.Prefs.Hand }, checkHand, func(f *Screen) bool { return f.x.Hand != "" }},
	{"name", "What is the block called?", "The name on the gate will do.", "name", always(""), notEmpty, nil},
	{"file", "Which list?", "A CSV file with columns row and tree; also limb, across, stock, variety, note.", "path of the file", always(""), checkFile,
		func(f *Screen) bool { return !f.list }},
	{"rows", "How many rows?", "Rows are numbered from 1.", "rows", always("12"), wholeUpTo(record.MaxRow), func(f *Screen) bool { return f.list }},
	{"trees", "How many trees in a row?", "Trees are numbered from 1 along each row; gaps can be left standing.", "trees", always("20"), checkTrees,
		func(f *Screen) bool { return f.list }},
	{"units", "Inches, or metric?", "Lengths may be typed in either at any time.", "us or metric", always("us"), checkUnits, nil},
	{"place", "Where does it lie?", "For the time zone, sunrise and the heat of the sun on a sealed graft. Leave it empty if you do not know.",
		"latitude longitude, such as 42.7 -77.2, or a place such as California", always("-"), checkPlace, nil},
	{"zone", "In which time zone does the block lie?", "Days and clocks are the block's own, not the laptop's.", "time zone, or a place in it, or a number",
		(*Screen).likelyZone, checkZone, nil},
	{"agree", "The place and the time zone do not agree.", "", "1 the zone again   2 the place again   3 both are right", always(""), oneToThree,
		func(f *Screen) bool { return f.disagree() == "" }},
	{"variety", "Which variety is planned?", "A stump can have its own. Wood of another variety is warned of.", "variety", always("-"), nil, nil},
	{"graft-height", "At what height do you want the grafts?", "The cut-back stands 6 in higher, for the fresh cut.", "height", func(f *Screen) string {
		if f.given["units"] == "metric" {
			return "90cm"
		}
		return "36in"
	}, checkHeight, nil},
}

func notEmpty(_ *Screen, text string) error {
	if text == "" {
		return errors.New("type a name first")
	}
	return nil
}

func checkHand(f *Screen, text string) error {
	return part.CheckInitials(text)
}

func wholeUpTo(most int) func(*Screen, string) error {
	return func(_ *Screen, text string) error {
		if n, err := strconv.Atoi(text); err != nil || n < 1 || n > most {
			return &unit.Error{Given: text, Accepted: fmt.Sprintf("a whole number from 1 to %d", most)}
		}
		return nil
	}
}

// mostStumps is the most stumps one block may be begun with.
const mostStumps = 200_000

func checkTrees(f *Screen, text string) error {
	if err := wholeUpTo(record.MaxTree)(f, text); err != nil {
		return err
	}
	rows, _ := strconv.Atoi(f.given["rows"])
	trees, _ := strconv.Atoi(text)
	if rows*trees > mostStumps {
		return fmt.Errorf("%d rows of %d are %d stumps; a block begins with at most %d", rows, trees, rows*trees, mostStumps)
	}
	return nil
}

func checkUnits(_ *Screen, text string) error { _, err := unit.ParseSystem(text); return err }

func checkHeight(f *Screen, text string) error {
	l, err := unit.ParseLength(text, f.units().Bare())
	if err == nil && (l < 4*unit.Inch || l > 5*unit.Metre) {
		err = &unit.Error{Given: text, Accepted: "a height from 4 in (10 cm) to 5 m"}
	}
	return err
}

func (f *Screen) units() unit.System {
	sys, _ := unit.ParseSystem(f.given["units"])
	return sys
}

func checkFile(f *Screen, text string) error {
	_, err := f.readList(text)
	return err
}

// readList reads the stump list; what is wrong with it is said by line and
// column.
func (f *Screen) readList(path string) (list.List, error) {
	if path == "" {
		return list.List{}, errors.New("type the path of the list first")
	}
	file, err := f.x.OpenFile(path)
	if err != nil {
		return list.List{}, fmt.Errorf("the list cannot be opened: %s", paper.Shorten(path, 60))
	}
	defer file.Close()
	l, problems := list.Read(file, f.units().Bare())
	if len(problems) > 0 {
		return l, fmt.Errorf("nothing added: %s (%d in all)", problems[0], len(problems))
	}
	return l, nil
}
