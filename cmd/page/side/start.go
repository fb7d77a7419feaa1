package side

import (
	"fmt"

	"underlay/template/words"
)

// Starts are the things that a job can be begun with, the usual one first.
func Starts() []string { return []string{"cushion", "towel", "bag", "shade"} }

// Start returns a whole small job to begin with, made ready to be changed.
func Start(thing string) (string, error) {
	for i, name := range Starts() {
		if name == thing {
			return [...]string{startCushion, startTowel, startBag, startShade}[i], nil
		}
	}
	return "", fmt.Errorf("there is no beginning called %s; write %s", words.Quote(thing), words.OneOf(Starts()))
}

const startCushion = `title = "Floor cushions"

[paper]
size = "A4"

[[paint]]
name = "moss"
looks = "#5f7a3a"

[[block]]
name = "fern"
print = "90 x 90 mm"         # the carved face
wood = "98 x 98 mm"          # the whole block

[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"             # plain, at the least
hem = "12 mm"
quantity = 2

  [[item.pass]]
  block = "fern"
  gap = "1 mm"
  colours = ["moss"]
`

const startTowel = `title = "Tea towels"

[paper]
size = "A4"

[[paint]]
name = "pond blue"
looks = "#3f7391"

[[block]]
name = "wave"
print = "60 x 40 mm"         # the carved face

[[item]]
name = "tea towel"
size = "48 x 70 cm"
border = "30 mm"             # plain, at the least
hem = "10 mm"
quantity = 4

  [[item.pass]]
  name = "waves"
  block = "wave"
  repeat = "frame"           # along the edges
  sides = ["top", "bottom"]
  gap = "1 mm"
  colours = ["pond blue"]
`

const startBag = `title = "Book bag"

[paper]
size = "A4"

[[paint]]
name = "oak"
looks = "#8a5a2b"

[[block]]
name = "acorn"
print = "55 x 70 mm"         # the carved face
wood = "60 x 75 mm"          # the whole block

[[item]]
name = "book bag"
size = "38 x 42 cm"
border = "15 mm"             # plain, at the least
hem = "10 mm"

  [[item.keep-clear]]
  name = "cord channel"
  at = "0 x 0 mm"            # its top left corner
  size = "380 x 60 mm"

  [[item.pass]]
  name = "acorns"
  block = "acorn"
  repeat = "half-drop"
  gap = "4 mm to 8 mm"       # as wide as the cloth allows
  colours = ["oak"]
`

const startShade = `title = "Lampshade"

[paper]
size = "A4"

[[paint]]
name = "slate"
looks = "#5d6b75"

[[block]]
name = "pebble"
shape = "round"
print = "28 mm"              # across

# Only shade materials and lamps rated for it; printing does not make a shade safe.
[[item]]
name = "drum shade"
shape = "drum"
diameter = "30 cm"
height = "22 cm"
lap = "10 mm"                # of the seam
border = "12 mm"             # plain, top and bottom

  [[item.pass]]
  name = "pebbles"
  block = "pebble"
  repeat = "half-drop"
  gap = "3 mm"               # opened until the pattern meets round the shade
  colours = ["slate"]
`
