package part

import (
	"errors"

	"barkslip/core/record"
)

// AskNote asks for a note on a stump of the session's block.
func (x *Session) AskNote(id record.StumpID) Msgs {
	if id == record.NoStump {
		return Says("There is no stump under the cursor for a note.")
	}
	return x.Asks("Note on "+id.Place()+":", "", true, func(text string) (Msgs, error) {
		if text = Typed(text); text == "" {
			return nil, errors.New("type the note first, or Esc")
		}
		s, err := x.Book.Stump(id)
		if err != nil {
			return nil, err
		}
		events, err := s.Answer(x.Given(&record.Noted{Text: text}))
		if err != nil {
			return nil, err
		}
		if _, err := x.Write(events...); err != nil {
			return nil, err
		}
		return Msgs{Reload{}, Say{"Recorded: note on " + id.Place() + "."}}, nil
	})
}
