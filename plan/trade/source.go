package trade

// Sources of the rows. Standards are sold, not published: where a row names
// one, its value was read in copies that name it (catalogues, makers' manuals,
// open libraries of standard parts, law texts), at least two where two could be
// found. "from memory" and "common practice, no source" mean what they say.
const (
	fromMemory = "from memory, not verified"
	common     = "common practice, no source"

	iso272   = "ISO 272:1982, with ISO 4014, 4017, 4032, 8673 (catalogue copies)"
	dinHex   = "DIN 931, 933, 934, widths before ISO 272:1982 (catalogue copies)"
	jisHex   = "JIS small hexagon, as vehicle makers' service manuals print it"
	iso898   = "ISO 898-1:2013, tables 3 and 5 (distributors' copies)"
	saeJ429  = "SAE J429 (distributors' copies)"
	iso3506  = "ISO 3506-1, " + fromMemory
	iso724   = "ISO 724 and ISO 68-1; pitches ISO 261, ISO 262 (open libraries of standard parts)"
	ununc    = "ASME B1.1 (open libraries of standard parts)"
	vdi2230  = "VDI 2230 form at 90 % of yield, mu alike in thread and under the head; head and hole by ISO 4014, ISO 273"
	iso10664 = "ISO 10664 sizes by ISO 14579 to 14584 (open libraries of standard parts)"
	iso4757  = "ISO 4757 numbers by ISO 7045 to 7048 (vendor tables, open libraries of standard parts)"
	asmeHex  = "ASME B18.2.1, B18.2.2, B18.3 (open libraries of standard parts)"

	iso8820  = "ISO 8820-3 colours (fuse makers' and press charts; the standard was not opened)"
	din72581 = "DIN 72581-1 (a trade article; the standard was not opened)"
	iso6722  = "ISO 6722 maximum at 20 °C (a cable maker's data sheets)"
	iec60228 = "IEC 60228 maximum, plain copper, 20 °C (three copies agree)"
	cfr183   = "33 CFR 183.425, table 5 (boats under 50 V, 30 °C, single conductors)"
	trailer  = "trailer wiring specification compiled from SAE and TMC papers"
	autoWire = "cable supplier's table for vehicle cable, continuous, no ambient stated"

	osha1910 = "29 CFR 1910.95, table G-16: 480 min / 2^((L-90)/5)"
	niosh    = "NIOSH recommended exposure limit: 480 min / 2^((L-85)/3)"
	eu2003   = "Directive 2003/10/EC, article 3, with 3 dB to a halving"
)

// Status says how a row stands to the standards in force.
type Status string

// The states of a standard, best first.
const (
	InForce   Status = "in force"
	Regional  Status = "regional"  // another region's or trade's own, in force
	Older     Status = "older"     // replaced, and met on every older machine
	Withdrawn Status = "withdrawn" // no longer in force and not replaced size for size
	Practice  Status = "practice"  // common practice, or from memory
)

// rank orders statuses for "the best row that fits".
func (s Status) rank() int {
	for i, t := range []Status{InForce, Regional, Older, Withdrawn, Practice} {
		if s == t {
			return i
		}
	}
	return 5
}
