package practice

var tiesKinds = []maker{nextStep(Ties)}
