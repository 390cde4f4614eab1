package record

import "barkslip/core/unit"

// fields is what a body's fields are written to or read from: JSON and the
// packed form each have a writer and a reader. A field left at nought is not
// written.
type fields interface {
	text(name string, v *string)
	number(name string, v *int)
	real(name string, v *float64)
	flag(name string, v *bool)
	length(name string, v *Measure)
	degrees(name string, v *Degrees)
	bearing(name string, v *unit.Bearing)
	date(name string, v *unit.Date)
	id(name string, v *ID)
	// list visits n items; when reading, grow is told how many there are first.
	list(name string, n int, grow func(n int), each func(i int, f fields))
}

// word visits a text of a closed vocabulary.
func word[T ~string](f fields, name string, v *T) {
	s := string(*v)
	f.text(name, &s)
	*v = T(s)
}

func listOf[T any](f fields, name string, v *[]T, each func(*T, fields)) {
	f.list(name, len(*v), func(n int) { *v = make([]T, n) }, func(i int, f fields) { each(&(*v)[i], f) })
}
