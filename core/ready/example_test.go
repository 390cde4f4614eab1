package ready_test

import (
	"fmt"
	"time"

	"barkslip/core/ready"
	"barkslip/core/record"
	"barkslip/core/unit"
)

// A stump that was cut back nine days ago, gashed and cut fresh this morning, dry
// on its new face and with bark that slips.
func ExampleJudge() {
	at := func(hour, minute int) time.Time { return time.Date(2027, time.May, 20, hour, minute, 0, 0, time.UTC) }
	advice := ready.Judge(ready.Found{
		Across: 3 * unit.Inch, CutBack: unit.MakeDate(2027, time.May, 11), Gashes: 4, Gashed: at(8, 0), FreshCut: at(8, 10),
		Bleeding: record.Dry, Looked: at(8, 30), Slip: record.SlipsClean, Slipped: at(8, 0), Limbs: 1,
	}, at(8, 35), time.UTC, unit.US)
	fmt.Println(advice.Verdict)
	// Output: graft
}
