package lint

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan"
)

// standardName holds for a number that a standard gives to a size or a kind,
// whoever makes it: "an H7 bulb", "a CR2032", "608ZZ". It is on the shelf by that
// name, and no maker's part has to be declared for it. around are the folded words
// of the line: an A4 is a page only beside paper.
func standardName(number, around string) bool {
	bare := bareNumber(number)
	if standardNumbers().MatchString(bare) || tyreWidth().MatchString(number) {
		return true
	}
	for _, n := range namedBeside {
		if strings.HasPrefix(bare, n.prefix) && len(bare) <= n.longest && says(around, n.words...) {
			return true
		}
	}
	return false
}

// hasStandardPart holds where a part of the plan is called by such a number: then
// another one said is likely that part with a digit wrong.
func (p *Pass) hasStandardPart() bool {
	return slices.ContainsFunc(p.Plan.Parts, func(part plan.Part) bool {
		return slices.ContainsFunc(strings.Fields(part.Name.Print+" "+part.Number), func(w string) bool { return standardNumbers().MatchString(bareNumber(w)) })
	})
}

// standardNumbers are designations of standards, in small letters without marks.
// All from memory.
var standardNumbers = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:` + strings.Join([]string{
		`h(?:[1-9]|1[0-9])|hb[34]|d[1-4][rs]|p21(?:5)?w|py21w|[wrct](?:5|10|16|21)w`,                                   // lamps of vehicles: UN Regulation 37
		`e(?:5|10|11|12|14|17|26|27|40)|b(?:15d?|22d?)|gu(?:5\.?3|53|10)|g(?:4|9|13|23|24)|gx53|mr(?:11|16)|r7s|t[58]`, // lamp caps: IEC 60061
		`[cls]r\d{1,4}[a-z]?|a{2,4}|pp3|6[fl]r?22|18650|21700|14500|16340|26650|9v`,                                    // cells: IEC 60086
		`6[0238]?\d{2,3}(?:zz?|2?rs1?|2rsh?|ll[ub]|ddu|vv)`,                                                            // ball bearings with their seals: ISO 15
		`rj\d{2}|db?9|db25|xlr\d?|c(?:5|6|7|8|13|14|15|19|20)|usb[abc]?\d*|hdmi\d*|sata\d?|m2|ddr\d|cat\d[ae]?`,        // connectors: IEC 60320, 60603
		`\d{3}\d{2}r\d{2}|r1\d|r2[0-4]|700c|650b|29er`,                                                                 // tyres: ISO 4000-1, ISO 5775
		`ffp[123]|n95|ip\d{2}|(?:en|iso|iec|din|bs|ansi|sae|jis|ul)\d+`,                                                // standards by name
		`a[24][5678]0`, // stainless screws: ISO 3506
		`mp[34]|[2345]g|[48]k|(?:fm|am|uhf|vhf|dab|wifi|ch)\d+`, // what is sent and played
	}, "|") + `)$`)
})

// tyreWidth is the first half of a tyre's size: "205/55".
var tyreWidth = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\d{3}/\d{2}$`) })

// namedBeside are designations that mean a size or a key only beside these words.
var namedBeside = []struct {
	prefix  string
	longest int
	words   []string
}{
	{"a", 2, []string{"page", "paper", "sheet", "sheets", "print", "copy", "card"}}, // ISO 216
	{"f", 3, []string{"press", "key", "hit", "hold", "boot"}},
}
