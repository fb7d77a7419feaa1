package keys

import (
	"slices"

	"underlay/template/words"
)

// otherName is what makers call a thing that has another name in a job file, in one table of it.
type otherName struct {
	in     string // the table it is written in
	called string // what it is called there, with spaces between
	Key    string // the key that is meant, in the same table
	Write  string // what to write, where that is more than the name of the key
}

// otherNames are few on purpose: only where the word means the key and nothing else.
func otherNames() []otherName {
	return []otherName{
		{"", "name heading", "title", ""},
		{"", "unit measure measures", "units", ""},
		{"", "stamp stamps", "block", ""},
		{"", "cloth cushion cover towel bag thing", "item", ""},

		{"paper", "format paper sheet", "size", ""},
		{"paper", "border borders edge edges", "margin", ""},
		{"paper", "weight line", "lines", ""},

		{"printer", "width horizontal", "across", ""},
		{"printer", "height vertical", "down", ""},

		{"printing", "paint ink", "paint-cover", ""},
		{"printing", "seconds pace", "seconds-a-print", ""},

		{"paint", "colour color hex rgb css", "looks", ""},

		{"block", "size face carved", "print", ""},
		{"block", "diameter", "print", `print, and shape = "round"`},
		{"block", "radius", "print", `print, twice the radius, and shape = "round"`},
		{"block", "width height length", "print", `both sides in one, as in print = "90 x 60 mm"`},
		{"block", "offset", "wood-offset", ""},
		{"block", "points corners", "outline", ""},
		{"block", "ink coverage", "inked", ""},
		{"block", "image photo motif pattern", "picture", ""},

		{"item", "margin margins edge edges", "border", ""},
		{"item", "seam seam-lap overlap", "lap", ""},
		{"item", "count number amount copies", "quantity", ""},
		{"item", "dimensions measures", "size", ""},
		{"item", "width length", "size", `both sides in one, as in size = "50 x 60 cm"`},
		{"item", "face", "faces", ""},
		{"item", "radius", "size", `twice the radius: as size of a round item, or as diameter of a drum`},
		{"item", "circumference", "around", ""},
		{"item", "slant", "slope", ""},
		{"item", "points corners", "outline", ""},
		{"item", "pocket pockets zone zones", "keep-clear", "[[item.keep-clear]] with name, at and size"},
		{"item", "passes", "pass", ""},

		{"item.keep-clear", "place position corner", "at", ""},
		{"item.keep-clear", "width height", "size", `both sides in one, as in size = "120 x 140 mm"`},

		{"item.pass", "space spaces spacing distance", "gap", ""},
		{"item.pass", "overlap", "lap", ""},
		{"item.pass", "columns", "across", ""},
		{"item.pass", "rows", "down", ""},
		{"item.pass", "margin edge", "", "it as border in the [[item]]"},
		{"item.pass", "seam", "", "the lap of a shade's seam as lap in the [[item]]"},
		{"item.pass", "pattern layout arrangement", "repeat", ""},
		{"item.pass", "stamp", "block", ""},
		{"item.pass", "rotation rotate rotations turn", "turns", ""},
		{"item.pass", "color colour colors paint paints", "colours", ""},
		{"item.pass", "dab dabbed dabbing", "", "dabs = " + DabsExample},
		{"item.pass", "centre center", "", "centre-across, centre-down, or both"},

		{"item.pass.dabs", "color name paint", "colour", ""},
		{"item.pass.dabs", "centre center disc", "middle", ""},
		{"item.pass.dabs", "border rim band", "edge", ""},
	}
}

// listed are words that are keys of other tables, and mean something else where they are written
// here: no place to send them to.
func listed() []otherName {
	return []otherName{
		{in: "item", called: "across down"},
		{in: "item.pass", called: "size height print"},
	}
}

// called are words for what a key can be, and the word that is meant.
func called() map[string]string {
	return map[string]string{
		"inch": "in", "inches": "in", "imperial": "in", "metric": "mm",
		"millimetre": "mm", "millimetres": "mm", "millimeters": "mm", "centimetre": "cm", "centimetres": "cm", "centimeters": "cm",
		"circle": "round", "square": "rectangle", "rectangular": "rectangle", "polygon": "outline", "cylinder": "drum",
		"grid": "straight", "hexagonal": "honeycomb", "circles": "rings",
		"bold": "strong", "thick": "strong", "wide": "strong", "thin": "fine",
		"outwards": "out", "inwards": "in",
	}
}

// Instead says what to write in place of an unknown word: the one it means, or is nearly, or any
// of those known.
func Instead(word string, known []string) string {
	if meant := called()[words.Plain(word)]; slices.Contains(known, meant) {
		return words.Quote(meant)
	}
	return words.Instead(word, known)
}
