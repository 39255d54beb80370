package diag

// NewText makes a source of text that its reader has decoded already, with
// every line end a single LF: caption files come in encodings and sizes that a
// plan may not have. Its reader answers for both.
func NewText(name string, raw []byte, text string) *Source {
	s := &Source{Name: name, Raw: raw}
	s.setText(text)
	return s
}
