package jobfile

import (
	"errors"

	"underlay/template/job"
	"underlay/template/words"
)

// StartFile returns a commented job file to begin with, for an item of a shape. The error says
// which shapes there are.
func StartFile(shape string) (string, error) {
	files := map[job.Shape]string{
		job.Rectangle: startRectangle,
		job.Round:     startRound,
		job.Outline:   startOutline,
		job.FourSided: startFourSided,
		job.Drum:      startDrum,
		job.Cone:      startCone,
	}
	if text, ok := files[job.Shape(shape)]; ok {
		return startTop + text, nil
	}
	return "", errors.New(notKnown(shape, words.Texts(job.Shapes())))
}

// startTop is what the job files of all shapes begin with.
const startTop = `# A job file: what to print on what. Change the names and the measures to your own.
# Whatever stands after a # is a remark. Every length has its unit: "90 mm", "2.5 cm",
# "3 1/2 in". A line that begins with # is not read: take the # away to make use of it.
#
# See what fits:      underlay fit FILE.toml
# Print the guides:   underlay draw FILE.toml

title = "Reading nook"
units = "mm"                  # lengths on the papers: "mm", "cm" or "in"

[paper]
size = "A4"                   # or "A3", "Letter", "610 x 900 mm", "roll 610 mm", "one sheet"
margin = "7 mm"               # what the printer cannot reach on every edge
overlap = "12 mm"             # what two neighbouring sheets share, for gluing
reach = "25 mm"               # how far the guide runs past the cloth, room for the ticks
# lines = "strong"            # wide, to be seen through cloth; or "fine"
# extent = "edges"            # under thick cloth, where only the marks outside show; or "full"

[printing]
hand = "right"                # the hand you print with: "right" or "left"
# seconds-a-print = 75        # your own pace, for the time at the bench
# paint-cover = "90 ml/m2"    # paint you lay on a printed square metre, for what a set needs

# How a colour of yours looks on paper: red, green and blue, 00 to ff each, or a CSS name, "olive".
# [[paint]]
# name = "moss"
# looks = "#5f7a3a"

# A block: measure the carved face, then the wood as you see it from above.
# For another block write all of these lines again, with another name.
[[block]]
`

// startRectangle is for covers, napkins, towels, bags and runners.
const startRectangle = `name = "fern"
print = "90 x 90 mm"          # the carved face, width x height
wood = "98 x 98 mm"           # the whole block
# wood-offset = "0 x 2 mm"    # where the face is not in the middle of the wood: right x down
# inked = 0.55                # share of the face that carries paint
# picture = "fern.png"        # one print, dark on light, beside this file; then inked comes from it

# A thing to print on: measure it sewn and ironed, edge to edge.
[[item]]
name = "floor cushion"
size = "50 x 50 cm"           # width x height
border = "25 mm"              # plain edge, at the least; or ["top", "right", "bottom", "left"]
hem = "12 mm"                 # the stitched edge, where a block prints badly
quantity = 6
# faces = ["front", "back"]   # where both are printed; a pocket on one has face = "front"

  # Some of the pieces in other colours.
  # [[item.colourway]]
  # name = "evening"
  # quantity = 2
  # swap = { moss = "teal" }

  # A pass: one block printed all over the item.
  [[item.pass]]
  block = "fern"
  gap = "1 mm"                # plain cloth between two prints; or a range, "1 mm to 4 mm"
  # lap = "0.5 mm"            # in place of gap: blocks that join, each print over the last
  # repeat = "brick"          # or "straight", "half-drop", "diagonal", "frame"; single prints:
                              # "one", "corners", "tossed", or "placed" with at = ["12 x 8 cm"]
  # turns = ["0 180"]         # quarter turns of the block, for each column; more rows with commas
  # centre-across = "print"   # "print" or "joint" on the crease; "best" is the one that fits more
  # centre-down = "print"
  # order = "rows"            # row by row from the near edge, not from the middle outwards
  # colours = ["moss"]
  # dabs = [{ colour = "ochre", middle = "20 mm" }, { colour = "moss" }]   # by part of the face
`

