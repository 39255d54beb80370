package lint

// completenessRules are the rules of the group Completeness, by name.
var completenessRules = []Rule{
	partUnused, refitMissing, stateGap, stepSilent, supplyUnused, toolUnused,
}
