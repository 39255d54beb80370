package lint

// truthRules are the rules of the group Truth, by name.
var truthRules = []Rule{
	alwaysNever, batteryUnchecked, causeUntested, causesAlike, claimUntested, differsUnsaid,
	driveOlderStandard, driveUnknown, fuseColour, fuseWire, numberConflict, numberLoose,
	objectUntried, outcomeUnshown, partNumberUnverified, polarityByVariant, sourceDated, sourceMissing,
	specImplausible, testDeadEnd, testUnshown, testWithoutReading, torqueImplausible, torqueUnitSlip,
	unsure, valueOpen, variantGap, wireDrop,
}
