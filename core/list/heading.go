package list

import (
	"slices"
	"strings"
)

// heading reads the names of the columns.
func (r *reader) heading(line int, cells []string) {
	r.at, r.width = map[string]int{}, len(cells)
	for i, cell := range cells {
		name := strings.ToLower(clean(cell))
		_, twice := r.at[name]
		switch {
		case name == "": // nothing may stand below it
		case !slices.Contains(columns, name):
			r.problem(line, short(name), "there is no such column; the columns are %s", strings.Join(columns, ","))
		case twice:
			r.problem(line, name, "the column stands twice")
		default:
			r.at[name] = i
			r.list.Columns = append(r.list.Columns, name)
		}
	}
	for _, name := range columns[:2] {
		if _, ok := r.at[name]; !ok {
			r.problem(line, name, "the column is missing; the first line names the columns: %s", strings.Join(columns, ","))
		}
	}
	r.full = len(r.problems) > 0 // without its columns no line makes sense
}