// startRound is for stool tops, round mats and cloths.
const startRound = `name = "wave"
print = "60 x 40 mm"          # the carved face, width x height
wood = "64 x 46 mm"           # the whole block
# wood-offset = "0 x 2 mm"    # where the face is not in the middle of the wood: right x down
# inked = 0.55                # share of the face that carries paint
# picture = "wave.png"        # one print, dark on light, beside this file; then inked comes from it

# A round thing to print on: measure it sewn and ironed.
[[item]]
name = "stool top"
shape = "round"
size = "40 cm"                # across
border = "20 mm"              # plain edge, at the least
# hem = "10 mm"               # the stitched edge, where a block prints badly
quantity = 2

  # A pass: one block printed all over the item.
  [[item.pass]]
  block = "wave"
  repeat = "rings"            # tops outwards; or "straight", "brick", "half-drop", "diagonal"
  gap = "2 mm"                # plain cloth between two prints, at the least
  # lap = "0.5 mm"            # in place of gap: blocks that join, each print over the last
  # rings = 2                 # no more than this, counted from the edge
  # colours = ["pond blue"]
  # dabs = [{ colour = "ochre", middle = "20 mm" }, { colour = "pond blue" }]
`

// startOutline is for pennants and anything else with corners.
const startOutline = `name = "acorn"
print = "40 x 45 mm"          # the carved face, width x height
# wood = "46 x 52 mm"         # the whole block
# inked = 0.55                # share of the face that carries paint
# picture = "acorn.png"       # one print, dark on light, beside this file; then inked comes from it

# A thing to print on, by its corners: go round it once, and measure each corner from the left
# and from the top.
[[item]]
name = "pennant"
shape = "outline"
outline = ["0 x 0 mm", "360 x 0 mm", "180 x 520 mm"]
border = "12 mm"              # plain edge, at the least, the same all round
quantity = 8
# faces = ["front", "back"]   # where both are printed; a pocket on one has face = "front"

  # Some of the pieces in other colours.
  # [[item.colourway]]
  # name = "evening"
  # quantity = 2
  # swap = { berry = "plum" }

  # A pass: one block printed all over the item.
  [[item.pass]]
  block = "acorn"
  repeat = "brick"            # or "straight", "half-drop", "diagonal"
  gap = "3 mm"                # plain cloth between two prints
  # lap = "0.5 mm"            # in place of gap: blocks that join, each print over the last
  # step = "1/3"              # by how much of its width each row is moved along: 1/2, unless given
  # turns = ["0 180"]         # quarter turns of the block, for each column; more rows with commas
  # centre-across = "print"   # "print" or "joint" in the middle; "best" is the one that fits more
  # centre-down = "print"
  # order = "rows"            # row by row from the near edge, not from the middle outwards
  # colours = ["berry"]
  # dabs = [{ colour = "ochre", middle = "20 mm" }, { colour = "berry" }]   # by part of the face
`

// startFourSided is for covers as they really are.
const startFourSided = `name = "fern"
print = "90 x 90 mm"          # the carved face, width x height
wood = "98 x 98 mm"           # the whole block
# inked = 0.55                # share of the face that carries paint
# picture = "fern.png"        # one print, dark on light, beside this file; then inked comes from it

# A cover as it really is: sewn covers are seldom square. Measure it ironed flat: its four
# sides, and from the top left corner to the bottom right one. Creases join the middles of
# opposite sides.
[[item]]
name = "old cushion"
shape = "four-sided"
sides = ["500 mm", "503 mm", "499 mm", "498 mm"]   # top, right, bottom, left
diagonal = "706 mm"           # from the top left corner to the bottom right one
border = "20 mm"              # plain edge, at the least; or ["top", "right", "bottom", "left"]
# hem = "12 mm"               # the stitched edge, where a block prints badly
quantity = 1
# faces = ["front", "back"]   # where both are printed

  # A pass: one block printed all over the item.
  [[item.pass]]
  block = "fern"
  gap = "1 mm"                # plain cloth between two prints; or a range, "1 mm to 4 mm"
  # lap = "0.5 mm"            # in place of gap: blocks that join, each print over the last
  # repeat = "brick"          # or "straight", "half-drop", "diagonal"
  # turns = ["0 180"]         # quarter turns of the block, for each column; more rows with commas
  # centre-across = "print"   # "print" or "joint" on the crease; "best" is the one that fits more
  # centre-down = "print"
  # order = "rows"            # row by row from the near edge, not from the middle outwards
  # colours = ["moss"]
  # dabs = [{ colour = "ochre", middle = "20 mm" }, { colour = "moss" }]   # by part of the face
`

