package paper

import "github.com/charmbracelet/lipgloss"

// shade is a colour as each kind of terminal has it. The numbers of the 256 are
// of those that no terminal's settings change; the sixteen are as the terminal
// has them.
type shade struct{ full, of256, of16 string }

func (s shade) colour() lipgloss.TerminalColor {
	return lipgloss.CompleteColor{TrueColor: s.full, ANSI256: s.of256, ANSI: s.of16}
}

// The dark theme is a walnut hull at night: a ground of its own on every cell, so
// that it reads on any terminal, light paper, one accent, amber for what runs out
// and green for growth.
var (
	hull   = shade{"#14110d", "233", "0"}
	page   = shade{"#e9e2d3", "254", "7"}
	bright = shade{"#fffaf0", "231", "15"}
	moon   = shade{"#f4efe4", "255", "15"}
	dust   = shade{"#aaa292", "248", "7"}
	sky    = shade{"#78cfd2", "80", "14"}
	amber  = shade{"#f5b041", "214", "11"}
	leaf   = shade{"#9ccf6a", "114", "10"}
	bark   = shade{"#6b3a00", "52", "1"}
)

var dark = [inks]look{
	Plain:   {fore: page, back: hull},
	Strong:  {fore: bright, back: hull, bold: true},
	Faint:   {fore: dust, back: hull},
	Accent:  {fore: sky, back: hull, bold: true},
	Warn:    {fore: amber, back: hull, bold: true},
	Growth:  {fore: leaf, back: hull},
	Turned:  {fore: hull, back: moon, bold: true},
	Alarm:   {fore: hull, back: amber, bold: true},
	Lined:   {fore: amber, back: hull, line: true},
	Present: {fore: hull, back: sky, bold: true},
	Late:    {fore: bark, back: amber},
}

// The sunlight theme is black on white: bold for the question and the keys, dark
// colours only beside words that say the same, the cursor and alarms turned.
var (
	white = shade{"#ffffff", "231", "15"}
	black = shade{"#000000", "16", "0"}
	soot  = shade{"#3a3a3a", "237", "0"}
	navy  = shade{"#00006e", "17", "0"}
	rust  = shade{"#7a1500", "88", "1"}
	moss  = shade{"#005000", "22", "0"}
	peat  = shade{"#4a0d00", "52", "0"}
	gold  = shade{"#ffb000", "214", "11"}
)

var sunlight = [inks]look{
	Plain:   {fore: black, back: white},
	Strong:  {fore: black, back: white, bold: true},
	Faint:   {fore: soot, back: white},
	Accent:  {fore: navy, back: white, bold: true},
	Warn:    {fore: rust, back: white},
	Growth:  {fore: moss, back: white},
	Turned:  {fore: white, back: black},
	Alarm:   {fore: white, back: rust, bold: true},
	Lined:   {fore: rust, back: white, line: true},
	Present: {fore: white, back: navy, bold: true},
	Late:    {fore: peat, back: gold},
}

// The plain theme has no colour and leaves the ground as it is.
var plain = [inks]look{
	Strong:  {bold: true},
	Accent:  {bold: true},
	Warn:    {bold: true},
	Turned:  {turns: true},
	Alarm:   {turns: true, bold: true},
	Lined:   {line: true},
	Present: {turns: true, bold: true},
	Late:    {turns: true},
}
