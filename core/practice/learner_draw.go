package practice

// draws is a stream of made-up chance: splitmix64 of G. Steele, D. Lea and
// C. Flood, 2014. The same seed draws the same.
type draws uint64

func (d *draws) next() uint64 {
	*d += 0x9e3779b97f4a7c15
	z := uint64(*d)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// mix puts some things in an order of chance.
func mix[T any](d *draws, list []T) {
	for i := len(list) - 1; i > 0; i-- {
		j := int(d.next() % uint64(i+1))
		list[i], list[j] = list[j], list[i]
	}
}
