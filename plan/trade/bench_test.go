package trade

import "testing"

func BenchmarkLookupUnit(b *testing.B) {
	for b.Loop() {
		LookupUnit("newton metres")
		LookupUnit("mm")
		LookupUnit("pins")
	}
}

func BenchmarkParseMeasure(b *testing.B) {
	for b.Loop() {
		ParseMeasure("10..20 Ω")
		ParseMeasure("12 V at the plug")
	}
}

func BenchmarkDrivesOf(b *testing.B) {
	for b.Loop() {
		DrivesOf("8, 10 and 13 mm sockets")
		DrivesOf("multimeter")
	}
}

func BenchmarkDriveFits(b *testing.B) {
	for b.Loop() {
		DriveFits("M5", "hex", Drive{Hex, "8 mm"})
	}
}

func BenchmarkSlip(b *testing.B) {
	for b.Loop() {
		slip("M6", "8.8", Quantity{Number: 80, Unit: NewtonMetre})
	}
}
