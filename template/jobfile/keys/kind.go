package keys

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
	case oneTable, manyTable:
		return Tabled
	}
	return Quoted
}

// Name tells whether any text at all can be a value of the kind.
func (k Kind) Name() bool { return k == aName || k == aText }

// YesNo tells whether the values of the kind are true and false.
func (k Kind) YesNo() bool { return k == yesOrNo }
