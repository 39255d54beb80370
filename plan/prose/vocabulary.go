package prose

import (
	"strings"
	"sync"
)

// The words that decide what a number or a capital is. They are common English
// and trade words; none needs to be complete.

// labels are nouns that a number behind them names instead of counting:
// "step 4", "pin 3".
var labels = classed(map[FigureKind]string{
	StepNumber: `step steps chapter page pages part section paragraph figure fig number no nos point item line row shot take test
		question rule tip method option stage day lesson episode video table appendix clause p pp note reason ch`,
	Label: `pin pins terminal terminals fuse relay cylinder cylinders speed gear position setting slot port circuit channel
		bank sensor injector coil plug wire zone group level grade class category type model series version size code
		error fault dot sae iso din en iec ip mark phase schedule torx phillips pozidriv drive output input switch
		button connector socket cell ring burner valve serial reference ref rev revision diagram cone tank
		floor room bay lane junction unit machine door window side`,
})

// classed gives each word of some lists its list's class.
func classed[C comparable](lists map[C]string) map[string]C {
	all := make(map[string]C, 128)
	for class, list := range lists {
		for word := range strings.FieldsSeq(list) {
			all[word] = class
		}
	}
	return all
}

func set(words string) map[string]bool { return classed(map[bool]string{true: words}) }

// digitNouns are nouns behind which a number is said digit by digit.
var digitNouns = set(`number no part code error fault serial reference ref model iso en din iec bs ansi astm ul vde jis nfpa standard`)

// determiners stand before "point" where it is the noun: "at this point two".
var determiners = set(`this that the some what which any every each no starting good test earth ground lifting jacking fixing contact boiling
	weak key main first second next another one whole your my flash freezing melting mounting anchor pivot power access
	entry`)

// functionWords stand behind a quantity without being the noun it measures:
// "40 mm up the hose" has millimetres, "13 mm nuts" has millimetre.
var functionWords = set(`a about above across after again against all along already also although always am an and any apart are around as at
	away back be because been before behind below beneath beside between beyond both but by can could deep did do does
	down during each either else every exactly except far few first for from further give gives goes had has have he here
	high hot cold how i if in inside instead into is it its just last late later left less long longer many max maximum
	may means might min minimum more most must my near nearly no nor not now of off on once only onto or other our out
	outside over past per plus reads right round says shall she should shows since so some still such tall than that the
	their them then there these they thick this those though through till to today together too toward towards under
	until up upon us very was we were what when where whether which while who why wide will with within without would yet
	you your tight total nominal apiece ago earlier short shorter wait close ok okay minus times anyway rms dc ac we're
	it's that's you're i'm they're don't isn't doesn't we've i've you've there's what's comes makes takes needs wants
	drops rises flows running using depending according here's clockwise anticlockwise straight slowly roughly
	approximately`)

// ordinalEndings stand behind the digits of an ordinal.
var ordinalEndings = set("st nd rd th")

// spokenWords are capitals said as a word, and ordinary words that people write
// in capitals to shout; other short words in capitals are spelled out.
var spokenWords = set(`RAM ROM PIN SIM DOT NATO JIS DIN LAN BIOS PAT TORX RADAR LASER SCART CAT MIG TIG ACME WAN GIF JPEG NASA UNESCO OSHA
	NIOSH MOT OK A I AM AN AND ANY ARE AS AT BAD BE BEEN BIG BOTH BOX BUT BUY BY CALL CAN CAP CAR CUT DAY DID DO DOES
	DON'T DRY DUE EACH END FAN FAR FEW FIT FIX FOR FULL GAP GAS GET GO GOOD GOT HAD HAS HE HER HIGH HIS HOLD HOT HOW IF
	IN INTO IS IT ITS JUST KEEP KEY LAST LEFT LESS LET LIVE LOW MAIN MANY MAX MAY ME MIN MORE MUST MY NEW NO NOR NOT NOW
	NUT OF OFF OIL OLD ON ONE ONLY OPEN OR OUR OUT OVER OWN PER PUT RED RUN SAY SEE SET SHE SHUT SIX SO STOP TAP TEN TEST
	THAN THAT THE THEN THEY THIS TO TOO TOP TRY TWO UP USE VERY WARM WAS WAY WE WET WHEN WHO WHY WILL WITH YES YET YOU
	YOUR BACK DOWN FROM HAND HAVE HERE LOCK NEXT PULL PUSH TURN WAIT FIRE AIR ARC ACID BOLT FUEL FUSE HEAT LAMP LIFT PARK
	PLUG PUMP RISK ROD SAFE SIDE STEP TANK TYRE WIRE EVER ALSO ALL BEST CASE COLD HARD HOME KILL LONG LOSE MAKE NEED NONE
	PART READ REAR ROAD SAME SLOW SURE TAKE TIME TOOL VENT WAVE WORK ZERO MENU MODE AUTO EXIT MUTE PLAY FAST NOTE EASY
	FREE LOAD ICE EYE`)

