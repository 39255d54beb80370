package trade

// torqueDocument is one document's table; torque[i] belongs to classes[i], 0
// where the document has none.
type torqueDocument struct {
	source, friction string
	classes          []string
	lines            []torqueLine
}

type torqueLine struct {
	thread string
	torque []float64 // N·m
}

// torqueDocuments are copied from the documents as printed.
var torqueDocuments = []torqueDocument{
	{"a machine maker's manual, maximum torques, mu 0.14 in all, lightly oiled", "mu 0.14", []string{"8.8", "10.9", "12.9"}, []torqueLine{
		{"M4", []float64{3, 4.4, 5.1}},
		{"M5", []float64{5.9, 8.7, 10}},
		{"M6", []float64{10, 15, 18}},
		{"M8", []float64{25, 36, 43}},
		{"M10", []float64{49, 72, 84}},
		{"M12", []float64{85, 125, 145}},
		{"M14", []float64{135, 200, 235}},
		{"M16", []float64{210, 310, 365}},
		{"M18", []float64{300, 430, 500}},
		{"M20", []float64{425, 610, 710}},
		{"M22", []float64{580, 820, 960}},
		{"M24", []float64{730, 1050, 1220}},
		{"M8x1", []float64{27, 39, 46}},
		{"M10x1.25", []float64{52, 76, 90}},
		{"M12x1.25", []float64{93, 135, 160}},
		{"M12x1.5", []float64{89, 130, 155}},
		{"M14x1.5", []float64{145, 215, 255}},
		{"M16x1.5", []float64{225, 330, 390}},
	}},
	{"a hand-tool maker's sheet, 90 % of yield, mu 0.14", "mu 0.14", []string{"8.8", "10.9", "12.9"}, []torqueLine{
		{"M3", []float64{1.344, 1.883, 2.256}},
		{"M4", []float64{3.04, 4.315, 5.148}},
		{"M5", []float64{6.031, 8.483, 10.2}},
		{"M6", []float64{10.3, 14.71, 17.652}},
		{"M8", []float64{25.497, 35.304, 42.168}},
		{"M10", []float64{50.014, 70.608, 85.317}},
		{"M12", []float64{87.279, 122.6, 147.1}},
	}},
	{"VDI 2230:2001, fine threads, 90 % of Rp0.2 (a catalogue's copy)", "mu 0.14", []string{"8.8", "10.9", "12.9"}, []torqueLine{
		{"M8x1", []float64{29.2, 42.8, 50.1}},
		{"M10x1.25", []float64{57, 83, 98}},
		{"M12x1.25", []float64{101, 149, 174}},
		{"M14x1.5", []float64{159, 234, 274}},
		{"M16x1.5", []float64{244, 359, 420}},
		{"M18x1.5", []float64{368, 523, 613}},
		{"M20x1.5", []float64{511, 728, 852}},
		{"M22x1.5", []float64{692, 985, 1153}},
		{"M24x2", []float64{865, 1232, 1442}},
	}},
	{"VDI 2230:2001, fine threads, 90 % of Rp0.2 (a catalogue's copy)", "mu 0.12", []string{"8.8", "10.9", "12.9"}, []torqueLine{
		{"M8x1", []float64{26.1, 38.3, 44.9}},
		{"M10x1.25", []float64{51, 75, 87}},
		{"M12x1.25", []float64{90, 133, 155}},
		{"M14x1.5", []float64{142, 209, 244}},
		{"M16x1.5", []float64{218, 320, 374}},
	}},
	{"VDI 2230:2001, fine threads, 90 % of Rp0.2 (a catalogue's copy)", "mu 0.10", []string{"8.8", "10.9", "12.9"}, []torqueLine{
		{"M8x1", []float64{22.8, 33.5, 39.2}},
		{"M10x1.25", []float64{44, 65, 76}},
		{"M12x1.25", []float64{79, 116, 135}},
		{"M14x1.5", []float64{124, 182, 213}},
		{"M16x1.5", []float64{189, 278, 325}},
	}},
	{"an engine maker's standard, hand tightening, oiled, mu 0.125 in all", "mu 0.125, oiled", []string{"8.8", "10.9"}, []torqueLine{
		{"M6", []float64{9, 12}},
		{"M8", []float64{21, 31}},
		{"M8x1", []float64{23, 32}},
		{"M10", []float64{42, 60}},
		{"M10x1.25", []float64{45, 63}},
		{"M12", []float64{74, 100}},
		{"M12x1.25", []float64{80, 110}},
		{"M12x1.5", []float64{76, 105}},
		{"M14", []float64{115, 160}},
		{"M14x1.5", []float64{125, 180}},
		{"M16", []float64{180, 250}},
		{"M16x1.5", []float64{190, 270}},
		{"M20", []float64{350, 500}},
	}},
	{"a farm machine maker's manual, nominal torques", "not stated", []string{"8.8", "10.9"}, []torqueLine{
		{"M4", []float64{3.5, 5}},
		{"M5", []float64{7, 10}},
		{"M6", []float64{11.8, 17}},
		{"M8", []float64{28.8, 41.3}},
		{"M10", []float64{57, 82}},
		{"M12", []float64{100, 143}},
		{"M14", []float64{159, 227}},
		{"M16", []float64{248, 354}},
		{"M20", []float64{500, 690}},
		{"M24", []float64{865, 1195}},
	}},
	{"a turf machine maker's manual, dry", "dry", []string{"8.8", "10.9", "12.9"}, []torqueLine{
		{"M6", []float64{11, 17, 19}},
		{"M8", []float64{28, 40, 47}},
		{"M10", []float64{55, 80, 95}},
		{"M12", []float64{95, 140, 165}},
		{"M14", []float64{150, 225, 260}},
		{"M16", []float64{240, 350, 400}},
		{"M20", []float64{475, 675, 800}},
		{"M24", []float64{825, 1150, 1350}},
	}},
	{"a turf machine maker's manual, lubricated", "lubricated", []string{"8.8", "10.9", "12.9"}, []torqueLine{
		{"M6", []float64{9, 13, 15}},
		{"M8", []float64{22, 32, 37}},
		{"M10", []float64{43, 63, 75}},
		{"M12", []float64{75, 110, 130}},
		{"M14", []float64{120, 175, 205}},
		{"M16", []float64{190, 275, 320}},
	}},
}
