// The sentences that a job is told in. A blank is {key|what it is}; a sentence whose keys make no sense
// for a shape or repeat is not there, one that is not usual comes when it is asked for.
//
//   always  it is there without being asked for
//   ask     how it is asked for, at once where that is usual; start has the values it begins with
//   goesOn  it goes on where the one before ends; unless: not where one of these keys is given

const phrases = {
	"shape": { rectangle: "rectangular", round: "round", outline: "given by its corners", "four-sided": "crooked, by its four sides", drum: "a straight shade", cone: "a sloping shade" },
	"block.shape": { rectangle: "rectangular", round: "round", hexagon: "six-sided", outline: "given by its corners" },
	"repeat": {
		straight: "straight, in rows and columns", brick: "brick, rows moved along", "half-drop": "half-drop, columns moved down",
		honeycomb: "honeycomb", diagonal: "on the diagonal", frame: "as a frame round the edge", rings: "in rings", one: "as a single print in the middle",
		corners: "in the corners", placed: "at places of my own", tossed: "tossed, strewn all over",
	},
	"centre-across": { best: "whichever fits more", print: "a print", joint: "the joint of two prints" },
	"centre-down": { best: "whichever fits more", print: "a print", joint: "the joint of two prints" },
	"order": { "centre-out": "from the middle outwards", rows: "row by row", columns: "column by column" },
	"every-other": { false: "one print after its neighbour", true: "every second print first" },
	"any-turn": { false: "upright", true: "turned any way" },
	"open-edges": { false: "closed by four prints", true: "at the edge too" },
	"gap-even": { false: "each as it comes best", true: "the same" },
	"over": { false: "clear of", true: "over" },
	"tops": { out: "out to the edge", in: "in to the middle", up: "up, all of them" },
	"units": { mm: "millimetres", cm: "centimetres", in: "inches" },
	"paper.extent": { full: "whole", edges: "as strips round the edge only" },
	"paper.lines": { fine: "fine", strong: "strong, to show through cloth" },
	"paper.passes": { together: "together on one guide", apart: "each on a guide of its own" },
	"printing.hand": { right: "right", left: "left" },
};

// phrase returns how a word of a key reads in a sentence about a thing.
export const phrase = (thing, key, word) => (phrases[`${thing}.${key}`] ?? phrases[key] ?? {})[word] ?? word;

export const ofItem = [
	{ id: "what", always: true, text: "I print a {name|what I print}, {quantity|how many pieces} of them. It is {shape|its shape}" },
	{ id: "size", always: true, goesOn: true, text: ", {size|its size} from edge to edge" },
	{ id: "corners", always: true, goesOn: true, text: ": {outline|its corners, going round}" },
	{ id: "sides", always: true, goesOn: true, text: ": {sides|its four sides: top, right, bottom, left} along its sides, and {diagonal|its diagonal} from the top left corner to the bottom right" },
	{ id: "drum", always: true, goesOn: true, unless: "around", text: ": {diameter|its diameter} across" },
	{ id: "drum-tape", goesOn: true, text: ": {around|what a tape round it measures} around" },
	{ id: "cone", always: true, goesOn: true, unless: "top-around", text: ": {top|its diameter at the top} across at the top, {bottom|its diameter at the bottom} at the bottom" },
	{ id: "cone-tape", goesOn: true, text: ": {top-around|what a tape round its top measures} around at the top, {bottom-around|what a tape round its bottom measures} at the bottom" },
	{ id: "slope", goesOn: true, text: ", {slope|its slope} along the slope" },
	{ id: "height", always: true, goesOn: true, unless: "slope", text: ", {height|its height} high" },
	{ id: "border", always: true, text: "At least {border|the plain border} stays plain along every edge." },
	{ id: "hem", usual: true, ask: "its hem", start: { hem: "10 mm" }, text: "Its hem is {hem|its hem} wide." },
	{ id: "seam", ask: "the lap of its seam", start: { lap: "10 mm" }, text: "Its seam laps by {lap|the lap of its seam}." },
	{ id: "faces", usual: true, ask: "both sides", start: { faces: "front, back" }, text: "I print these sides of it: {faces|the sides that are printed}." },
	{ id: "pieces", ask: "several on one cloth", start: { pieces: "2 x 3", apart: "20 mm" }, text: "{pieces|how many lie on one cloth, across x down} of them lie on one cloth, {apart|the cloth between them} apart, and are cut apart when dry." },
	{ id: "along", ask: "a cloth longer than the table", start: { "move-along": "120 cm" }, text: "My table is {move-along|the table's length} long; the guide is moved along it." },
];