// romanNumerals that count marks and types; "I", "V" and "X" alone are letters.
var romanNumerals = map[string]int{"II": 2, "III": 3, "IV": 4, "VI": 6, "VII": 7, "VIII": 8, "IX": 9, "XI": 11, "XII": 12}

// lowerSpelled are said letter by letter though they are often written small.
var lowerSpelled = set("mpg pcb usb pvc ptfe dc lcd tv rcd mcb dvd cd diy")

// spelledWords are short capitals with a vowel that are spelled out all the
// same; those of three letters are anyway.
var spelledWords = set("HVAC EPDM OEMS OBDII ECUS IEEE AAAA UNEF COOH ELCB RCBO AFDD VOIP")

var datePrepositions = set("on by until since from before after till dated of")

var priceWords = set(`cost costs costing paid pay price priced prices worth charge charges charged spend spent bill cheap cheaper expensive
	buy bought sell sold save saves saved delivered postage quote quoted refund budget money each vat labour online
	retail price-wise`)

// coiners tell whose money is meant.
var coiners = set("american australian canadian us british irish")

// articleNouns are the units that may stand behind an article as a measure. "A
// meter" reads volts.
var articleNouns = set(`hour litre liter metre millimetre millimeter centimetre centimeter inch kilo kilogram gram volt amp ohm kilohm
	milliamp millivolt second minute day week month year bar turn degree mile foot yard pound quid euro dollar percent
	newton mil watt hertz gallon pint grand thou kilowatt kilometre kilometer millilitre milliliter tonne`)

// compared are what "half the" is a claim about; "the other half" is none.
var compared = set(`price cost time weight length size width thickness power speed money life resistance effort voltage current pressure
	height depth torque noise flow capacity output area range amount work number rate value volume force strength`)

// leadsNumber holds the words that begin a number and are none.
var leadsNumber = set("a an half quarter minus negative")

// rails are what is named by "three volt three".
var rails = set("rail line supply logic bus side")

// stopOnly are short forms that are words without their stop.
var stopOnly = set("max min temp no in fig ref p ch nom adj dia sec esp ca pt rev para prof orig pc mr mrs dr deg")

// numberOnly are short forms before a number alone: "No. 4", but "Is it? No."
var numberOnly = set("no nos nr fig figs p pp ch sect para vol rev pt ref")

// loneUnits are unit symbols that are no English words.
var loneUnits = set(`mm cm km kg mg Nm Ncm psi rpm Hz kHz MHz GHz kPa MPa hPa mbar mV kV mA kW kWh Wh mAh Ah dB dBA ml mL cl lb lbs oz ft
	mph kph hrs mins secs lbft ftlb cfm ppm cc nF pF uF mH`)

// unitTails are the words that go on with a unit behind a space: "newton
// metres", "lb ft", "degrees C". TestUnitsOfTrade holds the list to the table
// of units.
var unitTails = set(`metre metres meter meters centimetre centimetres millimetre millimetres millimeters m mm cm foot feet ft inch inches
	in pound pounds lb lbs lbf ounce ounces oz fl fluid gal gallon gallons qt quart quarts pt pint pints square squared
	sq force per hour hours h minute second million celsius centigrade fahrenheit c f ohm ohms ω farad farads of an
	mercury water column hg wc h2o mil mill mils ac dc a weighted wire gauge t u s i p newton newtons watt watts pascal
	pascals amp amps volt volts hertz litre litres liter liters gram grams cent ton tons tonne horsepower`)

// shortUnits are written short though they look like words.
var shortUnits = set("mins secs degs lbft ftlb inlb mbar kohm kohms")

