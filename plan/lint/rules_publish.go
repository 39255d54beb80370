package lint

// publishRules are the rules of the group Publish, by name.
var publishRules = []Rule{
	captionFast, captionShort, captionTall, captionWide,
	chapterShort, chapterTitlesAlike, chaptersFew, correctionUndated, correctionUnplaced, descriptionLong, forbiddenCharacter,
	linkDropped, runningLong, titleLong,
}
