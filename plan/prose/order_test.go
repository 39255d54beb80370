package prose

import "testing"

// English as it is spoken at a bench (common practice, no source).
func TestOrders(t *testing.T) {
	for _, c := range []struct {
		sentence string
		want     int
	}{
		{"Brush each link, top and bottom, and turn the cranks backwards.", 2},
		{"One drop on each roller.", 0},
		{"Then wipe off what you see: oil outside the chain only collects grit.", 1},
		{"Undo both nuts.", 1},
		{"Carefully lift it out, then set it down on the cloth.", 2},
		{"I'm pulling the lead off now.", 1},
		{"We're cutting the ties one by one.", 1},
		{"Now I'll take the cover off.", 1},
		{"Next you press the tab in and slide the plug back.", 2},
		{"If it sticks, tap it with a mallet.", 1},
		{"Let's open it up.", 1},
		{"Oil on the disc ruins the pads.", 1}, // opens like an order: the price of no grammar
		{"New one in from the back, rubber washer first.", 1},
		{"Rubber washer on, new nut back.", 2},
		{"Battery in, plus end to the plus.", 1},
		{"Both screws out, and the lid off.", 2},
		{"The light comes on.", 0},
		{"And the lid springs up.", 0},
		{"From now on, and so on.", 0},
		{"Come on in.", 0},
		{"It is all worn out.", 0},
		{"My patience has run out.", 0},
		{"That is me signing off.", 0},
		{"Oil ruins the pads.", 0},
		{"Screws like these strip.", 0},
		{"Today we take it apart.", 0},
		{"We'll take the whole thing apart and see.", 0},
		{"Take a look at the belt.", 0},
		{"Take your time.", 0},
		{"Never open the case.", 0},
		{"Don't pull the cable.", 0},
		{"Undo it with what?", 0},
		{"You turn the key, and nothing happens.", 0},
		{"Your washer has stopped with a drum full of water.", 0},
		{"Wait five minutes.", 0},
		{"Listen for the click.", 0},
		{"Ask me below, and thank you for watching.", 0},
		{"", 0},
		{"?", 0},
		{"—", 0},
	} {
		if got := Orders(c.sentence); got != c.want {
			t.Errorf("%q: %d orders, want %d", c.sentence, got, c.want)
		}
	}
}
