package trade

import "math"

// VoltageRule is one body's line between voltages. The rules disagree on
// purpose: they answer different questions.
type VoltageRule struct {
	Name         string
	AC, DC       float64 // V; AC r.m.s.; 0 where the rule has none
	Source, Note string
}

// The rules by name, for code that asks about one.
const (
	ExtraLow    = "extra-low voltage (IEC)"
	VehicleHigh = "vehicle high voltage (UN R100)"
	Workplace   = "live parts must be guarded (US workplaces)"
)

// voltageRules are the rules, lowest first.
var voltageRules = []VoltageRule{
	{"wet or body-worn", 25, 60, "an encyclopaedia's article on extra-low voltage", "further reduced limits"},
	{"safe extra-low voltage, household appliances", 42.4 / math.Sqrt2, 60, "IEC terms entry from IEC 60335-1", "42.4 V peak, about 30 V r.m.s."},
	{VehicleHigh, 30, 60, "UN Regulation 100 (a summary was read)", "from here to 1000 V AC and 1500 V DC"},
	{Workplace, 50, 50, "29 CFR 1910.303(g)(2)(i); the agency's letter of 2015 says AC or DC", "at or above"},
	{ExtraLow, 50, 120, "IEC 61140:2016 and former IEC 60449 (terms entries)", "DC ripple-free; not above"},
	{"low voltage (IEC), upper end", 1000, 1500, "IEC terms entry", "above it is high voltage"},
}

// Shock is a rule's answer for one voltage.
type Shock struct {
	Rule  VoltageRule
	Above bool // over the rule's line, or on it where the rule says so
}

// ShockBand asks every rule about a voltage. Flow is "AC", "DC", or empty where
// it is not known, which is judged as AC: its lines are lower. A voltage under
// every line can still burn, weld and start a fire: the low-voltage rules say
// nothing of short circuits. False where the quantity is no voltage.
func ShockBand(voltage Quantity, flow string) ([]Shock, bool) {
	v, ok := voltage.In(Volt)
	if !ok {
		return nil, false
	}
	n := math.Abs(v.Number)
	answers := make([]Shock, 0, len(voltageRules))
	for _, r := range voltageRules {
		line := r.AC
		if flow == "DC" {
			line = r.DC
		}
		above := n > line && !same(n, line)
		if r.Name == Workplace {
			above = above || same(n, line)
		}
		answers = append(answers, Shock{r, above})
	}
	return answers, true
}

// Hazardous says whether a voltage is beyond extra-low voltage by IEC, or for a
// vehicle beyond UN R100's line. Flow as in ShockBand.
func Hazardous(voltage Quantity, flow, rule string) bool {
	answers, _ := ShockBand(voltage, flow)
	for _, a := range answers {
		if a.Rule.Name == rule {
			return a.Above
		}
	}
	return false
}
