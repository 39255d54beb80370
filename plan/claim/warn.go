package claim

import (
	"slices"
	"strings"

	"fixslate/plan/prose"
)

// Warns holds for a sentence that tells how to keep clear of what hurts, and why:
// "Keep your face away, because it can burst." It gives a reason and claims
// nothing of the thing: what hurts is the hazards' matter.
func Warns(text string) bool {
	var words []string
	for _, w := range prose.Words(text) {
		words = append(words, prose.Fold(w.Of(text)))
	}
	if len(words) == 0 {
		return false
	}
	line := " " + strings.Join(words, " ") + " "
	has := func(phrase string) bool { return strings.Contains(line, " "+phrase+" ") }
	return slices.ContainsFunc(harmWords, has) && (slices.Contains(warningVerbs, words[0]) || slices.ContainsFunc(forbidding, has))
}

var (
	forbidding   = []string{"never", "don't", "do not", "must not"}
	warningVerbs = []string{"keep", "stand", "stay", "wear", "put", "leave", "wait", "let", "unplug", "switch", "turn", "pull", "disconnect", "open", "mind", "watch", "take", "hold", "use", "chock", "support", "make", "always", "gloves", "goggles", "glasses", "hands", "fingers", "nobody"}
	harmWords    = []string{"kill", "kills", "shock", "shocks", "burn", "burns", "scald", "scalds", "blind", "blinds", "crush", "crushes", "explode", "explodes", "burst", "bursts", "catch fire", "ignite", "ignites", "poison", "poisons", "choke", "hurt", "hurts", "injure", "injures", "cut you", "cuts you", "cuts skin", "cuts standing", "bite", "bites", "fall on", "falls on", "drop on", "drops on", "let go", "lets go", "your eyes", "your skin", "your lungs", "your fingers", "a finger", "your face"}
)
