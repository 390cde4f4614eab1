package practice

import (
	"barkslip/core/practice"
	"barkslip/core/unit"
	"barkslip/ui/part"
)

// life begins a whole life: the screens as they are, on a book in memory with one made-up
// stump, whose clock goes on by a key. The key for practice leads back here.
func (s *Screen) life() part.Msgs {
	was := s.x.Options
	life, err := practice.NewLife(s.chance(), s.x.Now().Year(), s.x.Zones)
	if err != nil {
		return part.Fails(err)
	}
	o := was
	o.Book, o.Now, o.Life, o.Practice = life, life.Now, life, nil
	o.OwnDay, o.EndOwnDay, o.Sample, o.Refresh = nil, nil, nil, nil
	o.Own = func() (part.Options, error) {
		if was.Practice == nil {
			was.Practice = &part.PracticeFirst{}
		}
		return was, nil
	}
	return part.Msgs{part.Reopen{Options: o}, part.Open{Stump: life.Begun},
		part.Say{Text: "One made-up stump, from standing to untied. , moves its clock to what is due next; F4 leads back to practice."}}
}

// units are those of the case that is up, else of the block, else inches.
func (s *Screen) units() unit.System {
	if a, ok := s.view.(*asked); ok {
		return a.c.Units
	}
	if b := s.x.Site(); b != nil {
		return b.Units
	}
	return unit.US
}
