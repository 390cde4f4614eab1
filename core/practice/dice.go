package practice

// dice is chance that a seed settles: the same rolls for ever (splitmix64, Steele,
// Lea & Flood 2014).
type dice uint64

func (d *dice) next() uint64 {
	*d += 0x9e3779b97f4a7c15
	z := uint64(*d)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// of is a whole number from least to most.
func (d *dice) of(least, most int) int { return least + int(d.next()%uint64(most-least+1)) }

// chance is true once in n.
func (d *dice) chance(n int) bool { return d.of(1, n) == 1 }

// pick is one of several.
func pick[T any](d *dice, of ...T) T { return of[d.of(0, len(of)-1)] }

// shuffle puts a list into an order that chance settles.
func shuffle[T any](d *dice, list []T) {
	for i := len(list) - 1; i > 0; i-- {
		j := d.of(0, i)
		list[i], list[j] = list[j], list[i]
	}
}