export const ofZone = [
	{ id: "zone", always: true, text: "I keep a place clear: its {name|what is kept clear}, {size|its size}, its top left corner at {at|where its top left corner is: across x down} from the cloth's." },
	{ id: "face", ask: "only on one side", text: "It is on the {face|the side it is on} only." },
];

export const ofColourway = [
	{ id: "colourway", always: true, text: "{quantity|how many pieces} of them come in other colours, called {name|the colourway's name}: {swap|which colour for which}." },
];

// ofBlock goes on in the sentence that names the block.
export const ofBlock = [
	{ id: "print", always: true, goesOn: true, text: ", which is {shape|the shape of its face} and prints {print|the size of its print}" },
	{ id: "corners", always: true, goesOn: true, text: ", its corners {outline|the corners of its face, going round}" },
	{ id: "wood", usual: true, ask: "its wood", goesOn: true, start: {}, text: ", on wood of {wood|the size of its wood}" },
	{ id: "offset", goesOn: true, text: ", the wood moved {wood-offset|how far the wood's middle is from the face's: right x down}" },
	{ id: "inked", ask: "how much of it carries paint", start: { inked: "0.5" }, goesOn: true, text: ", {inked|the share of its face that carries paint} of it carrying paint" },
];

export const ofPass = [
	{ id: "repeat", always: true, text: "It is set {repeat|how the prints are set out}" },
	{ id: "openings", usual: true, ask: "seated in the openings of an earlier pass", text: "It is seated in the openings of {between|the pass in whose openings it is}" },
	{ id: "on", usual: true, ask: "set on the prints of an earlier pass", text: "It goes on the prints of {on|the pass on whose prints it goes}" },
	{ id: "gap", always: true, goesOn: true, unless: "lap gap-across gap-down", text: ", {gap|the gap between prints} apart" },
	{ id: "gaps", ask: "another gap down than across", goesOn: true, instead: "gap lap", start: { "gap-across": "1 mm", "gap-down": "1 mm" }, text: ", {gap-across|the gap across} apart across and {gap-down|the gap down} down" },
	{ id: "lap", usual: true, ask: "prints that lap", instead: "gap gap-across gap-down", start: { lap: "0.5 mm" }, goesOn: true, text: ", lapping by {lap|by how much prints lap}" },
	{ id: "colours", always: true, goesOn: true, unless: "dabs colours-in-turn", text: ", in {colours|its colours}" },
	{ id: "edges", ask: "openings at the edge", text: "Openings are {open-edges|which openings count}." },
	{ id: "offset", ask: "a little off them", text: "Each is moved {offset|how far it is moved: right x down} from the middle." },
	{ id: "side", ask: "on one side only", text: "This is on the {face|the side that is printed} only." },
	{ id: "exactly", usual: true, ask: "exactly so many", text: "There are to be exactly {across|how many across} across and {down|how many down} down." },
	{ id: "even", ask: "the same gap both ways", start: { "gap-even": "true" }, text: "Across and down the gap opens {gap-even|how the gap opens}." },
	{ id: "centre", ask: "what is on the creases", text: "On the crease from far to near is {centre-across|what is on the crease from far to near}; on that from left to right {centre-down|what is on the crease from left to right}." },
	{ id: "step", ask: "how far rows are moved", start: { step: "1/2" }, text: "Every other row or column is moved by {step|the share it is moved by} of the way to the next print." },
	{ id: "turned", ask: "how far it is turned", text: "The whole is turned by {grid-turn|the degrees it is turned by} degrees." },
	{ id: "turns", usual: true, ask: "turned blocks", start: { turns: "0 90, 270 180" }, text: "Blocks are turned by {turns|quarter turns in degrees, a row of the repeat after the other} degrees, row after row." },
	{ id: "sides", usual: true, ask: "along some edges only", start: { sides: "top, bottom" }, text: "It runs along these edges: {sides|the edges it runs along}." },
	{ id: "tops", usual: true, ask: "which way tops face", text: "The tops of the prints face {tops|which way the tops face}." },
	{ id: "corner", usual: true, ask: "another block in the corners", text: "In the corners is the block {corner|the block in the corners}." },
	{ id: "rings", usual: true, ask: "only so many rings", start: { rings: "2" }, text: "There are at the most {rings|the most rings} rings." },
	{ id: "count", usual: true, ask: "only so many prints", text: "There are {count|how many prints} prints." },
	{ id: "any", usual: true, ask: "turned any way", start: { "any-turn": "true" }, text: "They are {any-turn|how they are turned}." },
	{ id: "seed", ask: "strewn another way", start: { seed: "2" }, text: "They are strewn in way number {seed|any number}." },
	{ id: "order", ask: "another order", start: { order: "rows" }, text: "I print {order|the order of printing}." },
	{ id: "other", ask: "wet prints kept apart", start: { "every-other": "true" }, text: "I print {every-other|whether every second print comes first}." },
	{ id: "over", ask: "over earlier prints", start: { over: "true" }, text: "It is meant to print {over|whether it prints over earlier prints} earlier prints." },
	{ id: "name", ask: "a name for it", text: "I call this {name|the name of this pass}." },
	{ id: "blocks", text: "Its blocks come in turn: {blocks|its blocks, in rows and columns}." },
	{ id: "in-turn", text: "Its colours come in turn: {colours-in-turn|colours of whole prints, in rows and columns}." },
];

