package blurb

import (
	"cmp"
	"slices"
	"strings"

	"fixslate/chapters"
	"fixslate/plan"
)

// Cautions are the cautions that the plan's steps give, each once, gravest
// first and in the order of the story.
func Cautions(p *plan.Plan) []*plan.Caution {
	all := p.Told()
	slices.SortStableFunc(all, func(a, b *plan.Caution) int { return cmp.Compare(b.Signal, a.Signal) })
	return all
}

// Comment is comment.txt, the comment to pin: cautions in a few words,
// versions, differences, corrections. Chapters say where a correction belongs.
func Comment(p *plan.Plan, c []chapters.Chapter) []byte {
	var b strings.Builder
	section := func(heading string, lines []string) {
		if len(lines) == 0 {
			return
		}
		if b.Len() > 0 {
			b.WriteString("\n")
		}
		b.WriteString(heading + "\n")
		for _, line := range lines {
			b.WriteString("– " + printable(line) + "\n")
		}
	}
	var short []string
	for _, c := range Cautions(p) {
		short = append(short, strings.ToUpper(c.Signal.String())+": "+c.Say.Print)
	}
	section("Before you copy this:", append(short, deference))
	section("Which one is yours:", versions(p))
	section("How the filmed one differs:", differences(p))
	section("Corrections:", corrections(p, c).lines)
	return []byte(b.String())
}
