package practice

var sealKinds = []maker{nextStep(Seal)}
