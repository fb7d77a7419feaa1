package paper

import (
	"fmt"
	"strings"

	"underlay/geometry"
)

// Stock is a kind of paper to print on. A roll has a width and no height; "one sheet" has
// neither: the page is as large as the layout.
type Stock struct {
	Name     string
	Size     geometry.Size // upright: the shorter side across
	Roll     bool
	OneSheet bool
}

// The sides a page may have: smaller ones hold no check bar, and no printer takes larger ones.
const (
	leastSide   = 50 * geometry.Millimetre
	LongestPage = 10 * geometry.Metre
)

// Stocks returns the papers that have a name of their own: ISO 216 in millimetres, ASME Y14.1
// and the North American office sizes in inches.
func Stocks() []Stock {
	iso := func(name string, w, h geometry.Length) Stock {
		return Stock{Name: name, Size: geometry.Size{W: w, H: h}}
	}
	inches := func(name string, w, h geometry.Length) Stock {
		return iso(name, w*geometry.Inch, h*geometry.Inch)
	}
	return []Stock{
		iso("A0", 841, 1189),
		iso("A1", 594, 841),
		iso("A2", 420, 594),
		iso("A3", 297, 420),
		iso("A4", 210, 297),
		iso("A5", 148, 210),
		iso("A6", 105, 148),
		inches("Letter", 8.5, 11),
		inches("Legal", 8.5, 14),
		inches("Tabloid", 11, 17),
		inches("ANSI C", 17, 22),
		inches("ANSI D", 22, 34),
		inches("ANSI E", 34, 44),
	}
}

// oneSheet is the name of the paper as large as the layout.
const oneSheet = "one sheet"

// ParseStock reads the name of a paper ("A4", "ansi c"; capitals do not matter), a size
// ("610 x 900 mm"), a roll ("roll 610 mm") or "one sheet". The Stock's Name is the one way
// to write it. The error says what to write instead; it is an UnknownStock where the name is no
// paper's at all.
func ParseStock(s string) (Stock, error) {
	word := strings.ToLower(strings.Join(strings.Fields(s), " "))
	if word == oneSheet {
		return Stock{Name: oneSheet, OneSheet: true}, nil
	}
	for _, k := range Stocks() {
		if strings.ToLower(k.Name) == word {
			return k, nil
		}
	}
	if rest, ok := strings.CutPrefix(word, "roll"); ok && (rest == "" || strings.ContainsAny(rest[:1], " 0123456789.-")) {
		return parseRoll(s, strings.TrimSpace(rest))
	}
	if word != "" && strings.ContainsAny(word[:1], "0123456789.-+") {
		return parseSheet(s)
	}
	return Stock{}, UnknownStock{s}
}

func parseRoll(s, width string) (Stock, error) {
	if width == "" {
		return Stock{}, fmt.Errorf("%q does not say how wide the roll is; write its width, such as \"roll 610 mm\"", s)
	}
	w, err := geometry.ParsePositive(width)
	if err != nil {
		return Stock{}, fmt.Errorf("the roll's width: %w", err)
	}
	if err := checkSide("a roll", w); err != nil {
		return Stock{}, err
	}
	return Stock{Name: "roll " + millimetres(w) + " mm", Size: geometry.Size{W: w}, Roll: true}, nil
}

func parseSheet(s string) (Stock, error) {
	size, err := geometry.ParseSize(s)
	if err != nil {
		return Stock{}, err
	}
	if size.W > size.H {
		size = size.Swap()
	}
	if err := checkSide("a sheet", size.W); err != nil {
		return Stock{}, err
	}
	if err := checkSide("a sheet", size.H); err != nil {
		return Stock{}, err
	}
	return Stock{Name: millimetres(size.W) + " × " + millimetres(size.H) + " mm", Size: size}, nil
}

func checkSide(what string, l geometry.Length) error {
	switch {
	case l < leastSide-geometry.Tolerance:
		return fmt.Errorf("%s %s mm wide is too small to print on; write %s mm or more", what, millimetres(l), millimetres(leastSide))
	case l > LongestPage+geometry.Tolerance:
		return fmt.Errorf("%s with a side of %s mm is larger than a page can be; write %s mm or less", what, millimetres(l), millimetres(LongestPage))
	}
	return nil
}

// UnknownStock is a name that no paper has.
type UnknownStock struct{ Name string }

func (e UnknownStock) Error() string { return e.Words("") }

// Words says what to write instead: first of all near, where that is likely what was meant.
func (e UnknownStock) Words(near string) string {
	var names []string
	for _, k := range Stocks() {
		names = append(names, k.Name)
	}
	first := "one of "
	if near != "" {
		first = fmt.Sprintf("%q, or one of ", near)
	}
	return fmt.Sprintf("%q is not a paper this knows; write %s%s, or a size such as \"610 x 900 mm\", \"roll 610 mm\" or \"one sheet\"",
		e.Name, first, strings.Join(names, ", "))
}

// millimetres writes a length as a number of millimetres, to a ten-thousandth.
func millimetres(l geometry.Length) string {
	return geometry.Decimals(l.Millimetres(), 4)
}
