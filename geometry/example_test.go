package geometry_test

import (
	"fmt"

	"underlay/geometry"
)

// Lengths are read with their unit, and written in the maker's.
func ExampleParseLength() {
	l, err := geometry.ParseLength("3 1/2 in")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(geometry.UnitMM.Format(l), "is", geometry.UnitInch.Format(l))
	// Output: 88.9 mm is 3 1/2 in
}

// A text without a unit is refused with what to write instead.
func ExampleParseLength_noUnit() {
	_, err := geometry.ParseLength("90")
	fmt.Println(err)
	// Output: "90" has no unit; write "90 mm", "90 cm" or "90 in"
}

// A face is carved with its centre at (0, 0), and laid down anywhere.
func ExampleOutline_Place() {
	face := geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 90, H: 60}))
	print := face.Place(geometry.Pt(100, 200), 90)
	fmt.Println(print.Bounds().Min, print.Bounds().Max)
	// Output: {70 155} {130 245}
}
