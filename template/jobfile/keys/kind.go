package keys

import (
	"slices"

	"underlay/template/words"
)

// Form is how the values of a kind are written.
type Form int

// The forms.
const (
	Quoted Form = iota // a text in quotes
	Bare               // a number, or true or false
	Listed             // a list of texts
	Matrix             // a list of lists of texts
	Edges              // a text, or a list of four
	Swaps              // texts for texts, in braces
	Tabled             // a table
)

// Form returns how values of the kind are written.
func (k Kind) Form() Form {
	switch k {
	case aNumber, aWhole, aShare, yesOrNo:
		return Bare
	case NameList, WordList, cornerList, TurnRows, placeList, fourSides:
		return Listed
	case matrixOf:
		return Matrix
	case fourEdges:
		return Edges
	case colourSwap:
		return Swaps
	case oneTable, manyTable, DabList:
		return Tabled
	}
	return Quoted
}

// Name tells whether any text at all can be a value of the kind.
func (k Kind) Name() bool { return k == aName || k == aText }

// YesNo tells whether the values of the kind are true and false.
func (k Kind) YesNo() bool { return k == yesOrNo }

// Says is what the key is, in one sentence.
func (k key) Says() string { return k.says }

// Must tells whether the key has to be there.
func (k key) Must() bool { return k.must }

// Usual is what holds where the key is not given: a value as it is written, or words; "" where nothing
// does.
func (k key) Usual() string { return k.otherwise() }

// Example is a value, as it is written.
func (k key) Example() string {
	if k.example == "" && len(k.Words) > 0 {
		return words.Quote(k.Words[len(k.Words)-1])
	}
	return k.example
}

// SuitsItem tells whether a key of an item means something with its shape.
func (k key) SuitsItem(shape string) bool { return len(k.With) == 0 || slices.Contains(k.With, shape) }

// SuitsPass tells whether a key of a pass means something with its repeat, or, where another pass says
// where its prints go, with the key that names that: between, or on.
func (k key) SuitsPass(repeat, seat string) bool {
	switch {
	case k.name == "open-edges":
		return seat == "between"
	case k.name == "offset":
		return seat == "on"
	case seat == "":
		return len(k.With) == 0 || slices.Contains(k.With, repeat)
	case k.name == "repeat" || k.name == "over" && seat == "on":
		return false
	}
	return len(k.With) == 0 || seat == "between" && k.Seats
}
