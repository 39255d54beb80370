package align

import "math"

// Percent is a confidence as people read it, 0 to 99: no start that was only
// heard is certain.
func Percent(confidence float64) int {
	return int(math.Round(100 * min(max(confidence, 0), 0.99)))
}
