package tally

import (
	"math"

	"barkslip/core/trade"
)

// NoughtAtMost is what the rate may still be, with 95 % confidence, after none
// of n was seen: 1 - 0.05^(1/n); of none judged it is 1. About 3/n, the rule of
// three. Hanley & Lippman-Hand 1983, J. Amer. Med. Assoc. 249:1743.
func NoughtAtMost(n int) float64 {
	if n < 1 {
		return 1
	}
	return -math.Expm1(math.Log(trade.ProofAt) / float64(n))
}

// RuleOfThree is 3/n, good from about n = 30; at most 1.
func RuleOfThree(n int) float64 {
	if n < 3 {
		return 1
	}
	return 3 / float64(n)
}
