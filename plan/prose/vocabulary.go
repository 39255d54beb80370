package prose

// The words that decide what a number or a capital is. They are common English
// and trade words; none needs to be complete.

// labelKind is the FigureKind a noun gives to the number behind it.
type labelKind FigureKind

func (k labelKind) labels() bool { return k != 0 }

// labels are nouns that a number behind them names instead of counting:
// "step 4", "pin 3".
var labels = func() map[string]labelKind {
	m := map[string]labelKind{}
	for _, w := range []string{"step", "steps", "chapter", "page", "pages", "part", "section", "paragraph", "figure", "fig", "number",
		"no", "nos", "point", "item", "line", "row", "shot", "take", "test", "question", "rule", "tip", "method", "option", "stage",
		"phase", "day", "lesson", "episode", "video", "table", "appendix", "clause", "p", "pp", "note", "reason", "ch", "take"} {
		m[w] = labelKind(StepNumber)
	}
	for _, w := range []string{"pin", "pins", "terminal", "terminals", "fuse", "relay", "cylinder", "cylinders", "speed", "gear", "position",
		"setting", "slot", "port", "circuit", "channel", "bank", "sensor", "injector", "coil", "plug", "wire", "zone", "group", "level",
		"grade", "class", "category", "type", "model", "series", "version", "size", "code", "error", "fault", "dot", "sae", "iso", "din",
		"en", "iec", "ip", "mark", "phase", "schedule", "torx", "phillips", "pozidriv", "drive", "channel", "output", "input", "switch",
		"button", "connector", "socket", "cell", "ring", "burner", "valve", "serial", "reference", "ref", "rev", "revision",
		"diagram", "cone", "tank", "floor", "room", "bay", "lane", "junction", "unit", "machine", "door", "window", "side"} {
		m[w] = labelKind(Label)
	}
	return m
}()

func set(words ...string) map[string]bool {
	m := make(map[string]bool, len(words))
	for _, w := range words {
		m[w] = true
	}
	return m
}

// digitNouns are nouns behind which a number is said digit by digit.
var digitNouns = set("number", "no", "part", "code", "error", "fault", "serial", "reference", "ref", "model", "iso", "en", "din", "iec", "bs",
	"ansi", "astm", "ul", "vde", "jis", "nfpa", "standard")

// determiners stand before "point" where it is the noun: "at this point two".
var determiners = set("this", "that", "the", "some", "what", "which", "any", "every", "each", "no", "starting", "good", "test", "earth",
	"ground", "lifting", "jacking", "fixing", "contact", "boiling", "weak", "key", "main", "first", "second", "next", "another", "one",
	"whole", "your", "my", "flash", "freezing", "melting", "mounting", "anchor", "pivot", "power", "access", "entry")

// functionWords stand behind a quantity without being the noun it measures:
// "40 mm up the hose" has millimetres, "13 mm nuts" has millimetre.
var functionWords = set(
	"a", "about", "above", "across", "after", "again", "against", "all", "along", "already", "also", "although", "always", "am", "an", "and",
	"any", "apart", "are", "around", "as", "at", "away", "back", "be", "because", "been", "before", "behind", "below", "beneath", "beside",
	"between", "beyond", "both", "but", "by", "can", "could", "deep", "did", "do", "does", "down", "during", "each", "either", "else", "every",
	"exactly", "except", "far", "few", "first", "for", "from", "further", "give", "gives", "goes", "had", "has", "have", "he", "here", "high",
	"hot", "cold", "how", "i", "if", "in", "inside", "instead", "into", "is", "it", "its", "just", "last", "late", "later", "left", "less",
	"long", "longer", "many", "max", "maximum", "may", "means", "might", "min", "minimum", "more", "most", "must", "my", "near", "nearly", "no", "nor",
	"not", "now", "of", "off", "on", "once", "only", "onto", "or", "other", "our", "out", "outside", "over", "past", "per", "plus", "reads",
	"right", "round", "says", "shall", "she", "should", "shows", "since", "so", "some", "still", "such", "tall", "than", "that", "the", "their", "them",
	"then", "there", "these", "they", "thick", "this", "those", "though", "through", "till", "to", "today", "together", "too", "toward", "towards",
	"under", "until", "up", "upon", "us", "very", "was", "we", "were", "what", "when", "where", "whether", "which", "while", "who", "why", "wide",
	"will", "with", "within", "without", "would", "yet", "you", "your", "tight", "total", "nominal", "apiece", "ago", "earlier", "short", "shorter",
	"wait", "close", "ok", "okay", "minus", "times", "anyway", "rms", "dc", "ac", "we're", "it's", "that's", "you're", "i'm", "they're", "don't",
	"isn't", "doesn't", "we've", "i've", "you've", "there's", "what's", "comes", "means", "makes", "takes", "needs", "wants", "drops", "rises", "flows",
	"running", "using", "depending", "according", "here's", "clockwise", "anticlockwise", "straight", "slowly", "roughly", "approximately",
)