export const ofDab = [
	{ id: "dab", always: true, text: "I dab {colour|the colour that is dabbed} on" },
	{ id: "middle", goesOn: true, text: " the middle, {middle|how far across the middle goes} across." },
	{ id: "corners", goesOn: true, text: " the corners, {corners|how far the corners go} along." },
	{ id: "edge", goesOn: true, text: " the edge, {edge|how wide the edge is} wide." },
	{ id: "rest", always: true, goesOn: true, unless: "middle corners edge", text: " the rest of it." },
];

export const ofWork = [
	{ id: "hand", always: true, text: "I print with my {printing.hand|the hand I print with} hand." },
	{ id: "pace", usual: true, ask: "my pace", text: "One print takes me {printing.seconds-a-print|seconds that a print takes} seconds, and {printing.seconds-a-colour|seconds that each further colour takes} more for each colour after the first." },
	{ id: "paint", ask: "my paint", start: { "printing.paint-cover": "90 ml/m2" }, text: "I lay {printing.paint-cover|the paint laid on a printed square metre} of paint." },
	{ id: "units", ask: "inches or centimetres", text: "The papers say lengths in {units|the unit of lengths on the papers}." },
];

export const ofPaper = [
	{ id: "paper", always: true, text: "I print the guide on {paper.size|the paper} paper, {paper.extent|how much of the guide is printed}, with lines that are {paper.lines|how wide lines are}." },
	{ id: "passes", ask: "a guide for each pass", start: { "paper.passes": "apart" }, text: "Passes are drawn {paper.passes|how passes are drawn}." },
	{ id: "margin", ask: "my printer's margin", text: "My printer does not reach {paper.margin|what the printer cannot reach} along every edge." },
	{ id: "reach", ask: "how far it runs past the cloth", text: "The guide runs {paper.reach|how far the guide runs past the cloth} past the cloth." },
	{ id: "overlap", ask: "how far sheets overlap", text: "Neighbouring sheets share {paper.overlap|what sheets share}." },
	{ id: "printer", ask: "a printer that is a little off", text: "The two bars of the printer's page measure {printer.across|the bar across, 180 mm as it should be} across and {printer.down|the bar down, 250 mm as it should be} down." },
];
