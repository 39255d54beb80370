package lint

// editRules are the rules of the group AfterEdit, by name. Where a Pass has no
// edit they are not asked.
var editRules = []Rule{
	cautionNotSaid,
	cautionSaidLate,
	chapterMoved,
	claimAdded,
	editForeign,
	editTimes,
	numberMisspoken,
	stepNotCovered,
	termMisheard,
}
