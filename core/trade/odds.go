package trade

// Figures for the chance of a stump where its block has no record yet.
const (
	ChanceOfBud    = 0.3
	GraftsTogether = 0.3
)

// BudChance is what stands in for a record: figures of the program, not of the
// trade.
var BudChance = state("bud-chance", "sums", Memory, "",
	"Placeholders of the program, not trade knowledge: until the block's own record is long enough, 3 buds in 10 are assumed to grow, and the scions of "+
		"a stump to fare alike by 0.3.")