// spokenWords are capitals said as a word, and ordinary words that people write
// in capitals to shout; other short words in capitals are spelled out.
var spokenWords = set(
	"RAM", "ROM", "PIN", "SIM", "DOT", "NATO", "JIS", "DIN", "LAN", "BIOS", "PAT", "TORX", "RADAR", "LASER", "SCART", "CAT", "MIG", "TIG",
	"ACME", "WAN", "GIF", "JPEG", "NASA", "UNESCO", "OSHA", "NIOSH", "MOT", "OK",
	"A", "I", "AM", "AN", "AND", "ANY", "ARE", "AS", "AT", "BAD", "BE", "BEEN", "BIG", "BOTH", "BOX", "BUT", "BUY", "BY", "CALL", "CAN", "CAP", "CAR", "CUT",
	"DAY", "DID", "DO", "DOES", "DON'T", "DRY", "DUE", "EACH", "END", "FAN", "FAR", "FEW", "FIT", "FIX", "FOR", "FULL", "GAP", "GAS", "GET", "GO",
	"GOOD", "GOT", "HAD", "HAS", "HE", "HER", "HIGH", "HIS", "HOLD", "HOT", "HOW", "IF", "IN", "INTO", "IS", "IT", "ITS", "JUST", "KEEP", "KEY", "LAST",
	"LEFT", "LESS", "LET", "LIVE", "LOW", "MAIN", "MANY", "MAX", "MAY", "ME", "MIN", "MORE", "MUST", "MY", "NEW", "NO", "NOR", "NOT", "NOW", "NUT", "OF", "OFF",
	"OIL", "OLD", "ON", "ONE", "ONLY", "OPEN", "OR", "OUR", "OUT", "OVER", "OWN", "PER", "PUT", "RED", "RUN", "SAY", "SEE", "SET", "SHE", "SHUT", "SIX", "SO", "STOP",
	"TAP", "TEN", "TEST", "THAN", "THAT", "THE", "THEN", "THEY", "THIS", "TO", "TOO", "TOP", "TRY", "TWO", "UP", "USE", "VERY", "WARM", "WAS", "WAY", "WE", "WET",
	"WHEN", "WHO", "WHY", "WILL", "WITH", "YES", "YET", "YOU", "YOUR", "BACK", "DOWN", "FROM", "HAND", "HAVE", "HERE", "LOCK", "NEXT", "PULL", "PUSH", "TURN", "WAIT",
	"FIRE", "AIR", "ARC", "ACID", "BOLT", "FUEL", "FUSE", "HEAT", "LAMP", "LIFT", "PARK", "PLUG", "PUMP", "RISK", "ROD", "SAFE", "SIDE", "STEP", "TANK", "TYRE", "WIRE",
	"EVER", "ALSO", "ALL", "BEST", "CASE", "COLD", "HARD", "HOME", "KILL", "LONG", "LOSE", "MAKE", "NEED", "NONE", "PART", "READ", "REAR", "ROAD", "SAME", "SLOW",
	"SURE", "TAKE", "TIME", "TOOL", "VENT", "WAVE", "WORK", "ZERO", "MENU", "MODE", "AUTO", "EXIT", "MUTE", "PLAY", "FAST", "NOTE", "EASY", "FREE", "LOAD", "ICE", "EYE",
)

// romanNumerals that count marks and types; "I", "V" and "X" alone are letters.
var romanNumerals = map[string]int{"II": 2, "III": 3, "IV": 4, "VI": 6, "VII": 7, "VIII": 8, "IX": 9, "XI": 11, "XII": 12}

// lowerSpelled are said letter by letter though they are often written small.
var lowerSpelled = set("mpg", "pcb", "usb", "pvc", "ptfe", "dc", "lcd", "tv", "rcd", "mcb", "dvd", "cd", "diy")

// spelledWords are short capitals with a vowel that are spelled out all the
// same; those of three letters are anyway.
var spelledWords = set("HVAC", "EPDM", "OEMS", "OBDII", "ECUS", "IEEE", "AAAA", "UNEF", "COOH", "ELCB", "RCBO", "AFDD", "VOIP")
