package hazard

import (
	"math/bits"
	"strings"

	"fixslate/plan/hazard/odds"
)

// Inflection, the small part of it that a lexicon of trade words needs. Forms
// are made from the lexicon once, so that reading needs no stemmer and "entire"
// never meets "tire". Forms that nobody uses do no harm.

// formKind says which form of its word a form is.
type formKind uint8

const (
	baseForm formKind = 1 << iota // "drill"
	sForm                         // "drills"
	ingForm                       // "drilling"
	pastForm                      // "drilled"
)

// form is a spelling and what it is.
type form struct {
	text string
	kind formKind
}

// forms finds spellings: a hash table with open places. It is no map, since a
// map is filled when the program runs.
type forms struct {
	list  []spelling // by form; 0: none
	slots []uint16   // twice as many as forms at least, a power of two
}

// spelling is all that reading asks of a form, in one place: few of the lexicon's
// words are at hand, and each place costs a wait for the memory.
type spelling struct {
	text    string
	grammar grammar
	begins  uint16 // the node to which it leads from the root of the tree, and alike
	kind    formKind
	rejoins bool // it stands behind the gap of some phrase
}

// find is the form of a word, whose plain letters may be capitals; 0 for none.
func (f *forms) find(word string) int32 {
	hash := uint32(odds.Unhashed)
	for i := range len(word) {
		c := word[i]
		if 'A' <= c && c <= 'Z' {
			c += 'a' - 'A'
		}
		hash = odds.Hashed(hash, c)
	}
	for ; ; hash++ {
		id := f.slots[hash&uint32(len(f.slots)-1)]
		if text := f.list[id].text; id == 0 || text == word || len(text) == len(word) && strings.EqualFold(text, word) {
			return int32(id)
		}
	}
}

// file makes the table that finds the forms.
func (f *forms) file() {
	f.slots = make([]uint16, 2<<bits.Len(uint(len(f.list))))
	for id := 1; id < len(f.list); id++ {
		at := odds.Hash(odds.Unhashed, f.list[id].text)
		for ; f.slots[at&uint32(len(f.slots)-1)] != 0; at++ {
		}
		f.slots[at&uint32(len(f.slots)-1)] = uint16(id)
	}
}

// form files a spelling.
func (x *compiler) form(text string, kind formKind) int32 {
	id, ok := x.ids[text]
	if !ok {
		id = int32(len(x.forms.list))
		x.ids[text] = id
		x.forms.list = append(x.forms.list, spelling{text: text})
	}
	x.forms.list[id].kind |= kind
	return id
}

// nounForms are singular and plural.
func nounForms(word string) []form {
	if plural, ok := irregularNouns[word]; ok {
		return []form{{word, baseForm}, {plural, sForm}}
	}
	last := word[len(word)-1]
	if len(word) < 3 || last < 'a' || last > 'z' { // "12", "v", "r134a" has no plural
		return []form{{word, baseForm}}
	}
	return []form{{word, baseForm}, {join(word, sEnding(word)), sForm}}
}

func sEnding(word string) string {
	n := len(word)
	switch last := word[n-1]; {
	case last == 's' || last == 'x' || last == 'z' || strings.HasSuffix(word, "ch") || strings.HasSuffix(word, "sh"):
		return "es"
	case last == 'y' && n > 1 && !isVowel(word[n-2]):
		return "\x00ies" // instead of the y
	}
	return "s"
}

// verbForms are base, third person, participle and past.
func verbForms(word string) []form {
	if special, ok := irregularVerbs[word]; ok {
		all := []form{{word, baseForm}}
		for _, f := range strings.Fields(special) {
			kind := pastForm
			switch {
			case strings.HasSuffix(f, "ing") && f != "bring" && f != "wring":
				kind = ingForm
			case strings.HasSuffix(f, "s"):
				kind = sForm
			}
			all = append(all, form{f, kind})
		}
		return all
	}
	n := len(word)
	if n < 2 {
		return []form{{word, baseForm}}
	}
	last, before := word[n-1], word[n-2]
	past, ing := word+"ed", word+"ing"
	all := []form{{word, baseForm}, {join(word, sEnding(word)), sForm}}
	switch {
	case last == 'e' && before != 'e' && before != 'y' && before != 'o':
		past, ing = word+"d", word[:n-1]+"ing"
	case last == 'e':
		past = word + "d"
	case last == 'y' && !isVowel(before):
		past = word[:n-1] + "ied"
	case isVowel(before) && !isVowel(last) && last != 'w' && last != 'x' && last != 'y':
		stem := word + word[n-1:] // "grip", "gripped"; "open", "openned" does no harm
		all = append(all, form{stem + "ed", pastForm}, form{stem + "ing", ingForm})
		if !strings.ContainsFunc(word[:n-2], func(r rune) bool { return isVowel(byte(r)) }) {
			return all // "tapped" is of "tap", "taped" is not
		}
	}
	return append(all, form{past, pastForm}, form{ing, ingForm})
}

