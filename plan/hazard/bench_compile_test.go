package hazard

import "testing"

// BenchmarkCompile is what the lexicon costs each run of the program.
func BenchmarkCompile(b *testing.B) {
	for b.Loop() {
		if _, err := compile(files); err != nil {
			b.Fatal(err)
		}
	}
}
