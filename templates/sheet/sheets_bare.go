//go:build bare

package sheet

// These are missing while sheets.go is written: an old one may not fit the views
// any more.

func (o *out) before(*beforeView)  {}
func (o *out) day(*dayView)        {}
func (o *out) edit(*editView)      {}
func (o *out) helper(*helpersView) {}
func (o *out) review(*reviewView)  {}
func (o *out) risks(*Hazards)      {}
func (o *out) shots(*shotsView)    {}
func (o *out) voice(*voiceView)    {}