// liquids are measured in "mil" that are millilitres.
var liquids = set(`oil water fluid coolant fuel petrol diesel thinner thinners cleaner vinegar antifreeze solvent spirit paraffin acid
	sealant silicone adhesive glue primer bleach varnish resin hardener milk ink soap wax
	detergent degreaser paint brake gearbox mineral hydraulic lubricant`)

// lengthWords say that a length stands before them.
var lengthWords = set("long wide deep high tall thick diameter dia across away apart bore pipe hose nipple thread drive union")

// fullness are words that may stand between an article and its fraction.
var fullness = set("full good bare scant further extra")

// pointing are words behind which "one" is a pronoun.
var pointing = set(`this that each every last first next other which the any another only no second third old new big small long short
	left right`)

// abbreviation says what a full stop after a shortened word means for the end
// of a sentence.
type abbreviation int

const (
	plainWord    abbreviation = iota
	neverEnds                 // something always follows: "approx."
	mayEnd                    // ends a sentence before a capital: "etc."
	beforeNumber              // shortened before a number, else a word: "No. 4"
	unitShort                 // a unit after a number: "10 min."
)

// abbreviations are lower case and without their last stop.
var abbreviations = classed(map[abbreviation]string{
	neverEnds: `approx appr ca e.g eg i.e ie viz cf vs incl excl esp resp mr mrs ms dr prof dia diam adj temp
		std orig sim nom aux resist vers ver qty tel w.r.t st mt alt abbr misc`,
	mayEnd: `etc a.m p.m ltd inc co corp a.c d.c o.d i.d assy jr sr`,
	beforeNumber: `vol no nos nr fig figs p pp pg ch sect art para cl eq tab rev pt ref cat ser jan feb mar apr jun
		jul aug sep sept oct nov dec`,
	unitShort: `in ins ft yd yds mi oz lb lbs gal qt sq cu min mins max sec secs hr hrs deg pct wk wks yr yrs ga
		rpm v c pcs pc`,
})

// openers are the words with which sentences begin.
var openers = set(`the this that these those then there they if it it's its in i you your we our he she and but so or now next when
	where while once after before until as at on for with from to do don't never always no not yes check turn take
	put set use make keep what why how who which an all both each every some most here let let's that's remove undo
	pull push stop wait watch look also only still anything any`)

// leads stand before an order without changing it.
var leads = set("now next first second third last so but just please again right okay ok well also always still once more")

// afterVerb follow a verb and no noun that opens a clause.
var afterVerb = set(`a an the this that these those it them its your my our both each every all any some one two three four five six
	half another what whatever new old off out on in up down back through over along round around away into onto
	under apart together home tight firmly gently slowly carefully with until before between across against`)

// idioms open like an order to the hands and are none.
var idioms = []string{"take a look", "take a second", "take a minute", "take a moment", "take a picture", "take a photo",
	"take your time", "take the time", "put it another", "put that another", "set a timer", "set your timer",
	"mark my words", "turn up at", "hold on a", "check out my", "check out the"}

// handVerbs are work of the hands wherever they open a clause; handNouns are it
// where one of afterVerb follows, and may be things otherwise. Few runs ask for
// them.
var (
	handVerbs = onDemand(`undo unscrew unbolt unclip unhook unplug unlock unwind untie unfasten unthread unsolder unlatch unpin unwrap
		unroll unfold unstrap loosen slacken tighten retighten remove detach attach disconnect reconnect connect
		install reinstall refit reassemble dismantle disassemble pull push lift lower raise slide prise pry insert
		align realign soak pour degrease lubricate scrub wipe peel scrape strip desolder solder crimp tilt swing
		rotate squeeze bleed flush tuck snip discharge isolate replace refill reattach regrease swap rinse drain
		wiggle prop clamp hammer drill stretch feed blow`)
	handNouns = onDemand(`take put set hold place lay turn press fit slip bring get give run work pop spread cut file plug brush oil
		grease glue tape screw clip bolt wire paint sand spray wash dry clean fill bend mark lock jack strap lever
		wedge pin tap twist switch roll tie tug pump pack thread hook hang knock drop tip nip mount seat offer open
		close shut cover check test measure start dab rub coat seal cable route empty vacuum dust heat cool charge
		wrap bleed break free ease line level trim shake stir mix chisel saw plane fold flip flick trap wind crank
		spin`)
)

func onDemand(words string) func() map[string]bool {
	return sync.OnceValue(func() map[string]bool { return set(words) })
}
