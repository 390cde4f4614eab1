package tally

// Interval is a 95 % interval.
type Interval struct {
	Low, High float64
}

// Wilson is the 95 % interval of a rate, within 0 to 1; of none judged it is all
// of that. Wilson 1927, J. Amer. Statist. Assoc. 22:209.
func Wilson(c Counts) Interval { return c.share().Wilson() }

// Difference is the 95 % interval of one rate less another, within -1 to 1, by
// squaring and adding. Newcombe 1998, Statistics in Medicine 17:873, method 10.
func Difference(a, b Counts) Interval { return a.share().Less(b.share()) }

func (c Counts) share() Share { return Share{Alive: float64(c.Alive), Of: float64(c.Of)} }
