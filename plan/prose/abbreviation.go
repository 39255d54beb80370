package prose

// abbreviation says what a full stop after a shortened word means for the end
// of a sentence.
type abbreviation int

const (
	plainWord    abbreviation = iota
	neverEnds                 // something always follows: "approx."
	mayEnd                    // ends a sentence before a capital: "etc."
	beforeNumber              // shortened before a number, else a word: "No. 4"
	unitShort                 // a unit after a number: "10 min."
)

// abbreviations are lower case and without their last stop.
var abbreviations = map[string]abbreviation{
	"approx": neverEnds, "appr": neverEnds, "ca": neverEnds, "e.g": neverEnds, "eg": neverEnds,
	"i.e": neverEnds, "ie": neverEnds, "viz": neverEnds, "cf": neverEnds, "vs": neverEnds,
	"incl": neverEnds, "excl": neverEnds, "esp": neverEnds, "resp": neverEnds, "mr": neverEnds, "mrs": neverEnds,
	"ms": neverEnds, "dr": neverEnds, "prof": neverEnds, "dia": neverEnds, "diam": neverEnds, "adj": neverEnds,
	"temp": neverEnds, "std": neverEnds, "orig": neverEnds, "sim": neverEnds, "nom": neverEnds, "vol": beforeNumber,
	"aux": neverEnds, "resist": neverEnds, "vers": neverEnds, "ver": neverEnds, "qty": neverEnds, "tel": neverEnds,
	"w.r.t": neverEnds, "st": neverEnds, "mt": neverEnds, "alt": neverEnds, "abbr": neverEnds, "misc": neverEnds,

	"etc": mayEnd, "a.m": mayEnd, "p.m": mayEnd, "ltd": mayEnd, "inc": mayEnd, "co": mayEnd, "corp": mayEnd,
	"a.c": mayEnd, "d.c": mayEnd, "o.d": mayEnd, "i.d": mayEnd, "assy": mayEnd, "jr": mayEnd, "sr": mayEnd,

	"no": beforeNumber, "nos": beforeNumber, "nr": beforeNumber, "fig": beforeNumber, "figs": beforeNumber,
	"p": beforeNumber, "pp": beforeNumber, "pg": beforeNumber, "ch": beforeNumber, "sect": beforeNumber,
	"art": beforeNumber, "para": beforeNumber, "cl": beforeNumber, "eq": beforeNumber, "tab": beforeNumber,
	"rev": beforeNumber, "pt": beforeNumber, "ref": beforeNumber, "cat": beforeNumber, "ser": beforeNumber,
	"jan": beforeNumber, "feb": beforeNumber, "mar": beforeNumber, "apr": beforeNumber, "jun": beforeNumber,
	"jul": beforeNumber, "aug": beforeNumber, "sep": beforeNumber, "sept": beforeNumber, "oct": beforeNumber,
	"nov": beforeNumber, "dec": beforeNumber, "model": plainWord,

	"in": unitShort, "ins": unitShort, "ft": unitShort, "yd": unitShort, "yds": unitShort, "mi": unitShort,
	"oz": unitShort, "lb": unitShort, "lbs": unitShort, "gal": unitShort, "qt": unitShort, "sq": unitShort,
	"cu": unitShort, "min": unitShort, "mins": unitShort, "max": unitShort, "sec": unitShort, "secs": unitShort,
	"hr": unitShort, "hrs": unitShort, "deg": unitShort, "pct": unitShort, "wk": unitShort, "wks": unitShort,
	"yr": unitShort, "yrs": unitShort, "ga": unitShort, "rpm": unitShort, "v": unitShort, "c": unitShort, "pcs": unitShort, "pc": unitShort,
}

// openers are the words with which sentences begin.
var openers = map[string]bool{
	"the": true, "this": true, "that": true, "these": true, "those": true, "then": true, "there": true, "they": true,
	"if": true, "it": true, "it's": true, "its": true, "in": true, "i": true, "you": true, "your": true, "we": true,
	"our": true, "he": true, "she": true, "and": true, "but": true, "so": true, "or": true, "now": true, "next": true,
	"when": true, "where": true, "while": true, "once": true, "after": true, "before": true, "until": true, "as": true,
	"at": true, "on": true, "for": true, "with": true, "from": true, "to": true, "do": true, "don't": true, "never": true,
	"always": true, "no": true, "not": true, "yes": true, "check": true, "turn": true, "take": true, "put": true,
	"set": true, "use": true, "make": true, "keep": true, "what": true, "why": true, "how": true, "who": true, "which": true,
	"an": true, "all": true, "both": true, "each": true, "every": true, "some": true, "most": true, "here": true,
	"let": true, "let's": true, "that's": true, "remove": true, "undo": true, "pull": true, "push": true, "stop": true,
	"wait": true, "watch": true, "look": true, "also": true, "only": true, "still": true, "anything": true, "any": true,
}
