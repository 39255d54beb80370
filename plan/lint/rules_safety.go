package lint

// safetyRules are the rules of the group Safety, by name.
var safetyRules = []Rule{
	bystanderNear, cautionIncomplete, cautionLate, cautionMismatch, cautionMissing, cautionPerhaps, cautionStale, cautionUnspoken,
	cautionWeak, gearMissing, helperPlace, helperUncued, jumperUnfused, languageUnread,
	licenceMissing, liveMeasure, occupiedRaised, refitUnsafe, stateUnsafe, waitUncited,
}