// startDrum is for lampshades with straight sides.
const startDrum = `name = "acorn"
print = "35 x 45 mm"          # the carved face, width x height
wood = "40 x 50 mm"           # the whole block
# inked = 0.55                # share of the face that carries paint
# picture = "acorn.png"       # one print, dark on light, beside this file; then inked comes from it

# A lampshade with straight sides, printed flat before it is made up. A whole number of prints
# goes round, so that the pattern meets at the seam: the gap is opened until it does.
# Take care: only shade materials and lamps rated for it; printing does not make a shade safe.
[[item]]
name = "drum shade"
shape = "drum"
diameter = "30 cm"            # of the ring; the flat shade is as long as the ring is round
# around = "94.5 cm"          # in place of diameter: measured round it with a tape
height = "22 cm"
lap = "10 mm"                 # of the seam: drawn outside, not printed
border = "12 mm"              # plain edge at the top and the bottom, at the least
quantity = 1

  # A pass: one block printed all round the shade.
  [[item.pass]]
  block = "acorn"
  gap = "3 mm"                # plain cloth between two prints, at the least
  # lap = "0.5 mm"            # in place of gap: blocks that join, each print over the last
  # repeat = "half-drop"      # or "straight", "brick"
  # turns = ["0 180"]         # quarter turns of the block, for each column; more rows with commas
  # order = "rows"            # row by row from the near edge, not from the middle outwards
  # colours = ["oak"]
  # dabs = [{ colour = "ochre", middle = "20 mm" }, { colour = "oak" }]   # by part of the face
`

// startCone is for lampshades with sloping sides.
const startCone = `name = "acorn"
print = "35 x 45 mm"          # the carved face, width x height
wood = "40 x 50 mm"           # the whole block
# inked = 0.55                # share of the face that carries paint
# picture = "acorn.png"       # one print, dark on light, beside this file; then inked comes from it

# A lampshade with sloping sides, printed flat before it is made up. Laid flat it is part of a
# ring. The prints stand on its arcs, as many in every row; the narrowest row sets how many.
# Take care: only shade materials and lamps rated for it; printing does not make a shade safe.
[[item]]
name = "cone shade"
shape = "cone"
top = "18 cm"                 # diameter of the narrow ring
bottom = "32 cm"              # diameter of the wide ring
height = "24 cm"              # upright, not along the slope
# top-around = "56.5 cm"      # in place of the three: measured with a tape, round both ends
# bottom-around = "100.5 cm"
# slope = "25 cm"             # and down the side, from end to end
lap = "10 mm"                 # of the seam: drawn outside, not printed
border = "15 mm"              # plain edge at the top and the bottom, at the least
quantity = 1

  # A pass: one block printed all round the shade.
  [[item.pass]]
  block = "acorn"
  gap = "3 mm"                # plain cloth between two prints of the narrowest row, at the least
  # lap = "0.5 mm"            # in place of gap: blocks that join, each print over the last
  # repeat = "brick"          # or "straight", "half-drop"
  # turns = ["0 180"]         # quarter turns of the block, for each column; more rows with commas
  # order = "rows"            # row by row from the near edge, not from the middle outwards
  # colours = ["oak"]
  # dabs = [{ colour = "ochre", middle = "20 mm" }, { colour = "oak" }]   # by part of the face
`
