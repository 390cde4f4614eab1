package part

// Deed is one thing that a key does. A key does one deed on every screen that has
// it; a screen says in its own words what that is there. No two deeds are told
// apart by Shift alone but taking back and putting back, and those, the help and a
// place have another key each that needs no Shift.
type Deed struct {
	Shown string   // the key, as it is shown
	Keys  []string // all of its keys, as they come from the terminal
	Word  string   // in the key line
	Says  string   // in the help, and in the table of all deeds
}

func deed(shown, word, says string, keys ...string) Deed {
	if len(keys) == 0 {
		keys = []string{shown}
	}
	return Deed{Shown: shown, Keys: keys, Word: word, Says: says}
}

// The deeds. Digits are no deed: they answer, or pick among the few things a
// screen is about.
var (
	ToOpen     = deed("Enter", "open", "Open or take what is under the cursor.", "enter")
	ToNext     = deed("n", "next", "Open the next stump that needs work.")
	ToTakeBack = deed("u", "take back", "Take back the last answer given since the program was opened, for all of its stumps.")
	ToPutBack  = deed("U Ctrl-U", "put back", "Put back what was taken back here.", "U", "ctrl+u")
	ToWhy      = deed("w", "why", "Why: the sum in words, and by whose word.")
	ToNote     = deed("m", "note", "A note on the stump under the cursor.")
	ToFind     = deed("/", "find", "Go to a stump: type row/tree, or a tree of this row.")
	ToBack     = deed("Esc", "back", "One step back.", "esc")

	ToRounds  = deed("g", "rounds", "The rounds: what is due, in walking order.")
	ToPlan    = deed("p", "plan", "The plan: will it be done while bark slips, how many to cut back each day, who has which rows, what to load.")
	ToLots    = deed("l", "lots", "Lots of scion wood: see them, receive one.")
	ToTally   = deed("k", "tally", "The tally: what took, what stands, what was lost to what.")
	ToDone    = deed("j", "done", "What was done: on the block since a day, on a stump its whole story.")
	ToWeather = deed("d", "weather", "The weather of a day: record it, read a list, see the coming days.")
	ToBlocks  = deed("b", "blocks", "Another block, or a new one.")
	ToSet     = deed("o", "settings", "The settings.")
	ToPaper   = deed("Ctrl-P", "paper", "On paper or as a file: the day's sheet, tags, a cutting card.", "ctrl+p")

	ToShowOnly = deed("f", "show only", "Show only some, or all again.")
	ToAlong    = deed("Tab", "along", "To the next that counts; Shift-Tab goes the other way.", "tab")
	ToPick     = deed("Space", "pick", "Pick what is under the cursor, or leave it out again.", " ")
	ToRow      = deed("r", "answer row", "One answer for the whole row under the cursor.")
	ToFold     = deed("-", "fold", "Fold to the headings, or unfold.")
	ToMany     = deed("a", "answer all", "One answer for all that are picked or shown.")
	ToMap      = deed("v", "map", "The block from above.")
	ToEnlarge  = deed("z", "figure", "The figure large, then the next one, then back.")

	ToMore   = deed("PgDn", "more", "Read on in its place; = does too.", "pgdown", "=")
	ToSkip   = deed("s", "leave it", "Leave this stump as it is: back to the round, or on to the next that needs work.")
	ToCoach  = deed("c", "coach", "Coach on or off: what to look for, why, what to do when it is not right.")
	ToSettle = deed("e", "disagreements", "Where answers disagree: pick the one that holds, or go to the next stump where they do.")
	ToEnd    = deed("x", "end", "Failed, given up, or grafted against advice, with the cause.")
	ToLimb   = deed("y", "limb", "Add a limb of this tree, as where it forks: a stump of its own.")

	ToPractice = deed("; F4", "practice", "Practice: made-up cases, apart from every book.", ";", "f4")
	ToTimeOn   = deed(",", "time on", "In a made-up life: to the next moment at which something is due.")

	ToMeet = deed(". F5", "meet the crew", "Meet the crew: this book and the crew's journal take from each other what each lacks.", ".", "f5")

	ToHand  = deed("h", "hand", "Another hand: type the initials.")
	ToTime  = deed("t", "time", "Give answers for an earlier time, from notes on paper.")
	ToTheme = deed("* F3", "sunlight", "Sunlight or dark.", "*", "f3")
	ToWords = deed("i F2", "words", "What the marks and the words of the trade mean, with small drawings.", "i", "f2")
	ToHelp  = deed("? F1", "keys", "All keys of this screen.", "?", "f1")
	ToLeave = deed("q", "leave", "Leave the program. Nothing can be lost: every answer is on disk.")
)

// Deeds are all deeds.
func Deeds() []Deed {
	return []Deed{ToOpen, ToNext, ToTakeBack, ToPutBack, ToWhy, ToNote, ToFind, ToBack,
		ToRounds, ToPlan, ToLots, ToTally, ToDone, ToWeather, ToBlocks, ToSet, ToPaper,
		ToShowOnly, ToAlong, ToPick, ToRow, ToFold, ToMany, ToMap, ToEnlarge,
		ToMore, ToSkip, ToCoach, ToSettle, ToEnd, ToLimb, ToPractice, ToTimeOn, ToMeet, ToHand, ToTime, ToTheme, ToWords, ToHelp, ToLeave}
}

// Row is the row of a screen's key table that does the deed.
func (d Deed) Row(do func() Msgs) Row {
	return Row{Binding: On(d.Shown, d.Word, d.Keys...), Says: d.Says, Do: do}
}

// Named is the row with another word in the key line; "" keeps it to the help.
func (r Row) Named(word string) Row {
	r.SetHelp(r.Help().Key, word)
	return r
}

// Told is the row with another sentence in the help.
func (r Row) Told(says string) Row {
	r.Says = says
	return r
}

// Moves are the rows that move a cursor by some places: the arrows by one, Page Up
// and Page Down by ten, Home and End to the first and the last.
func Moves(says string, step func(by int) Msgs) []Row {
	by := func(n int) func() Msgs { return func() Msgs { return step(n) } }
	return []Row{
		{Binding: On("up down", "", "up"), Says: says + " Page Up and Page Down go by ten, Home and End to the first and the last.", Do: by(-1)},
		{Binding: On("", "", "down"), Do: by(1)},
		{Binding: On("", "", "pgup"), Do: by(-10)},
		{Binding: On("", "", "pgdown"), Do: by(10)},
		{Binding: On("", "", "home"), Do: by(-farthest)},
		{Binding: On("", "", "end"), Do: by(farthest)},
	}
}

// farthest is farther than any list goes.
const farthest = 1 << 30
