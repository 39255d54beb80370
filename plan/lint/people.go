package lint

import (
	"slices"
	"strings"
)

// People who are spoken of, and how. A sentence gives somebody a part in the
// work where it asks for them ("get a friend to hold the panel") or says what
// they do ("my neighbour holds the torch").
var (
	grownUps = []string{"friend", "friends", "mate", "neighbour", "neighbor", "partner", "wife", "husband", "colleague", "brother", "sister", "helper", "assistant", "buddy", "person", "somebody", "someone", "anybody", "father", "mother", "dad", "mum", "flatmate", "apprentice"}
	children = []string{"child", "children", "kid", "kids", "son", "daughter", "boy", "girl", "nephew", "niece", "grandson", "granddaughter", "toddler", "teenager", "youngster", "little one", "grandchild", "grandchildren"}

	askingWords  = []string{"get", "ask", "have", "need", "needs", "want", "grab", "let", "find", "rope"}
	helpingWords = []string{"hold", "holds", "holding", "help", "helps", "helping", "pass", "passes", "passing", "press", "presses", "pressing", "pull", "pulls", "pulling", "push", "pushes", "pushing", "turn", "turns", "turning", "lift", "lifts", "lifting", "steady", "steadies", "shine", "shines", "squeeze", "squeezes", "pump", "pumps", "carry", "carries", "watch the", "watches the", "stand on", "stands on", "sit in", "sits in", "sit on", "sits on", "catch", "catches", "count", "counts", "start", "starts", "hand me", "hands me", "gives me a hand", "give me a hand"}
	keptAway     = []string{"keep", "keeps", "kept", "away", "indoors", "inside", "out of", "no", "not", "never", "nobody", "don't", "without", "reach", "before", "safe from", "send", "locked", "clear", "lets go", "let go", "adult", "grown", "grown-up"}
)

// takesPart holds where a folded sentence gives one of the people a part: a verb
// of asking up to three words before them, or a verb of helping after them.
func takesPart(sentence string, people []string) bool {
	words := strings.Fields(sentence)
	for i, w := range words {
		if !slices.Contains(people, w) && !(i > 0 && endsPair(people, words[i-1], w)) {
			continue
		}
		before := words[max(0, i-3):i]
		asked := slices.ContainsFunc(before, func(b string) bool { return slices.Contains(askingWords, b) })
		after := " " + strings.Join(words[i+1:min(len(words), i+7)], " ") + " "
		if says(after, helpingWords...) && (asked || i < 5) {
			return true
		}
	}
	return false
}

// endsPair holds where two words together are one of the people.
func endsPair(people []string, first, second string) bool {
	return slices.ContainsFunc(people, func(name string) bool {
		rest, ok := strings.CutPrefix(name, first)
		return ok && len(rest) > 0 && rest[0] == ' ' && rest[1:] == second
	})
}

// childHelps holds where a step's words give a child a part in the work, and
// don't keep it away.
func childHelps(folded string) bool {
	return says(folded, children...) && slices.ContainsFunc(strings.Split(folded, " . "), func(sentence string) bool {
		return takesPart(sentence, children) && !says(" "+sentence+" ", keptAway...)
	})
}

// handsAsked holds where a step's words ask for somebody else's hands.
func handsAsked(folded string) bool {
	return says(folded, grownUps...) && slices.ContainsFunc(strings.Split(folded, " . "), func(sentence string) bool {
		return takesPart(sentence, grownUps) && !says(" "+sentence+" ", "no", "not", "never", "nobody", "don't", "without", "if", "or", "else", "who else")
	})
}
