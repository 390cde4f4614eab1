package practice

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
)

// FileVersion is the version of a learner's file. It is raised when a program that
// knows only the version before could misread one; fields that are new are kept as
// they are by those that do not know them.
const FileVersion = 1

// Errors of a learner's file that cannot be read.
var (
	ErrDamaged = errors.New("it is damaged")
	ErrNewer   = errors.New("it is of a newer version of barkslip")
)

// kept are the fields of an object that this program does not know.
type kept map[string]json.RawMessage

// file is a learner as written.
type file struct {
	Barkslip string     `json:"barkslip"` // always "practice"
	Version  int        `json:"version"`
	Initials string     `json:"initials"`
	Answers  []Answered `json:"answers"`
	SignOffs []SignOff  `json:"sign_offs"`
}

// Write is the learner as a file.
func (l *Learner) Write() ([]byte, error) {
	text, err := writeKeeping(file{"practice", FileVersion, l.Initials, append([]Answered{}, l.Answers...), append([]SignOff{}, l.SignOffs...)}, l.more)
	if err != nil {
		return nil, err
	}
	return append(text, '\n'), nil
}

// ReadLearner reads a file; what is wrong with it is ErrDamaged or ErrNewer.
func ReadLearner(text []byte) (*Learner, error) {
	var head struct {
		Barkslip string
		Version  int
	}
	if json.Unmarshal(text, &head) != nil || head.Barkslip != "practice" || head.Version < 1 {
		return nil, ErrDamaged
	}
	if head.Version > FileVersion {
		return nil, ErrNewer
	}
	var f file
	more, err := readKeeping(text, &f)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrDamaged, err)
	}
	for _, s := range f.SignOffs {
		if len(s.Cases) == 0 {
			return nil, fmt.Errorf("%w: a sign-off without cases", ErrDamaged)
		}
	}
	return &Learner{Initials: f.Initials, Answers: f.Answers, SignOffs: f.SignOffs, more: more}, nil
}

// Join takes in what another file of the same learner has, as one that was written
// meanwhile by another program.
func (l *Learner) Join(o *Learner) {
	type place struct {
		skill Skill
		seed  uint64
		at    int64
	}
	have := map[place]bool{}
	for _, a := range l.Answers {
		have[place{a.Skill, a.Seed, a.At.Unix()}] = true
	}
	for _, a := range o.Answers {
		if !have[place{a.Skill, a.Seed, a.At.Unix()}] {
			l.Answers = append(l.Answers, a)
		}
	}
	slices.SortStableFunc(l.Answers, func(a, b Answered) int { return a.At.Compare(b.At) })
	for _, s := range o.SignOffs {
		i := slices.IndexFunc(l.SignOffs, func(mine SignOff) bool { return mine.Seed == s.Seed && mine.Begun.Equal(s.Begun) })
		switch {
		case i < 0:
			l.SignOffs = append(l.SignOffs, s)
		case s.At() > l.SignOffs[i].At():
			l.SignOffs[i] = s
		}
	}
	slices.SortStableFunc(l.SignOffs, func(a, b SignOff) int { return a.Begun.Compare(b.Begun) })
	for name, value := range o.more {
		if _, mine := l.more[name]; !mine {
			if l.more == nil {
				l.more = kept{}
			}
			l.more[name] = value
		}
	}
}

// MarshalText is the skill's code.
func (s Skill) MarshalText() ([]byte, error) { return []byte(s.Code()), nil }

// UnmarshalText reads a skill's code.
func (s *Skill) UnmarshalText(text []byte) error {
	of, ok := SkillCoded(string(text))
	if !ok {
		return fmt.Errorf("no skill is called %q", text)
	}
	*s = of
	return nil
}

func (a Answered) MarshalJSON() ([]byte, error) {
	type plain Answered
	return writeKeeping(plain(a), a.more)
}

func (a *Answered) UnmarshalJSON(text []byte) (err error) {
	type plain Answered
	a.more, err = readKeeping(text, (*plain)(a))
	return err
}

func (s SignOff) MarshalJSON() ([]byte, error) {
	type plain SignOff
	return writeKeeping(plain(s), s.more)
}

func (s *SignOff) UnmarshalJSON(text []byte) (err error) {
	type plain SignOff
	s.more, err = readKeeping(text, (*plain)(s))
	return err
}

func (c SignOffCase) MarshalJSON() ([]byte, error) {
	type plain SignOffCase
	return writeKeeping(plain(c), c.more)
}

func (c *SignOffCase) UnmarshalJSON(text []byte) (err error) {
	type plain SignOffCase
	c.more, err = readKeeping(text, (*plain)(c))
	return err
}

// readKeeping reads an object into a struct, and gives the fields that it has no place
// for.
func readKeeping(text []byte, into any) (kept, error) {
	var more kept
	if err := json.Unmarshal(text, &more); err != nil {
		return nil, err
	}
	if err := json.Unmarshal(text, into); err != nil {
		return nil, err
	}
	of := reflect.TypeOf(into).Elem()
	for i := range of.NumField() {
		name, _, _ := strings.Cut(of.Field(i).Tag.Get("json"), ",")
		delete(more, name)
	}
	if len(more) == 0 {
		return nil, nil
	}
	return more, nil
}

// writeKeeping writes a struct as an object, with fields that it has no place for.
func writeKeeping(from any, more kept) ([]byte, error) {
	text, err := json.Marshal(from)
	if err != nil || len(more) == 0 {
		return text, err
	}
	all := kept{}
	if err := json.Unmarshal(text, &all); err != nil {
		return nil, err
	}
	maps.Copy(all, more)
	return json.Marshal(all)
}
