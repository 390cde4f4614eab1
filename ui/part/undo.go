package part

import (
	"barkslip/core/due"
	"barkslip/core/record"
)

// Withdraw takes back events in one transaction, as one act.
func (x *Session) Withdraw(events []record.Event) (due.Appended, error) {
	out, err := x.Write(record.Undo(events, x.Now(), x.Hand)...)
	if err == nil {
		x.ForgetHabit()
	}
	return out, err
}

// Words are events in the block's words.
func (x *Session) Words(events []record.Event) string {
	return record.SayAct(events, x.Site().Units)
}
