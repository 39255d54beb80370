package claim

// celsius is the unit that a sentence names for all its figures: "bed at sixty,
// nozzle at two ten, both Celsius".
func (r *reader) celsius() string {
	switch {
	case r.about&ofCelsius != 0:
		return "degC"
	case r.about&ofFahrenheit != 0:
		return "degF"
	}
	return ""
}

// dial says in what unit a number near a word is, between which bounds, and whether
// for numbers with parts alone; dials.txt has them.
type dial struct {
	unit        string
	least, most float64
	parts       bool
}

// longestDial bounds the way from a reading to what shows it, in words.
const longestDial = 8
