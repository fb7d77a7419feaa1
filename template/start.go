package template

import (
	"fmt"
	"slices"
)

// StartShapes returns the shapes of items that a job file may have.
func StartShapes() []string { return slices.Clone(itemShapes) }

// StartFile returns a commented job file to begin with, for an item of a shape. The error says
// which shapes there is one for.
func StartFile(shape string) (string, error) {
	files := map[string]string{
		"rectangle": startRectangle,
	}
	if text, ok := files[shape]; ok {
		return text, nil
	}
	var ready []string
	for _, s := range itemShapes {
		if files[s] != "" {
			ready = append(ready, s)
		}
	}
	if slices.Contains(itemShapes, shape) {
		return "", fmt.Errorf("a job file for shape %s is not yet built; write %s", quote(shape), oneOf(ready))
	}
	if near, ok := nearest(shape, itemShapes); ok {
		return "", fmt.Errorf("%s is not known here; write %s", quote(shape), quote(near))
	}
	return "", fmt.Errorf("%s is not known here; write %s", quote(shape), oneOf(itemShapes))
}

// startRectangle is the job file for covers, napkins, towels, bags and runners.
const startRectangle = `# A job file: what to print on what. Change the names and the measures to your own.
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

# A block: measure the carved face, then the wood as you see it from above.
# For another block write all of these lines again, with another name.
[[block]]
name = "fern"
print = "90 x 90 mm"          # the carved face, width x height
wood = "98 x 98 mm"           # the whole block
# wood-offset = "0 x 2 mm"    # where the face is not in the middle of the wood: right x down
# inked = 0.55                # share of the face that carries paint

# A thing to print on: measure it sewn and ironed, edge to edge.
[[item]]
name = "floor cushion"
size = "50 x 50 cm"           # width x height
border = "25 mm"              # plain edge, at the least; or ["top", "right", "bottom", "left"]
hem = "12 mm"                 # the stitched edge, where a block prints badly
quantity = 6
# faces = ["front", "back"]   # where both are printed

  # A pass: one block printed all over the item.
  [[item.pass]]
  block = "fern"
  gap = "1 mm"                # plain cloth between two prints; or a range, "1 mm to 4 mm"
  # lap = "0.5 mm"            # in place of gap: blocks that join, each print over the last
  # repeat = "brick"          # or "straight", "half-drop", "diagonal", "frame"
  # turns = ["0 180"]         # quarter turns of the block, for each column; more rows with commas
  # centre-across = "print"   # "print" or "joint" on the crease; "best" is the one that fits more
  # centre-down = "print"
  # order = "rows"            # row by row from the near edge, not from the middle outwards
  # colours = ["moss"]
`
