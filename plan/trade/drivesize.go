package trade

import (
	"math"
	"strconv"
	"strings"
)

// soldSizes are the sizes in which drivers of a kind are sold, in mm or by number:
// those of the standards and what makers add. From memory, not verified; spanners
// are not here, for there is hardly a whole millimetre without one.
var soldSizes = map[string]string{
	Hexalobular: "1 2 3 4 5 6 7 8 9 10 15 20 25 27 30 35 40 45 47 50 55 60 70 80 90 100",
	HexKey:      "0.7 0.71 0.9 0.89 1.27 1.3 1.5 2 2.5 3 3.5 4 4.5 5 5.5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 24 27 30 32 36",
}

// Sold says whether a driver of that size is sold. Where it is not, near are the
// sizes below and above it. A kind or a unit without a list is taken to be.
func (d Drive) Sold() (near []Drive, ok bool) {
	list, known := soldSizes[d.Kind]
	number, unit := strings.TrimPrefix(d.Size, "T"), ""
	if d.Kind == HexKey {
		number, unit = strings.TrimSuffix(d.Size, " mm"), " mm"
	}
	size, err := strconv.ParseFloat(number, 64)
	if !known || err != nil {
		return nil, true
	}
	below, above := 0.0, math.Inf(1)
	for s := range strings.FieldsSeq(list) {
		switch v, _ := strconv.ParseFloat(s, 64); {
		case same(v, size):
			return nil, true
		case v < size:
			below = max(below, v)
		default:
			above = min(above, v)
		}
	}
	for _, v := range [...]float64{below, above} {
		if v > 0 && !math.IsInf(v, 1) {
			near = append(near, Drive{d.Kind, strings.TrimSuffix(d.Size, number+unit) + formatNumber(v) + unit})
		}
	}
	return near, false
}
