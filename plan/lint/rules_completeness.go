package lint

// completenessRules are the rules of the group Completeness, by name.
var completenessRules = []Rule{
	connectorLeftOff, detourUnreached, finalCheckMissing, helperUnplanned, partUnused, refitMissing,
	sideUnsaid, stateGap, stepSilent, supplyUnused, toolMissing, toolUnused,
	torqueUnsaid,
}
