package keys

import (
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// key is one line of the table of all that a job file can say.
type key struct {
	in      string // the table it stands in: "", "paper", "item.pass"
	name    string
	Kind    Kind
	example string // a value, as it is written
	usual   string // what holds where it is not given; "": it has to be, or nothing holds
	// words it can be, the usual one first.
	Words []string
	// with are the shapes of an item, or the repeats of a pass, with which it means something;
	// none: it always does.
	With []string
	// seats: it means something for a pass seated in the openings of another, too.
	Seats bool
	must  bool   // it has to be there
	says  string // what it is, in one sentence
}

// Kind is what is written after a key.
type Kind string

// The kinds, as help names them.
const (
	aText      Kind = "a text"
	aName      Kind = "a name"
	aWord      Kind = "a word"
	aNumber    Kind = "a number"
	aWhole     Kind = "a whole number"
	aShare     Kind = "a share"
	yesOrNo    Kind = "true or false"
	aLength    Kind = "a length"
	aRange     Kind = "a length, or a range of two"
	aSize      Kind = "a size"
	sizeOrOne  Kind = "a size, or one length"
	aPlace     Kind = "a step across and down"
	aPaper     Kind = "a paper"
	aFile      Kind = "the name of a file"
	paintKind  Kind = "paint a square metre"
	NameList   Kind = "a list of names"
	WordList   Kind = "a list of words"
	cornerList Kind = "a list of corners"
	TurnRows   Kind = "a list of rows"
	matrixOf   Kind = "a list of rows, each a list of names"
	placeList  Kind = "a list of places"
	fourSides  Kind = "a list of four lengths"
	colourSwap Kind = "colours for colours, in braces"
	aColour    Kind = "a colour"
	DabList    Kind = "a list of dabs, in braces"
	fourEdges  Kind = "a length, or a list of four"
	oneTable   Kind = "a table"
	manyTable  Kind = "a table, as often as you like"
	aGrid      Kind = "how many across x how many down"
)

// thoseThat returns the words of some for which a fact is true.
func thoseThat[S ~string](all []S, is func(S) bool) []string {
	var words []string
	for _, s := range all {
		if is(s) {
			words = append(words, string(s))
		}
	}
	return words
}

// jobKeys is the table, in the order in which the keys are listed.
func jobKeys() []key {
	shades := thoseThat(job.Shapes(), job.Shape.Shade)
	sized := thoseThat(job.Shapes(), func(s job.Shape) bool { return !s.Shade() && s != job.FourSided })
	fourSided := []string{string(job.FourSided)}
	drum, cone := []string{string(job.Drum)}, []string{string(job.Cone)}
	repeats := func(is func(job.Repeat) bool) []string { return thoseThat(job.Repeats(), is) }
	every := repeats(func(job.Repeat) bool { return true })
	lattices := repeats(job.Repeat.Lattice)
	gapped := repeats(job.Repeat.Gapped)
	apart := repeats(func(r job.Repeat) bool { return r.Gapped() && !r.OneGap() })
	lapping := repeats(func(r job.Repeat) bool { return !r.Single() })
	placed, tossed := []string{string(job.Placed)}, []string{string(job.Tossed)}
	framed := repeats(job.Repeat.Framed)
	even := repeats(func(r job.Repeat) bool { return r.Lattice() && !r.OneGap() })
	return []key{
		{name: "title", Kind: aText, example: `"Reading nook"`, usual: "the name of the file",
			says: "What the job is called on its papers."},
		{name: "units", Kind: aWord, Words: UnitWords,
			says: "What lengths on the papers are said in; in a job file each length has a unit of its own."},
		{name: "paper", Kind: oneTable, says: "The paper that guides are printed on."},
		{name: "printer", Kind: oneTable, says: "What the two bars of the page that underlay ruler prints measured, to put a printer right."},
		{name: "printing", Kind: oneTable, says: "How you work: your hand, your pace, your paint."},
		{name: "paint", Kind: manyTable, says: "How a colour looks on paper and screen. Without one, a colour looks as CSS has it where that is a CSS colour name, else grey."},
		{name: "block", Kind: manyTable, says: "A carved block."},
		{name: "item", Kind: manyTable, says: "A thing to print on: a cover, a towel, a bag, a shade."},

		{in: "paper", name: "size", Kind: aPaper, example: `"A4"`, usual: `"A4"`,
			says: "The paper: A0 to A6, Letter, Legal, Tabloid, ANSI C, D or E, a size such as \"610 x 900 mm\", a roll such as \"roll 610 mm\", or \"one sheet\"."},
		{in: "paper", name: "margin", Kind: aLength, example: `"7 mm"`, usual: `"7 mm"`,
			says: "What the printer cannot reach, on every edge."},
		{in: "paper", name: "overlap", Kind: aLength, example: `"12 mm"`, usual: `"12 mm"`,
			says: "What two neighbouring sheets share, for gluing."},
		{in: "paper", name: "extent", Kind: aWord, Words: []string{string(job.FullExtent), string(job.EdgesExtent)},
			says: "How much of a guide is printed: all of it, or under thick cloth only the edges with the marks outside."},
		{in: "paper", name: "passes", Kind: aWord, Words: []string{string(job.PassesTogether), string(job.PassesApart)},
			says: "How the passes of an item are shown: together on one guide, or apart, a guide for each with the others left out."},
		{in: "paper", name: "lines", Kind: aWord, Words: []string{string(job.FineLines), string(job.StrongLines)},
			says: "How wide lines are: fine, or strong to be seen through cloth."},
		{in: "paper", name: "reach", Kind: aLength, example: `"25 mm"`, usual: `"25 mm"`,
			says: "How far the guide runs past the cloth, room for the ticks."},

		{in: "printer", name: "across", Kind: aLength, example: `"179.2 mm"`, usual: "180 mm, as printed",
			says: "What the bar of 180 mm across the ruler page measures."},
		{in: "printer", name: "down", Kind: aLength, example: `"248.9 mm"`, usual: "250 mm, as printed",
			says: "What the bar of 250 mm down the ruler page measures."},

		{in: "printing", name: "hand", Kind: aWord, Words: []string{string(job.RightHand), string(job.LeftHand)},
			says: "The hand you print with: prints go down in an order in which the arm keeps clear of wet paint."},
		{in: "printing", name: "seconds-a-print", Kind: aNumber, example: "75",
			says: "Your own pace, for the time at the bench."},
		{in: "printing", name: "seconds-a-colour", Kind: aNumber, example: "40",
			says: "What each colour after the first adds to a print."},
		{in: "printing", name: "paint-cover", Kind: paintKind, example: `"90 ml/m2"`,
			says: "The paint you lay on a printed square metre, for what a set needs."},

		{in: "paint", name: "name", must: true, Kind: aName, example: `"moss"`, says: "The colour, as passes and colourways name it."},
		{in: "paint", name: "looks", must: true, Kind: aColour, example: `"#5f7a3a"`,
			says: "What it looks like: red, green and blue in two figures each, 00 to ff, or a CSS colour name such as \"olive\"."},

		{in: "block", name: "name", must: true, Kind: aName, example: `"fern"`, says: "What the block is called; passes name it."},
		{in: "block", name: "shape", Kind: aWord, Words: words.Texts(job.FaceShapes()), says: "The shape of the carved face."},
		{in: "block", name: "print", must: true, Kind: sizeOrOne, example: `"90 x 90 mm"`,
			says: "The carved face, width x height; for a round one its diameter, for a hexagon its width across the flat sides."},
		{in: "block", name: "outline", Kind: cornerList, example: `["0 x 0 mm", "90 x 0 mm", "45 x 80 mm"]`,
			says: "The corners of a face with shape = \"outline\", in the order in which they come round its edge."},
		{in: "block", name: "wood", Kind: sizeOrOne, example: `"98 x 98 mm"`, usual: "not drawn",
			says: "The whole block, as you see it from above."},
		{in: "block", name: "wood-shape", Kind: aWord, Words: words.Texts(WoodShapes()), example: `"rectangle"`, usual: "the shape of the face; rectangle for an outline",
			says: "The shape of the wood, where it is another than that of the face."},
		{in: "block", name: "wood-offset", Kind: aPlace, example: `"0 x 2 mm"`, usual: "none",
			says: "How far the middle of the wood is from that of the face: to the right x down."},
		{in: "block", name: "inked", Kind: aNumber, example: "0.55",
			says: "The share of the face that carries paint, from 0 to 1. With a picture it is worked out from that."},
		{in: "block", name: "picture", Kind: aFile, example: `"fern.png"`, usual: "a plain shape that shows the top",
			says: "A picture of one print, PNG or JPEG, dark on light, in a file beside the job file. It is cropped to the print and shown on the papers; nothing is measured from it."},

		{in: "item", name: "name", must: true, Kind: aName, example: `"floor cushion"`, says: "What the item is called."},
		{in: "item", name: "shape", Kind: aWord, Words: words.Texts(job.Shapes()),
			says: "The item's shape; four-sided is a cover that is not square, drum and cone are lampshades with straight and with sloping sides."},
		{in: "item", name: "size", Kind: sizeOrOne, example: `"50 x 60 cm"`, With: sized,
			says: "Width x height, sewn and ironed; of a round item its diameter."},
		{in: "item", name: "outline", Kind: cornerList, example: `["0 x 0 cm", "40 x 0 cm", "20 x 30 cm"]`, With: []string{string(job.Outline)},
			says: "The corners, in the order in which they come round the edge."},
		{in: "item", name: "sides", Kind: fourSides, example: `["500 mm", "503 mm", "499 mm", "498 mm"]`, With: fourSided,
			says: "The sides of a cover that is not square: top, right, bottom, left."},
		{in: "item", name: "diagonal", Kind: aLength, example: `"706 mm"`, With: fourSided,
			says: "How far it is from its top left corner to its bottom right one."},
		{in: "item", name: "diameter", Kind: aLength, example: `"30 cm"`, With: drum,
			says: "The diameter of a drum; or give around."},
		{in: "item", name: "around", Kind: aLength, example: `"94.5 cm"`, With: drum,
			says: "How far it is round a drum, measured with a tape; in place of diameter."},
		{in: "item", name: "top", Kind: aLength, example: `"18 cm"`, With: cone,
			says: "The diameter of a cone's narrow end."},
		{in: "item", name: "bottom", Kind: aLength, example: `"32 cm"`, With: cone,
			says: "The diameter of a cone's wide end."},
		{in: "item", name: "height", Kind: aLength, example: `"24 cm"`, With: shades,
			says: "How high a shade is as it stands, upright and not along its slope."},
		{in: "item", name: "top-around", Kind: aLength, example: `"56 cm"`, With: cone,
			says: "How far it is round a cone's narrow end, measured with a tape; with bottom-around and slope, in place of top, bottom and height."},
		{in: "item", name: "bottom-around", Kind: aLength, example: `"100 cm"`, With: cone,
			says: "How far it is round a cone's wide end, measured with a tape."},
		{in: "item", name: "slope", Kind: aLength, example: `"25 cm"`, With: cone,
			says: "How long a cone's side is from end to end, measured with a tape along its slope."},
		{in: "item", name: "lap", Kind: aLength, example: `"10 mm"`, usual: "none", With: shades,
			says: "The overlap of a shade's seam, drawn outside and not printed."},
		{in: "item", name: "border", must: true, Kind: fourEdges, example: `"25 mm"`,
			says: "The plain edge to leave, at the least; four are top, right, bottom, left."},
		{in: "item", name: "hem", Kind: aLength, example: `"12 mm"`, usual: "none",
			says: "The stitched edge, where a block prints badly."},
		{in: "item", name: "quantity", Kind: aWhole, example: "6", usual: "1",
			says: "How many pieces are printed; with pieces, how many cloths of them."},
		{in: "item", name: "pieces", Kind: aGrid, example: `"3 x 4"`, usual: "each is a cloth of its own", With: []string{string(job.Rectangle)},
			says: "How many lie on one cloth, across x down, to be printed together and cut apart; size, border and all else are then of one piece."},
		{in: "item", name: "apart", Kind: aLength, example: `"20 mm"`, usual: "none", With: []string{string(job.Rectangle)},
			says: "With pieces: the plain cloth between two of them, for their hems; the cut runs down its middle."},
		{in: "item", name: "faces", Kind: NameList, example: `["front", "back"]`, usual: "one, without a name",
			says: "The names of the sides that are printed. The first is seen as the job says, any other turned over like a leaf: left and right change places."},
		{in: "item", name: "move-along", Kind: aLength, example: `"120 cm"`, usual: "the cloth is not moved", With: []string{string(job.Rectangle)},
			says: "The length of the table: a cloth that is longer is printed stretch by stretch along its longer side, and the guide made for one stretch."},
		{in: "item", name: "colourway", Kind: manyTable, says: "The same item in other colours, so many of its pieces."},
		{in: "item", name: "keep-clear", Kind: manyTable, says: "A part of the item not to print on, such as a pocket."},
		{in: "item", name: "pass", Kind: manyTable, says: "One block printed all over the item, in one go."},

		{in: "item.keep-clear", name: "name", must: true, Kind: aName, example: `"pocket"`, says: "What is kept clear."},
		{in: "item.keep-clear", name: "at", must: true, Kind: aPlace, example: `"30 x 300 mm"`,
			says: "Its top left corner, from that of the item: across x down."},
		{in: "item.keep-clear", name: "size", must: true, Kind: aSize, example: `"120 x 140 mm"`, says: "Its width x height."},

		{in: "item.keep-clear", name: "face", Kind: aName, example: `"front"`, usual: "it goes through",
			says: "The one face it is on, its place as seen there. Without it, it goes through, and is mirrored on every face but the first."},

		{in: "item.colourway", name: "name", must: true, Kind: aName, example: `"evening"`, says: "What the colourway is called."},
		{in: "item.colourway", name: "quantity", Kind: aWhole, example: "3", usual: "1; with face, every piece",
			says: "How many of the item's pieces are printed so; the others keep the colours of the passes."},
		{in: "item.colourway", name: "swap", must: true, Kind: colourSwap, example: `{ moss = "teal", ochre = "sage" }`,
			says: "Which colour takes the place of which that the passes name."},
		{in: "item.colourway", name: "face", Kind: aName, example: `"back"`, usual: "every face",
			says: "The one face of the item that is printed so."},

		{in: "item.pass", name: "name", Kind: aName, example: `"fern ground"`, usual: "the name of its block",
			says: "What the pass is called."},
		{in: "item.pass", name: "block", must: true, Kind: aName, example: `"fern"`, says: "The name of the block that is printed."},
		{in: "item.pass", name: "blocks", Kind: matrixOf, example: BlocksExample, usual: "one block", With: lattices,
			says: "In place of block: several, in rows and columns that are laid over those of the repeat again and again; one row gives stripes down, one column stripes across. Each block is printed everywhere before the next."},
		{in: "item.pass", name: "face", Kind: aName, example: `"front"`, usual: "every face",
			says: "The one face of the item that is printed, of those that faces names."},
		{in: "item.pass", name: "repeat", Kind: aWord, Words: every, says: "How the prints are set out."},
		{in: "item.pass", name: "gap", Kind: aRange, example: `"1 mm"`, With: gapped,
			says: "The plain cloth between two prints; from a range, \"1 mm to 4 mm\", as much as brings the border near to the one asked for."},
		{in: "item.pass", name: "gap-across", Kind: aRange, example: `"1 mm"`, usual: "as gap", With: apart,
			says: "The gap between two prints side by side, where it is another than down."},
		{in: "item.pass", name: "gap-down", Kind: aRange, example: `"1 mm"`, usual: "as gap", With: apart,
			says: "The gap between two prints one below the other, where it is another than across."},
		{in: "item.pass", name: "lap", Kind: aLength, example: `"0.5 mm"`, With: lapping,
			says: "In place of gap, for blocks that join: by how much each print laps over the last."},
		{in: "item.pass", name: "gap-even", Kind: yesOrNo, example: "true", usual: "false", With: even,
			says: "Whether a range for the gap opens as much across as down."},
		{in: "item.pass", name: "across", Kind: aWhole, example: "4", usual: "as many as fit", With: lattices,
			says: "Exactly so many prints across: in the longest row, or round a shade; with a gap that is fixed the plain border grows."},
		{in: "item.pass", name: "down", Kind: aWhole, example: "4", usual: "as many as fit", With: lattices,
			says: "Exactly so many prints down: so many rows; with a gap that is fixed the plain border grows."},
		{in: "item.pass", name: "step", Kind: aShare, example: `"1/3"`, usual: `"1/2"`, With: repeats(job.Repeat.Stepped),
			says: "How far every other row, or column, is moved along: a share of the way from print to print."},
		{in: "item.pass", name: "grid-turn", Kind: aNumber, example: "30", usual: "45", With: repeats(job.Repeat.Slanted),
			says: "The degrees by which a diagonal is turned, blocks and all."},
		{in: "item.pass", name: "centre-across", Kind: aWord, Words: centrings, With: lattices,
			says: "What is on the crease from far to near: a print, or the joint between two; best is the one that fits more."},
		{in: "item.pass", name: "centre-down", Kind: aWord, Words: centrings, With: lattices,
			says: "What is on the crease from left to right: a print, or the joint between two; best is the one that fits more."},
		{in: "item.pass", name: "turns", Kind: TurnRows, example: `["0 90", "270 180"]`, usual: `["0"]`, With: append(slices.Clone(lattices), string(job.One)), Seats: true,
			says: "Quarter turns of the block, clockwise, laid over rows and columns and repeated: 0, 90, 180 or 270 for each column, one text a row."},
		{in: "item.pass", name: "colours", Kind: NameList, example: `["moss", "ochre"]`, usual: "none",
			says: "The colours on the block."},
		{in: "item.pass", name: "colours-in-turn", Kind: matrixOf, example: ColoursExample, usual: "none", With: lattices,
			says: "In place of colours: whole prints of one colour each, in rows and columns as those of blocks."},
		{in: "item.pass", name: "dabs", Kind: DabList, example: DabsExample, usual: "none",
			says: "In place of colours: each colour on a part of the face of its own. Where two would lie, the first has it; one that names no part comes last and has the rest; what none has carries no paint."},
		{in: "item.pass", name: "order", Kind: aWord, Words: []string{string(job.CentreOut), string(job.RowByRow), string(job.ByColumn)}, With: lattices, Seats: true,
			says: "Which print comes first: from the middle outwards, row by row from the near edge, or column by column from the side away from your hand."},
		{in: "item.pass", name: "every-other", Kind: yesOrNo, example: "true", usual: "false", With: lattices,
			says: "Whether every second print comes first, and the others when those are dry, so that none is made next to a wet one."},
		{in: "item.pass", name: "sides", Kind: WordList, Words: nil, example: `["bottom"]`, usual: "all four", With: framed,
			says: "The sides that a frame runs along: top, right, bottom, left."},
		{in: "item.pass", name: "tops", Kind: aWord, Words: []string{string(job.TopsOut), string(job.TopsIn), string(job.TopsUp)}, With: append(slices.Clone(framed), string(job.Corners)),
			says: "Which way the tops of a frame's prints face: out to the edge, or in. In corners out is upright in the top left one, and a quarter turn on in each next; up is upright in all."},
		{in: "item.pass", name: "corner", Kind: aName, example: `"acorn"`, usual: "the sides' own prints", With: framed,
			says: "The block of a frame's four corners, each turned a quarter from the last; the sides run between them."},
		{in: "item.pass", name: "rings", Kind: aWhole, example: "2", usual: "as many as fit", With: repeats(job.Repeat.Ringed),
			says: "How many rings there are at the most, counted from the edge."},
		{in: "item.pass", name: "at", Kind: placeList, example: `["120 x 80 mm", "300 x 80 mm turned 30"]`, With: placed,
			says: "The middle of each print, from the item's top left corner: across x down; and the degrees by which it is turned, clockwise."},
		{in: "item.pass", name: "seed", Kind: aWhole, example: "7", usual: "1", With: tossed,
			says: "Any number; another one strews the prints another way."},
		{in: "item.pass", name: "count", Kind: aWhole, example: "40", usual: "as many as find room", With: tossed,
			says: "How many prints are strewn."},
		{in: "item.pass", name: "any-turn", Kind: yesOrNo, example: "true", usual: "false", With: tossed,
			says: "Whether strewn prints are turned any way, or all stand upright."},
		{in: "item.pass", name: "between", Kind: aName, example: `"fern ground"`,
			says: "Seats the prints in the openings of an earlier pass, where four of its prints meet."},
		{in: "item.pass", name: "open-edges", Kind: yesOrNo, example: "true", usual: "false",
			says: "With between: openings at the edge, closed by two prints, count too where a whole print fits."},
		{in: "item.pass", name: "on", Kind: aName, example: `"fern ground"`,
			says: "Registers the prints on those of an earlier pass, one on each."},
		{in: "item.pass", name: "offset", Kind: aPlace, example: `"0 x 2 mm"`, usual: "none",
			says: "With on: how far each print is from the one it goes with, to the right x down, turned with it."},
		{in: "item.pass", name: "over", Kind: yesOrNo, example: "true", usual: "false",
			says: "The prints are meant to lie on those of earlier passes: nothing is said of it, and they may lap by half and more."},

		{in: "item.pass.dabs", name: "colour", must: true, Kind: aName, example: `"ochre"`, says: "The colour dabbed on."},
		{in: "item.pass.dabs", name: "middle", Kind: aLength, example: `"30 mm"`,
			says: "It goes on a disc so far across, round the middle of the face."},
		{in: "item.pass.dabs", name: "corners", Kind: aLength, example: `"12 mm"`,
			says: "It goes on each corner of the face, so far round its point."},
		{in: "item.pass.dabs", name: "edge", Kind: aLength, example: `"8 mm"`,
			says: "It goes along the edge of the face, so wide."},
	}
}

// examples of matrices and of dabs.
const (
	DabsExample    = `[{ colour = "ochre", middle = "30 mm" }, { colour = "moss" }]`
	BlocksExample  = `[["fern", "wave"], ["wave", "fern"]]`
	ColoursExample = `[["moss"], ["ochre"]]`
)

var centrings = []string{string(job.OnBest), string(job.OnPrint), string(job.OnJoint)}

// UnitWords are the units a job can ask for, in the order in which package geometry counts them.
var UnitWords = []string{geometry.UnitMM.String(), geometry.UnitCM.String(), geometry.UnitInch.String()}

// WoodShapes are the shapes of a block's wood.
func WoodShapes() []job.FaceShape {
	return []job.FaceShape{job.RectangleFace, job.RoundFace, job.HexagonFace}
}
