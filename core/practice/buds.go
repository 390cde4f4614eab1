package practice

var budsKinds = []maker{nextStep(Buds)}
