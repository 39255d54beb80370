package marks

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"hash/fnv"
	"strings"

	"fixslate/chapters"
)

// matroska is the chapter XML that mkvmerge reads, in the element order of its
// DTD. The element names are those of that DTD (ChapterString), not of RFC 9559
// (ChapString), whose own example mkvmerge refuses. No DOCTYPE: the DTD would
// have to stand beside the file. Times have nine decimals, rounded to
// milliseconds like every other format. UIDs may not be 0 and come from the
// title and the place in the list, so the same chapters have the same UIDs.
func matroska(f Film) []byte {
	var b bytes.Buffer
	b.WriteString("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
	if len(f.Chapters) == 0 { // an edition holds one at least
		b.WriteString("<Chapters>\n</Chapters>\n")
		return b.Bytes()
	}
	fmt.Fprintf(&b, "<Chapters>\n  <EditionEntry>\n    <EditionUID>%d</EditionUID>\n    <EditionFlagDefault>1</EditionFlagDefault>\n", uid("edition", len(f.Chapters)))
	for i, c := range f.Chapters {
		b.WriteString("    <ChapterAtom>\n")
		element(&b, "ChapterTimeStart", clock(chapters.Millisecond(c.Start))+"000000")
		element(&b, "ChapterTimeEnd", clock(chapters.Millisecond(c.End))+"000000")
		element(&b, "ChapterUID", fmt.Sprint(uid(c.Title, i)))
		b.WriteString("      <ChapterDisplay>\n")
		for _, e := range [][2]string{{"ChapterString", c.Title}, {"ChapterLanguage", iso639(f.Language)}, {"ChapLanguageIETF", ietf(f.Language)}} {
			b.WriteString("  ")
			element(&b, e[0], e[1])
		}
		b.WriteString("      </ChapterDisplay>\n    </ChapterAtom>\n")
	}
	b.WriteString("  </EditionEntry>\n</Chapters>\n")
	return b.Bytes()
}

func element(b *bytes.Buffer, name, text string) {
	fmt.Fprintf(b, "      <%s>", name)
	_ = xml.EscapeText(b, []byte(text)) // a Buffer takes everything
	fmt.Fprintf(b, "</%s>\n", name)
}

// uid is FNV-1a of a name and a number, 63 bits, never 0.
func uid(name string, n int) uint64 {
	h := fnv.New64a()
	fmt.Fprintf(h, "%s %d", name, n)
	return max(1, h.Sum64()>>1)
}

// ietf is the language as a BCP 47 tag, "und" where there is none.
func ietf(language string) string {
	if language == "" {
		return "und"
	}
	return language
}

// iso639 is the language as the three letters of ISO 639-2 (bibliographic),
// which Matroska readers without BCP 47 use; "und" where the list below has
// none. The list is from memory.
func iso639(language string) string {
	base, _, _ := strings.Cut(strings.ToLower(language), "-")
	for _, pair := range [...][2]string{
		{"cs", "cze"}, {"da", "dan"}, {"de", "ger"}, {"el", "gre"}, {"en", "eng"}, {"es", "spa"}, {"et", "est"},
		{"fi", "fin"}, {"fr", "fre"}, {"ga", "gle"}, {"hr", "hrv"}, {"hu", "hun"}, {"is", "ice"}, {"it", "ita"},
		{"ja", "jpn"}, {"ko", "kor"}, {"lt", "lit"}, {"lv", "lav"}, {"nb", "nob"}, {"nl", "dut"}, {"no", "nor"},
		{"pl", "pol"}, {"pt", "por"}, {"ro", "rum"}, {"ru", "rus"}, {"sk", "slo"}, {"sl", "slv"}, {"sv", "swe"},
		{"tr", "tur"}, {"uk", "ukr"}, {"zh", "chi"},
	} {
		if pair[0] == base {
			return pair[1]
		}
	}
	return "und"
}