// join adds an ending; one that begins with a zero takes the last letter away.
func join(word, ending string) string {
	if ending[0] == 0 {
		return word[:len(word)-1] + ending[1:]
	}
	return word + ending
}

func isVowel(b byte) bool { return strings.IndexByte("aeiou", b) >= 0 }

var irregularNouns = map[string]string{
	"child": "children", "foot": "feet", "knife": "knives", "leaf": "leaves", "mouse": "mice", "tooth": "teeth",
	"shelf": "shelves", "half": "halves", "person": "people", "wife": "wives", "scarf": "scarves", "loaf": "loaves",
}

// irregularVerbs are the forms of verbs that follow no rule. "Ground" of grind
// and "saw" of see are left out: as nouns they are commoner in workshops.
var irregularVerbs = map[string]string{
	"be": "is are was were been being am", "beat": "beats beaten beating", "bend": "bends bent bending",
	"bleed": "bleeds bled bleeding", "blow": "blows blew blown blowing", "break": "breaks broke broken breaking",
	"bring": "brings brought bringing", "build": "builds built building", "burn": "burns burnt burned burning",
	"burst": "bursts bursting", "buy": "buys bought buying", "catch": "catches caught catching",
	"choose": "chooses chose chosen choosing", "come": "comes came coming", "cut": "cuts cutting",
	"dig": "digs dug digging", "do": "does did done doing", "draw": "draws drew drawn drawing",
	"drive": "drives drove driven driving", "feed": "feeds fed feeding", "feel": "feels felt feeling",
	"find": "finds found finding", "fit": "fits fitted fitting", "flip": "flips flipped flipping",
	"freeze": "freezes froze frozen freezing", "get": "gets got getting gotten", "give": "gives gave given giving",
	"go": "goes went gone going", "grind": "grinds grinding", "hang": "hangs hung hanging hanged",
	"have": "has had having", "hear": "hears heard hearing", "hit": "hits hitting", "hold": "holds held holding",
	"keep": "keeps kept keeping", "kneel": "kneels knelt kneeling", "lay": "lays laid laying",
	"lean": "leans leant leaned leaning", "leave": "leaves left leaving", "let": "lets letting",
	"lie": "lies lay lain lying", "light": "lights lit lighted lighting", "lose": "loses lost losing",
	"make": "makes made making", "meet": "meets met meeting", "melt": "melts melted melting", "mow": "mows mowed mown mowing",
	"put": "puts putting", "quit": "quits quitting", "read": "reads reading", "ride": "rides rode ridden riding",
	"ring": "rings rang rung ringing", "run": "runs ran running", "say": "says said saying", "see": "sees seen seeing",
	"send": "sends sent sending", "set": "sets setting", "shake": "shakes shook shaken shaking",
	"shoot": "shoots shot shooting", "show": "shows showed shown showing", "shut": "shuts shutting",
	"sit": "sits sat sitting", "slide": "slides slid sliding", "sling": "slings slung slinging", "slit": "slits slitting",
	"speak": "speaks spoke spoken speaking", "spin": "spins spun spinning", "split": "splits splitting",
	"spread": "spreads spreading", "stand": "stands stood standing", "stick": "sticks stuck sticking",
	"strike": "strikes struck striking", "sweep": "sweeps swept sweeping", "swing": "swings swung swinging",
	"take": "takes took taken taking", "teach": "teaches taught teaching", "tear": "tears tore torn tearing",
	"tell": "tells told telling", "think": "thinks thought thinking", "throw": "throws threw thrown throwing",
	"tie": "ties tied tying", "undo": "undoes undid undone undoing", "unwind": "unwinds unwound unwinding",
	"wear": "wears wore worn wearing", "weld": "welds welded welding", "wet": "wets wetted wetting",
	"wind": "winds wound winding", "wring": "wrings wrung wringing", "write": "writes wrote written writing",
}
