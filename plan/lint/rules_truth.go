package lint

// truthRules are the rules of the group Truth, by name.
var truthRules = []Rule{
	batteryUnchecked, causeUntested, causesAlike, differsUnsaid, driveOlderStandard, driveUnknown,
	fuseColour, fuseWire, objectUntried, outcomeUnshown, polarityByVariant, sourceDated,
	sourceMissing, specImplausible, testDeadEnd, testUnshown, testWithoutReading, torqueImplausible,
	torqueUnitSlip, valueOpen, variantGap,
}
