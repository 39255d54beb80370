package lint

import (
	"fmt"
	"slices"

	"fixslate/plan/trade"
)

// leadAcid are the machines whose battery is lead-acid or takes its place: blocks
// of 6 V, of which two, four or more stand in series.
var leadAcid = append(slices.Clip(motorVehicles), "boat", "outboard", "mower", "alternator", "lead-acid", "lead", "starter battery", "leisure battery", "12 v battery", "24 v battery")

// offSystem says why no system of lead-acid batteries has a voltage: it lies
// between what one number of blocks has and what the next has. Rest voltages and
// charging windows are those of fixslate look battery and charging, a little wider
// for frost, heat and lithium iron phosphate in their place.
func offSystem(what, subject string, m trade.Measure, q trade.Quantity) string {
	const blocks = 8 // 48 V
	v, ok := q.In(trade.Volt)
	if !ok || m.Flow == "AC" || m.Shape == trade.AtMost || says(what, "drop") || says(what+subject, smallCells...) || !says(what+subject, leadAcid...) {
		return ""
	}
	charging := says(what, "charging", "charge", "alternator", "float", "absorption", "engine running")
	resting := says(what, "battery") && says(what, "rest", "resting", "open circuit", "no load", "full", "fully charged", "key off", "engine off")
	// Volts a cell: discharged to at rest, and the widest of windows.
	least, most, kind := 1.5, 2.3, "at rest"
	switch {
	case charging && !resting:
		least, most, kind = 2.06, 2.67, "while it charges"
	case !resting:
		return ""
	case says(what, "full", "fully charged"):
		least, kind = 2.05, "when it is full"
	}
	for n := 2; n <= blocks; n *= 2 {
		low, below := float64(n)*3*least, float64(n/2)*3*most
		if v.Number > below && v.Number < low {
			return fmt.Sprintf("a battery of %d V has at least %.1f V %s, one of %d V at most %.1f V (fixslate look battery, charging)", 6*n, low, kind, 3*n, below)
		}
	}
	return ""
}
