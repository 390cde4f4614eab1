package practice

var winterKinds = []maker{nextStep(Winter)}
