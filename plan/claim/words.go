package claim

import "fixslate/plan/prose"

const prosePart = prose.PartNumber

func set(words ...string) map[string]bool {
	m := make(map[string]bool, len(words))
	for _, w := range words {
		m[w] = true
	}
	return m
}

// numberWords may begin or make a figure; a sentence without any has none.
var numberWords = set("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen",
	"sixteen", "seventeen", "eighteen", "nineteen", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety", "hundred", "thousand",
	"million", "zero", "nought", "oh", "point", "half", "quarter", "third", "thirds", "quarters", "tenth", "tenths", "eighth", "eighths", "sixteenth", "sixteenths", "thou", "dozen",
	"couple", "once", "twice", "double", "an", "minus", "percent", "sixty-six")

var connectives = set("and", "so", "then", "now", "okay", "ok", "right", "alright", "but", "just", "first", "next", "well", "also", "please", "finally", "let's", "or", "always", "never", "again", "there", "don't")

// baseVerbs are the orders of a workshop that may stand without an object.
var baseVerbs = set("undo", "take", "put", "turn", "pull", "push", "lift", "hold", "press", "wind", "fill", "top", "check", "make", "make", "look", "watch", "wear",
	"keep", "leave", "let", "use", "fit", "set", "give", "clean", "rinse", "wipe", "unplug", "plug", "cut", "slide", "slip", "snap", "screw", "unscrew", "tighten", "loosen", "torque",
	"wait", "stand", "remove", "add", "pour", "drain", "mix", "order", "buy", "walk", "pass", "get", "go", "grab", "drop", "move", "mark", "measure", "lower", "raise", "bolt", "tap", "twist", "thread",
	"bring", "feed", "open", "close", "shut", "switch", "start", "stop", "run", "connect", "disconnect", "touch", "work", "do", "be", "bend", "tie", "glue", "sand", "drill", "file", "strip", "crimp", "solder", "spray", "grease", "oil", "inflate", "pump", "count", "lose", "try", "see")

var functionWords = set("i", "you", "we", "he", "she", "it", "they", "the", "a", "an", "this", "that", "these", "those", "my", "your", "our", "his", "its", "their", "there", "here",
	"in", "on", "at", "of", "to", "for", "from", "with", "by", "if", "when", "because", "as", "is", "are", "was", "were", "be", "has", "have", "had", "some", "all", "any", "no", "not",
	"most", "both", "each", "every", "what", "why", "how", "who", "between", "under", "over", "about", "around", "roughly", "like", "into", "inside", "behind", "after", "before", "once", "until", "than", "near")

var modals = set("should", "ought", "might", "may", "could")

var approximators = set("about", "around", "roughly", "approximately", "nearly", "almost", "circa")

// properties are what a part is said to be: its role, thread, stuff.
var properties = set("live", "neutral", "earth", "earthed", "positive", "negative", "nylon", "brass", "steel", "stainless", "plastic", "aluminium", "rubber", "ceramic", "copper",
	"zinc", "galvanised", "metric", "imperial", "sealed", "waterproof", "synthetic", "left-handed", "left-hand", "reusable", "disposable", "tapered", "polarised", "grounded", "fused", "hardened", "magnetic", "asbestos", "bakelite")

// harms are what parts do when something goes wrong.
var harms = set("leaks", "leak", "snaps", "snap", "cracks", "crack", "burns", "shrinks", "warps", "jams", "jam", "fails", "fail", "breaks", "break", "pops", "strips", "seizes", "rusts", "overheats", "slips", "blows", "splits", "wears", "melts", "swells", "sticks", "corrodes")

// readings are verbs by which an instrument or its user gives a value.
var readings = set("read", "reads", "reading", "measured", "measure", "measures", "shows", "showing", "says", "get", "got", "getting", "gave", "gives", "found", "came", "clocked", "weighed", "cut", "doing", "now", "draws", "sits", "sitting", "today", "mine", "lighter", "heavier", "longer", "shorter", "we're", "i'm", "probably")

// fittings are handled one by one; their number specifies nothing.
var fittings = set("screw", "screws", "bolt", "bolts", "nut", "nuts", "clip", "clips", "washer", "washers", "tab", "tabs", "nail", "nails", "staple", "staples", "step", "steps", "thing", "things",
	"bit", "bits", "part", "parts", "piece", "pieces", "way", "ways", "side", "sides", "hand", "hands", "finger", "fingers", "people", "video", "videos", "post", "posts", "end", "ends", "time", "times", "of", "rag", "rags", "tool", "tools", "wire", "wires", "hole", "holes", "one", "ones", "job", "jobs", "lot", "lots", "double", "weight")

// makings are counted where they make a part what it is.
var makings = set("link", "pin", "tooth", "pole", "cell", "core", "strand", "spline", "speed", "port", "fold", "cylinder", "blade", "rib", "cycle", "turn", "winding", "lobe", "point", "lug", "spoke", "groove", "plate", "coil", "ply", "layer", "row", "bank", "gang", "amp", "volt", "conductor", "terminal", "contact", "position", "key", "string", "stud", "ball", "roller", "segment", "pulse", "ton", "valve", "stage", "wheel")
