package practice

var sproutsKinds = []maker{nextStep(Sprouts)}
