package core

// dueRules has the rule of each kind, by kind. To add a due, add its kind and
// name in due.go and its rule here.
var dueRules = [dueKinds]dueRule{
	DueWhite: whiteDue,
}
