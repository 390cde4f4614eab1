package practice

var leaderKinds = []maker{nextStep(Leader)}
