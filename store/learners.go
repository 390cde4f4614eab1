package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"barkslip/core/practice"
)

// Learners are the files of practice in a folder, one a person by initials. They belong
// to no book.
type Learners struct{ Folder string }

const learnerBefore, learnerBehind = "practice-", ".json"

// mostLearner is how long a learner's file may be, in bytes: ten years of practice, every
// day, are a hundredth of it.
const mostLearner = 64 << 20

// mostAside is how many files of one learner are set aside before it is refused.
const mostAside = 1000

func (l Learners) path(initials string) string {
	return filepath.Join(l.Folder, learnerBefore+initials+learnerBehind)
}

// Learner is what a person has done so far; one without a file is new. A file that
// cannot be read is set aside under another name, and said: nothing of it is lost.
func (l Learners) Learner(initials string) (of *practice.Learner, said string, err error) {
	none := &practice.Learner{Initials: initials}
	path := l.path(initials)
	text, err := ReadPlain(path, mostLearner)
	if errors.Is(err, fs.ErrNotExist) {
		return none, "", nil
	}
	if err != nil {
		return nil, "", fmt.Errorf("the practice of %s cannot be read: %s", initials, learnerCause(err))
	}
	of, fault := practice.ReadLearner(text)
	if fault == nil {
		of.Initials = initials
		return of, "", nil
	}
	aside, err := setAside(path)
	if err != nil {
		return nil, "", fmt.Errorf("%s cannot be used (%s) nor set aside: %s", path, learnerFault(fault), learnerCause(err))
	}
	return none, fmt.Sprintf("The practice of %s could not be read: %s. It is kept as %s; this begins a new one.", initials, learnerFault(fault), aside), nil
}

func learnerFault(err error) error {
	for _, known := range []error{practice.ErrNewer, practice.ErrDamaged} {
		if errors.Is(err, known) {
			return known
		}
	}
	return err
}

// setAside gives a file the first free name behind its own, and never that of another.
func setAside(path string) (aside string, err error) {
	for n := 1; n <= mostAside; n++ {
		aside = fmt.Sprintf("%s.set-aside-%d", path, n)
		mark, err := os.OpenFile(aside, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600) // the name is ours from here on
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return "", err
		}
		if err := errors.Join(mark.Close(), os.Rename(path, aside)); err != nil {
			return "", errors.Join(err, os.Remove(aside))
		}
		return aside, syncDir(filepath.Dir(path))
	}
	return "", fmt.Errorf("there are %d beside it already", mostAside)
}

// Keep writes what a person has done, by way of a second file that takes the place of
// the first once it is on the disk. What another program wrote there meanwhile is taken
// in.
func (l Learners) Keep(of *practice.Learner) error {
	fail := func(err error) error {
		return fmt.Errorf("the practice of %s cannot be kept: %s", of.Initials, learnerCause(err))
	}
	path := l.path(of.Initials)
	if text, err := ReadPlain(path, mostLearner); err == nil {
		there, err := practice.ReadLearner(text)
		if err != nil {
			return fail(fmt.Errorf("%s was changed meanwhile, and %w", path, learnerFault(err)))
		}
		of.Join(there)
	}
	text, err := of.Write()
	if err != nil {
		return fail(err)
	}
	if err := os.MkdirAll(l.Folder, 0o700); err != nil {
		return fail(err)
	}
	temp, err := os.CreateTemp(l.Folder, learnerBefore+"*.new")
	if err != nil {
		return fail(err)
	}
	_, err = temp.Write(text)
	if err == nil {
		err = temp.Sync()
	}
	if err = errors.Join(err, temp.Close()); err == nil {
		err = os.Rename(temp.Name(), path)
	}
	if err != nil {
		return fail(errors.Join(err, os.Remove(temp.Name())))
	}
	if err := syncDir(l.Folder); err != nil {
		return fail(err)
	}
	return nil
}

// All is everybody whose practice is kept in the folder, in order of initials. A file
// that cannot be read is left where it is and said.
func (l Learners) All() (all []*practice.Learner, said []string, err error) {
	files, err := os.ReadDir(l.Folder)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, nil, fmt.Errorf("the folder %s cannot be read: %s", l.Folder, learnerCause(err))
	}
	for _, f := range files {
		name, begins := strings.CutPrefix(f.Name(), learnerBefore)
		initials, ends := strings.CutSuffix(name, learnerBehind)
		if !begins || !ends || f.IsDir() {
			continue
		}
		text, err := ReadPlain(filepath.Join(l.Folder, f.Name()), mostLearner)
		var of *practice.Learner
		if err == nil {
			of, err = practice.ReadLearner(text)
		}
		if err != nil {
			said = append(said, fmt.Sprintf("The practice of %s cannot be read: %s.", initials, learnerFault(err)))
			continue
		}
		of.Initials = initials
		all = append(all, of)
	}
	slices.SortFunc(all, func(a, b *practice.Learner) int { return strings.Compare(a.Initials, b.Initials) })
	return all, said, nil
}

// learnerCause is an error without the path, which is said already.
func learnerCause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}
