package lint

// editRules are the rules of the group AfterEdit, by name. They are quiet where
// a Pass has no edit.
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
