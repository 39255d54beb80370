// Package prose reads the words of a plan: Markdown, sentences, numbers.
//
// In goes text as an author wrote it, or as captions heard it. Out come runs of
// text with their places in the source, plain text and safe HTML (Inline,
// Plain, HTML), sentences and words as spans (Sentences, Words), the words a
// presenter says (Spoken) and the numbers that stand in a text, in digits or in
// words, with their units (Figures, ParseNumber).
//
// The language read is English, and the words given back are British. Spans
// count bytes. Every function accepts any bytes, invalid UTF-8 too, costs time
// in proportion to the text, and gives the same answer on every machine.
//
// The package knows nothing of plans: it fills no quotes by itself, judges no
// claim and measures no time.
package prose

// Span is a stretch of a text in bytes, Start included and End not.
type Span struct{ Start, End int }

// Of gives the words the span covers in the text it was taken from.
func (s Span) Of(text string) string { return text[s.Start:s.End] }
