package paper

import (
	"fmt"

	"underlay/geometry"
)

// Setup is what a layout is printed on, and how.
type Setup struct {
	Stock   Stock
	Margin  geometry.Length // what the printer cannot reach, on every edge of the page
	Overlap geometry.Length // what neighbouring sheets share, as measured on the layout
	Scale   Scale           // the printer's, see Correction
}

// Check refuses lengths that no sheet can have.
func (s Setup) Check() error {
	switch {
	case !(s.Margin >= 0):
		return fmt.Errorf("a margin of %s mm is less than nothing; write 0 mm or more", millimetres(s.Margin))
	case !(s.Overlap >= 0):
		return fmt.Errorf("an overlap of %s mm is less than nothing; write 0 mm or more", millimetres(s.Overlap))
	}
	return nil
}

// Inside returns how much of the layout a page shows inside its margin, drawn at a scale.
func (s Setup) Inside(page geometry.Size, scale Scale) geometry.Size {
	return geometry.Size{
		W: (page.W - 2*s.Margin) / geometry.Length(scale.Across),
		H: (page.H - 2*s.Margin) / geometry.Length(scale.Down),
	}
}

// Page returns the size of the page that shows so much of the layout inside its margin.
func (s Setup) Page(area geometry.Size, scale Scale) geometry.Size {
	return geometry.Size{
		W: area.W*geometry.Length(scale.Across) + 2*s.Margin,
		H: area.H*geometry.Length(scale.Down) + 2*s.Margin,
	}
}

// CheckUsable refuses margins and overlaps that leave nothing of a page that shows area.
func (s Setup) CheckUsable(area geometry.Size) error {
	usable := min(area.W, area.H)
	switch {
	case usable <= geometry.Tolerance:
		return fmt.Errorf("a margin of %s mm on every edge leaves nothing of the paper %q to print on; write a smaller margin or a larger paper",
			millimetres(s.Margin), s.Stock.Name)
	case s.Overlap >= usable-geometry.Tolerance:
		return fmt.Errorf("an overlap of %s mm is as much as the paper %q can show inside its margin, %s mm; write a smaller overlap or a larger paper",
			millimetres(s.Overlap), s.Stock.Name, millimetres(usable))
	}
	return nil
}
