package shotlist

import (
	"slices"
	"strings"
)

// fluids are what is poured, smeared or sprayed in: it sits no way round, so no
// shot of how it sat or sits is called for. The list is ours, from trade use.
var fluids = strings.Fields(`acid adhesive alcohol antifreeze antiseize cement cleaner coolant degreaser diesel
	electrolyte enamel epoxy fluid flux foam fuel gas glue grease grout gel lacquer liquid lubricant mortar oil
	paint paste petrol plaster putty refrigerant resin sealant sealer silicone solder solvent spirit varnish
	water wax`)

// isFluid holds for a part whose name says a fluid: its last word, before
// anything that a comma, a bracket or a preposition adds ("engine oil, 0W-20",
// but not "oil filter").
func isFluid(name string) bool {
	name = strings.ToLower(name)
	if i := strings.IndexAny(name, ",;("); i >= 0 {
		name = name[:i]
	}
	words := strings.Fields(name)
	if i := slices.Index(words, "of"); i > 0 && slices.Contains(vessels, strings.TrimSuffix(words[i-1], "s")) {
		words = words[i+1:] // "a tube of white grease"
	}
	if i := slices.IndexFunc(words, func(w string) bool { return slices.Contains(added, w) }); i > 0 {
		words = words[:i]
	}
	return len(words) > 0 && slices.Contains(fluids, words[len(words)-1])
}

// vessels are what fluids are sold and measured in, without their s.
var vessels = strings.Fields("tube can tin bottle pot jar tub drum cartridge sachet syringe litre liter pint ml dab drop")

// added are words behind which a name is only described.
var added = []string{"for", "in", "from", "with", "of", "to", "that", "which"}
