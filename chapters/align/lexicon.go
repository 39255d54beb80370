package align

import (
	_ "embed"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// What is known of English beyond the plan. english.txt is counted and phrases.txt
// learned, as their heads say; kin.txt and the lists below are ours, from common knowledge.

//go:embed english.txt
var counted string

//go:embed kin.txt
var kinWords string

//go:embed phrases.txt
var phraseWords string

//go:embed breaks.txt
var breakWords string

//go:embed chatter.txt
var chatterWords string

// lexicon holds it by stems.
type lexicon struct {
	common   map[string]float64 // share among the words of ordinary talk, of the commonest
	counted  map[string]float64 // the same as it was counted, of these and others
	bent     map[string]float64 // how much likelier a word is with hands at work than in talk, as a logarithm
	chat     map[string]bool    // words of talk beside the work: people, time, money, the video itself
	lead     map[string]bool    // words that lead into the next thing
	link     map[string]bool    // words that go on, or lead into the next thing
	again    map[string]bool    // words that lead into another take
	dangling map[string]bool    // words that no sentence ends with
	clinging map[string]bool    // words that hardly any sentence begins with
	remote   map[string]float64 // how far a word says that what is named is not done here and now
	numerals map[string]bool    // words that numbers are said with
	alike    map[string][]int   // groups of words that stand for each other
	kin      map[string][]int   // groups of words that go together
	phrases  *phrases
	function map[string]bool // words that only English has, without which no English goes
}

// phrases say by their words where steps and talk beside the work begin, as
// logarithms of likelihood ratios.
type phrases struct {
	begin  map[string]float64 // the first word of a step
	second map[string]float64 // its second word
	end    map[string]float64 // the word before it
	aside  map[string]float64 // the first word of talk beside the work
	talk   map[string]float64 // each word of it
	chat   map[string]float64 // the same for words and pairs of them, as "used_to"
	breaks *breaks
}

// breaks say by their words where a sentence ends, in the same way.
type breaks struct {
	before, before2 map[string]float64 // the last word of a sentence; the one before it
	after, after2   map[string]float64 // the first word of the next; its second
	across          map[string]float64 // both words beside the parting, as "is_now"
	upto, onward    map[string]float64 // the two words before it; the two after
}

// weighed reads lists: a line is a list's name, a weight, and the words that have it.
func weighed(text string, names ...string) []map[string]float64 {
	lists := make([]map[string]float64, len(names))
	for i := range lists {
		lists[i] = map[string]float64{}
	}
	for line := range strings.Lines(text) {
		words := strings.Fields(line)
		if len(words) < 3 || words[0] == "#" {
			continue
		}
		weight, err := strconv.ParseFloat(words[1], 64)
		if err != nil {
			panic("a list of weighed words: " + line)
		}
		list := lists[slices.Index(names, words[0])]
		for _, w := range words[2:] {
			list[w] = weight
		}
	}
	return lists
}

func readPhrases(text string) *phrases {
	l := weighed(text, "begin", "second", "end", "aside", "talk")
	return &phrases{begin: l[0], second: l[1], end: l[2], aside: l[3], talk: l[4]}
}

func readBreaks(text string) *breaks {
	l := weighed(text, "before", "before2", "after", "after2", "across", "upto", "onward")
	return &breaks{l[0], l[1], l[2], l[3], l[4], l[5], l[6]}
}

// rare is the share of a word that was not counted: less than the rarest's.
const rare = 0.000002

// share is how often a word comes in ordinary talk, 0 to 1.
func (l *lexicon) share(key string) float64 {
	if s, ok := l.counted[key]; ok {
		return s
	}
	if s, ok := l.common[key]; ok {
		return s
	}
	return rare
}

// bend is how far a word is of hands at work: above 0 for those, below for talk
// beside it. The contractions of people's talk were not counted.
func (l *lexicon) bend(key string) float64 {
	if b, ok := l.bent[key]; ok {
		return b
	}
	if l.chat[key] {
		return -1.5
	}
	return 0
}

// english is the lexicon, made when it is first needed.
var english = sync.OnceValue(func() *lexicon {
	l := &lexicon{
		common: map[string]float64{},
		chat:   stems(chatWords), lead: stems(leadWords), link: stems(linkWords), again: stems(againWords),
		dangling: stems(danglingWords), clinging: stems(clingingWords),
		numerals: stems(numeralWords), function: map[string]bool{},
	}
	// Zipf's law: the word of rank r has about a tenth of 1/r of all words.
	rank := 0
	for _, w := range strings.Fields(commonWords) {
		rank++
		key := stem(w)
		l.common[key] += 0.1 / math.Pow(float64(rank)+1.5, 1.02)
		if rank <= 120 {
			l.function[key] = true
		}
	}
	l.counted, l.bent = counts(counted)
	l.remote = map[string]float64{}
	for weight, words := range remoteWords {
		for k := range stems(words) {
			l.remote[k] = weight
		}
	}
	l.phrases = readPhrases(phraseWords)
	l.phrases.breaks, l.phrases.chat = readBreaks(breakWords), weighed(chatterWords, "chat")[0]
	l.alike, l.kin = groups(alikeWords), groups(kinWords)
	return l
})

// groups reads groups of words, a line each, and gives for each stem the groups
// it is in.
func groups(text string) map[string][]int {
	in := map[string][]int{}
	for i, group := range strings.Split(text, "\n") {
		if strings.HasPrefix(group, "#") {
			continue
		}
		for _, w := range strings.Fields(group) {
			key := stem(w)
			in[key] = append(in[key], i)
		}
	}
	return in
}

// counts reads english.txt.
func counts(text string) (share, bent map[string]float64) {
	share, bent = map[string]float64{}, map[string]float64{}
	power, twice := 0, 0
	for line := range strings.Lines(text) {
		words := strings.Fields(line)
		switch {
		case len(words) == 0 || words[0] == "#":
			continue
		case len(words) == 2:
			if p, err := strconv.Atoi(words[0]); err == nil {
				power = p
				twice, _ = strconv.Atoi(words[1])
				continue
			}
		}
		for _, w := range words {
			share[w], bent[w] = math.Exp2(float64(power)), float64(twice)/2
		}
	}
	return share, bent
}

// commonWords are the words of everyday spoken English, commonest first, as
// far as memory orders them.
const commonWords = `the i and a to you it of that in is this we have on for
so be with was do but they are just like what not if your at or there can now
up out one all get about know here then don't my go got it's going from well
i'm right as me he no when some would them because that's how really him want
see think by an good off you're little will she her time make down thing her
okay way had back could been put take look where more which come two their
into who than over say very need didn't our first too us mean people these
other yeah sort kind can't any were we're actually bit we'll i'll i've let's
gonna only use those much lot even work day something before long nice after
again has doing still did around down everything around sure through being
every never made said why always three years keep maybe anything tell try
probably same there's they're isn't doesn't you'll you've won't wasn't old
new big part point side end should great might another most last next without
both under between while until away along let give find might whole enough
start stop start better four five ten few half hundred second minute hour
left hand top bottom inside outside together different nothing each set turn
call called show ask help hard easy quite already however though since
almost ever else place move feel leave water house home car money job week
today tonight morning night man woman guy guys kids name problem question
course stuff small high low open close full line number head true real
reason happen happened matter hope talk watch video video wait done gone seen
used needs wants makes looks goes comes gets takes says thanks hello hi
please sorry yes maybe must hold run off clean cut pull push check sit stand
bring remember pretty super everybody everyone somebody anybody someone itself
himself myself yourself themselves once twice often sometimes usually finally
basically literally especially simply exactly definitely certainly obviously
honestly hopefully anyway`

// chatWords tell of people, of times, of money and of the video itself:
// seldom in what a plan has the hands do.
const chatWords = `i i'm i've i'd i'll my me mine myself he she his her they
him us our who guys people everybody everyone somebody anybody nobody someone
friend neighbour neighbor wife husband brother sister father dad mother mum
mom uncle grandfather kid kids children boy girl dog cat family customer
viewer professional expert mechanic amateur years year ago month months week
weeks weekend yesterday today tomorrow tonight sunday monday tuesday saturday
friday summer winter morning evening afternoon night birthday holiday
christmas lunch coffee tea beer dinner breakfast weather rain raining sunny
cold story stories video videos channel comment comments subscribe like link
description viewers watch watching watched film filming camera edit online
internet forum website shop store bought buy paid pay cost costs cheap
expensive price money euros pounds dollars bucks hundred quid euro honestly
actually literally basically probably maybe perhaps hopefully personally
obviously honest love hate enjoy enjoyed favourite favorite fun funny laugh
joke crazy scary scared silly stupid terrible horrible awful amazing awesome
beautiful lovely pretty perfect happy glad sad proud tired lazy hungry lucky
luck believe think thought guess suppose wonder know knew remember remembered
forget forgot wrote write asked said told talk talking heard mention mentioned
sorry excuse thanks thank please welcome wish hope want wanted wants tried
learned learn taught teach worth opinion experience idea question questions
answer reason life world job hobby music radio noise background phone call
message email neighbours lorry truck traffic outside garden kitchen house
home street job worked works never always sometimes usually last once another
was were had did been would could might same somebody anyway whatever why
because`

// leadWords lead into the next thing.
const leadWords = `okay ok now next right alright first finally moving lastly`

// linkWords go on with what was said as often as they lead into the next thing.
const linkWords = `so then and well after also anyway again once second third
before when last here there let's time`

// againWords lead into another take, or say why there is one.
const againWords = `again sorry repeat redo retake wrong wait oops camera focus blurry`

// danglingWords want another word after them.
const danglingWords = `the a an of to and or but with from into onto for at by
my your our his their its this these every each if because when while until
than as which who whose i'm you're we're they're it's that's there's is are was
were be been has have had can could will would should must don't doesn't didn't
i i've we've i'll we'll you'll very quite too some any no between under behind
through without about around towards against let's so`

// clingingWords go on with what stands before them.
const clingingWords = `of than is are was were be been has have had will would
should could must can't doesn't didn't isn't wasn't won't ago either too enough
else off away along us them him her me it itself yourself until because which
whose although though`

// remoteWords say that what is named is not done here and now, by how surely they do:
// another time, a condition, a leaving out; a negation; what may go with those.
var remoteWords = map[float64]string{
	1.5: `could would should i'd you'd he'd she'd they'd we'd there'd that'd it'd
ought might skip skipping bother bothered spare forget leave leaving shown showed
omit already normally usually sometimes last week month year weekend today
tomorrow yesterday video film later`,
	0.8: `no not never don't won't isn't aren't haven't hasn't hadn't didn't wasn't
weren't can't couldn't wouldn't shouldn't doesn't needn't nothing none without
neither`,
	0.7: `if were had did only but own some people somebody any need else been when`,
}

const numeralWords = `zero one two three four five six seven eight nine ten
eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen
twenty thirty forty fifty sixty seventy eighty ninety hundred thousand million
point half third quarter eighth sixteenth tenth`

// alikeWords are groups, a line each, of words that a presenter says for one
// another when the plan is not read out.
const alikeWords = `remove take pull lift off out pop slide withdraw draw
undo unscrew loosen slacken release unbolt crack open free unfasten
fit install mount insert refit put place in new seat
replace swap exchange change new
tighten nip torque snug tight turn
attach connect reconnect plug join hook fasten secure
detach disconnect unplug unhook
switch turn flick power kill isolate
off dead isolate kill
on live power back restore
close shut turn off
press push shove
push slide move shift roll
pinch squeeze clamp nip
hold grip grab keep
turn twist rotate spin wind
pry prise lever
check test verify prove inspect look confirm
measure read meter multimeter reading check put
multimeter meter tester
photo photograph picture pic snap shoot
wait leave give let sit minute minutes
clean rinse wash wipe brush scrub clear
dirt grit dust muck crud debris gunk
scale limescale chalk
drain empty pour bleed
fill top pour add
oil grease lubricate lube
leak drip wet weep water
dry wet leak drip
slowly slow gently easy careful carefully gradual
gently light lightly soft
firmly hard tight firm
finger hand thumb
joint union fitting connection coupling connector nut
nut union
tap faucet valve stopcock stop
mesh strainer screen filter sieve
hose pipe tube line
cover lid cap panel plate plinth guard shroud
panel board trim
bracket holder mount support
clamp clip jubilee
screw bolt fastener fixing
spanner wrench
pliers grips snips
torch flashlight lamp light
rag cloth towel paper
seal gasket ring washer rubber
breaker fuse switch box circuit
fuse breaker
electricity power mains current supply juice
wire wires lead cable wiring
plug connector terminal
earth ground
fault trouble problem error issue symptom cause
broken dead faulty gone bad failed blown
good fine okay healthy ok
open infinite nothing broken off
resistance ohm ohms
kilohm k kilo
display panel screen shows says
start run begin press
program programme cycle wash
machine unit appliance washer dishwasher
front face
rear back behind
below under beneath underneath bottom
above over top upper
side left right hand
edge rim lip
corner end
inside in within
outside out outer
part piece component bit spare
container bucket bowl tray tub pan
tub bottom drum bowl
floor ground bench
gap clearance space distance
mark label note
position place spot location
align line match
loose slack free play
noise sound hum rattle squeal
smell odour burn burnt
crack split tear damage damaged worn wear
worn old tired
watch see look
hear listen sound
about around roughly approximately
second seconds
minute minutes couple
twice two couple
remaining rest last other
both pair two
engine motor
petrol gas fuel gasoline
bonnet hood
tyre tire wheel
boot trunk
jack raise lift lower stand
`
