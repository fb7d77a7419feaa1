package main

import "underlay/template/plan"

// The types below are what fit --json writes of a job without any pass.

type jsonShelf struct {
	Title string         `json:"title"`
	Shelf []jsonShelfFit `json:"shelf"`
}

// jsonShelfFit is one block on one item, the best of an item first. Of a block that does not fit there is only its count,
// which is 0.
type jsonShelfFit struct {
	Item    string       `json:"item"`
	Block   string       `json:"block"`
	Turned  bool         `json:"turned,omitempty"`
	Count   int          `json:"count"`
	Columns int          `json:"columns,omitempty"`
	Rows    int          `json:"rows,omitempty"`
	Centre  *jsonCentre  `json:"centre,omitempty"`
	Gap     *jsonSpacing `json:"gap_mm,omitempty"`
	Border  *jsonEdges   `json:"border_mm,omitempty"`
}

func shelfJSON(shelf *plan.Shelf) jsonShelf {
	out := jsonShelf{Title: shelf.Job.Title, Shelf: []jsonShelfFit{}}
	for _, si := range shelf.Items {
		for _, fit := range si.Fits {
			row := jsonShelfFit{Item: si.Item.Name, Block: fit.Block.Name, Turned: fit.Turned}
			if fit.Fits() {
				c := fit.Choice
				gap, border := spacingJSON(c.Gap), edgesJSON(c.Border)
				row.Count, row.Columns, row.Rows = c.Count, c.Columns, c.Rows
				row.Centre, row.Gap, row.Border = centreJSON(c), &gap, &border
			}
			out.Shelf = append(out.Shelf, row)
		}
	}
	return out
}
