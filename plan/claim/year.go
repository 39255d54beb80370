package claim

import (
	"math"
)

func isYear(n float64) bool { return n >= 1800 && n < 2200 && n == math.Trunc(n) }
