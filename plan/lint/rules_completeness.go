package lint

// completenessRules are the rules of the group Completeness, by name.
var completenessRules = []Rule{
	connectorLeftOff, dayImpossible, detourUnreached, finalCheckMissing, helperUnplanned, lastChance,
	partUnused, refitMissing, shotMissing, shotUnknown, sideUnsaid, stateGap, stateMisspelt, stepSilent,
	supplyUnused, toolMissing, toolUnused, torqueUnsaid,
}
